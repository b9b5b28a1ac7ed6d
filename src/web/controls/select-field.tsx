// One of many: the device's own list, so that a phone brings its wheel and a keyboard its search by letters. Where the
// browser can draw it as the sheet does, it does (styles/controls.css).
import { type ReactNode, useId } from 'react';

export interface SelectOption {
  readonly value: string;
  readonly text: ReactNode;
  readonly lang?: string | undefined;
}

interface SelectFieldProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly value: string | null;
  readonly options: readonly SelectOption[];
  readonly onChange: (value: string) => void;
  /** Stands there while nothing is chosen. */
  readonly placeholder?: string;
  readonly isDisabled?: boolean;
}

export function SelectField(props: SelectFieldProps) {
  const id = useId();
  return (
    <div className="select">
      <label className={props.hideLabel ? 'visually-hidden' : 'field-label'} htmlFor={id}>
        {props.label}
      </label>
      <select
        id={id}
        className={props.value === null ? 'select-box select-box-empty' : 'select-box'}
        value={props.value ?? ''}
        disabled={props.isDisabled ?? false}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.value === null && (
          <option value="" disabled hidden>
            {props.placeholder}
          </option>
        )}
        {props.options.map((option) => (
          <option key={option.value} value={option.value} lang={option.lang}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}
