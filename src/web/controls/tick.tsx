// Yes or no: a square to tick, with its words as part of the target.
import type { ReactNode } from 'react';

interface TickProps {
  readonly isSelected: boolean;
  readonly onChange: (value: boolean) => void;
  readonly children: ReactNode;
}

export function Tick({ isSelected, onChange, children }: TickProps) {
  return (
    <label className="checkbox">
      <input
        type="checkbox"
        className="native-mark"
        checked={isSelected}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span className="checkbox-box" aria-hidden="true">
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 10.5l4 4 8-9" />
        </svg>
      </span>
      {children}
    </label>
  );
}
