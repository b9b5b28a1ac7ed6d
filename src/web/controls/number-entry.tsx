// A number typed, stepped by big buttons that may be held, or by arrow keys; written down when the field is left, with
// Enter, or when the page goes away under it. Leaves out what the number means: quantity-field.tsx.
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { clamped, numberFromText, numberMarks, stepped } from './number-text.ts';

interface NumberEntryProps {
  readonly className: string;
  readonly label: ReactNode;
  readonly unit: string;
  readonly locale: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly min: number;
  readonly max: number;
  readonly digits: number;
  readonly more: string;
  readonly less: string;
  readonly hint?: string | undefined;
  readonly describedBy?: string | undefined;
  readonly fault?: string | null | undefined;
  readonly isDisabled: boolean;
}

/** Steps of Page Up and Page Down. */
const pageSteps = 10;
/** A button held down goes on after the first and then every second of these [ms] (our choice). */
const hold = { firstMs: 450, nextMs: 90 } as const;

export function NumberEntry(props: NumberEntryProps) {
  const { value, min, max, digits, locale, isDisabled } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const put = (next: number | null) => {
    setTyped(null);
    const kept = next === null ? null : Number(clamped(next, min, max).toFixed(digits));
    if (kept !== value) props.onChange(kept);
  };
  const typedNumber = typed === null ? value : numberFromText(typed, numberMarks(locale));
  const now = Number.isNaN(typedNumber) ? value : typedNumber;
  const commit = () => {
    if (typed !== null) put(now);
  };
  const leave = useRef(commit);
  useEffect(() => {
    leave.current = commit;
  });
  const isTyping = typed !== null;
  useEffect(() => {
    if (!isTyping) return;
    // In one go: after this the page runs nothing any more.
    const gone = () => flushSync(() => leave.current());
    addEventListener('pagehide', gone);
    return () => removeEventListener('pagehide', gone);
  }, [isTyping]);
  const step = (by: number) => put(stepped(now, by, min, max));
  const onKey = (event: KeyboardEvent) => {
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: pageSteps, PageDown: -pageSteps }[event.key];
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Enter') commit();
    if (by === undefined) return;
    event.preventDefault();
    step(by);
  };
  const described = [props.describedBy, props.hint && `${id}-hint`, props.fault && `${id}-fault`]
    .filter(Boolean)
    .join(' ');
  const disabled = isDisabled || undefined;
  return (
    <div className={props.className} data-invalid={props.fault ? true : undefined} data-disabled={disabled}>
      <label className="field-label" htmlFor={id}>
        {props.label}
      </label>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is no grid everywhere, and its legend would be read twice */}
      <div className="quantity-group" role="group">
        <StepButton label={props.less} sign="−" isDisabled={isDisabled || value === min} onStep={() => step(-1)} />
        <input
          ref={input}
          id={id}
          className="quantity-input"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          disabled={isDisabled}
          value={typed ?? (value === null ? '' : numberText(value, digits, locale))}
          aria-invalid={props.fault ? true : undefined}
          aria-describedby={described || undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={onKey}
        />
        <span className="quantity-unit" aria-hidden="true">
          {props.unit}
        </span>
        <StepButton label={props.more} sign="+" isDisabled={isDisabled || value === max} onStep={() => step(1)} />
      </div>
      {props.hint && (
        <span id={`${id}-hint`} className="field-hint">
          {props.hint}
        </span>
      )}
      {props.fault && (
        <span id={`${id}-fault`} className="field-fault" role="alert">
          {props.fault}
        </span>
      )}
    </div>
  );
}

interface StepButtonProps {
  readonly label: string;
  readonly sign: string;
  readonly isDisabled: boolean;
  readonly onStep: () => void;
}

/** The keyboard steps by its arrows within the field, so the button is no further stop of Tab. */
function StepButton({ label, sign, isDisabled, onStep }: StepButtonProps) {
  const latest = useRef(onStep);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const held = useRef(false);
  useEffect(() => {
    latest.current = onStep;
  }, [onStep]);
  const stop = () => clearTimeout(timer.current);
  useEffect(() => stop, []);
  useEffect(() => {
    if (isDisabled) clearTimeout(timer.current);
  }, [isDisabled]);
  const goOn = () => {
    held.current = true;
    latest.current();
    timer.current = setTimeout(goOn, hold.nextMs);
  };
  return (
    <button
      type="button"
      className="step-button"
      tabIndex={-1}
      aria-label={label}
      disabled={isDisabled}
      data-disabled={isDisabled || undefined}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        held.current = false;
        timer.current = setTimeout(goOn, hold.firstMs);
      }}
      onPointerUp={stop}
      onPointerCancel={stop}
      onPointerLeave={stop}
      onContextMenu={(event) => event.preventDefault()}
      onClick={() => {
        if (!held.current) onStep();
        held.current = false;
      }}
    >
      {sign}
    </button>
  );
}

const formats = new Map<string, Intl.NumberFormat>();

function numberText(value: number, digits: number, locale: string): string {
  const key = `${locale} ${digits}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.NumberFormat(locale, { maximumFractionDigits: digits, useGrouping: false });
    formats.set(key, format);
  }
  return format.format(value);
}
