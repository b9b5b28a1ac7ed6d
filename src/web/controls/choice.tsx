// One of a few: a row of large words, chosen by touch or arrow keys.
import type { ReactNode } from 'react';
import { Label, Radio, RadioGroup, Text } from 'react-aria-components';

export interface ChoiceOption<V extends string> {
  readonly value: V;
  readonly text: string;
  readonly more?: ReactNode;
  /** Drawn at the end of the row. */
  readonly picture?: ReactNode;
}

interface ChoiceProps<V extends string> {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly value: V | null;
  readonly options: readonly ChoiceOption<V>[];
  readonly onChange: (value: V) => void;
  readonly hint?: string;
  readonly layout?: 'row' | 'list';
}

export function Choice<V extends string>(props: ChoiceProps<V>) {
  return (
    <RadioGroup
      className={`choice choice-${props.layout ?? 'row'}`}
      value={props.value}
      onChange={(value) => props.onChange(value as V)}
      orientation={props.layout === 'list' ? 'vertical' : 'horizontal'}
    >
      <Label className={props.hideLabel ? 'visually-hidden' : 'field-label'}>{props.label}</Label>
      <div className="choice-options">
        {props.options.map((option) => (
          <Radio key={option.value} value={option.value} className="choice-option">
            <span className="choice-mark" aria-hidden="true" />
            <span className="choice-text">
              {option.text}
              {option.more && <span className="choice-more">{option.more}</span>}
            </span>
            {option.picture}
          </Radio>
        ))}
      </div>
      {props.hint && (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      )}
    </RadioGroup>
  );
}
