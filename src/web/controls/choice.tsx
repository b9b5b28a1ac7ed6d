// One of a few: a row of large words, chosen by touch or arrow keys.
import { type ReactNode, useId } from 'react';

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
  const id = useId();
  return (
    <div
      role="radiogroup"
      className={`choice choice-${props.layout ?? 'row'}`}
      aria-labelledby={`${id}-label`}
      aria-describedby={props.hint ? `${id}-hint` : undefined}
    >
      <span id={`${id}-label`} className={props.hideLabel ? 'visually-hidden' : 'field-label'}>
        {props.label}
      </span>
      <div className="choice-options">
        {props.options.map((option) => (
          <label key={option.value} className="choice-option">
            <input
              type="radio"
              className="native-mark"
              name={id}
              value={option.value}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            <span className="choice-mark" aria-hidden="true" />
            <span className="choice-text">
              {option.text}
              {option.more && <span className="choice-more">{option.more}</span>}
            </span>
            {option.picture}
          </label>
        ))}
      </div>
      {props.hint && (
        <span id={`${id}-hint`} className="field-hint">
          {props.hint}
        </span>
      )}
    </div>
  );
}
