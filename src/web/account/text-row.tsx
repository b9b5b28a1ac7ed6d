// One line to type into: a name, a secret, a code; large, with its fault below it.
import type { ReactNode } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';

interface TextRowProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'password';
  readonly autoComplete?: string;
  readonly hint?: ReactNode;
  readonly fault?: string | undefined;
  readonly autoFocus?: boolean;
  readonly digits?: boolean;
}

export function TextRow(props: TextRowProps) {
  const { label, value, onChange, type = 'text', hint, fault, digits } = props;
  return (
    <TextField
      className="account-row"
      type={type}
      value={value}
      onChange={onChange}
      isInvalid={fault !== undefined}
      isRequired
      validationBehavior="aria"
      autoComplete={props.autoComplete ?? 'off'}
      // The one thing to do on this sheet is to type here.
      autoFocus={props.autoFocus === true}
    >
      <Label className="field-label">{label}</Label>
      <Input
        className="text-input"
        inputMode={digits ? 'numeric' : undefined}
        spellCheck="false"
        autoCapitalize="off"
      />
      {hint && (
        <Text slot="description" className="field-hint">
          {hint}
        </Text>
      )}
      {fault && <FieldError className="field-fault">{fault}</FieldError>}
    </TextField>
  );
}
