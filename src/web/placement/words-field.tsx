// One line of a placement to write words into, with its name above it.

interface WordsFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** As many characters as the door takes. */
  readonly maxLength?: number;
}

export function WordsField({ label, value, onChange, maxLength = 500 }: WordsFieldProps) {
  return (
    <label className="field-label">
      {label}
      <input
        type="text"
        className="text-input"
        maxLength={maxLength}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
