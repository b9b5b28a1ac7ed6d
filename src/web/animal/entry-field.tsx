// One field of an entry: a choice, a number or a line of text, with its label.
import { useState } from 'react';
import { HelpLine, useHelp } from '../controls/help-line.tsx';
import { numberFromText, numberMarks } from '../controls/number-text.ts';
import { kindOf } from '../controls/parts-text.ts';
import { isMessageKey } from '../messages/translate.ts';
import { shownFromStored, storedFromShown } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { EntryKind, ShapeField } from './entry-shape.ts';
import { useSaying } from './say.ts';

interface EntryFieldProps {
  /** Keeps two forms on one sheet apart. */
  readonly within?: string;
  readonly kind: EntryKind;
  readonly field: ShapeField;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}

export function EntryField({ kind, field, value, onChange, within = 'entry' }: EntryFieldProps) {
  const { t, measure } = useSheet();
  const quantity = kindOf(field.name, measure);
  const say = useSaying();
  const id = `${within}-${field.name}`;
  const help = useHelp()(`entry.${kind}.${field.name}`);
  const described = help && `${id}-help`;
  const key = `field.${field.name}`;
  const label = isMessageKey(key) ? t(key) : field.name;
  const word = (one: string): string => {
    if (field.name === 'preyId') return say.prey(one);
    return isMessageKey(`word.${one}`) ? t(`word.${one}` as 'word.yes') : one;
  };
  // what was written before the choice existed stays choosable
  const words =
    field.words && !field.flag && !field.words.includes(String(value)) ? [String(value), ...field.words] : field.words;
  const chosen = field.flag ? (value === true ? 'yes' : 'no') : String(value);
  return (
    <>
      <label className="field-label" htmlFor={id}>
        {label}
        {quantity && `, ${measure.write(quantity.kind, 0).unit}`}
      </label>
      {words ? (
        <select
          id={id}
          className="select-plain"
          value={chosen}
          aria-describedby={described}
          onChange={(event) => onChange(field.flag ? event.target.value === 'yes' : event.target.value)}
        >
          {words.map((one) => (
            <option key={one} value={one}>
              {word(one)}
            </option>
          ))}
        </select>
      ) : field.number ? (
        <NumberLine
          id={id}
          name={field.name}
          described={described}
          value={value === null ? null : Number(value)}
          onChange={onChange}
        />
      ) : (
        <input
          id={id}
          className="text-input"
          type="text"
          maxLength={2000}
          value={String(value)}
          aria-describedby={described}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      <HelpLine id={`${id}-help`} text={help} />
    </>
  );
}

interface NumberLineProps {
  readonly id: string;
  /** Name of the field, which names its quantity. */
  readonly name: string;
  readonly described: string | undefined;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}

/** A number with point or comma: a number field of the browser drops the one that its language has not. */
function NumberLine({ id, name, described, value, onChange }: NumberLineProps) {
  const { measure, settings } = useSheet();
  const [typed, setTyped] = useState('');
  const quantity = kindOf(name, measure);
  const stored = (text: string): number | null => {
    const number = numberFromText(text, numberMarks(measure.locale));
    if (number === null || Number.isNaN(number)) return null;
    if (quantity === null) return number;
    return Number((storedFromShown(quantity.kind, number, settings) / quantity.toStored).toFixed(2));
  };
  const written = (): string => {
    if (value === null) return '';
    const shown = quantity === null ? value : shownFromStored(quantity.kind, value * quantity.toStored, settings);
    return shown.toLocaleString(measure.locale, { maximumFractionDigits: 3, useGrouping: false });
  };
  // What was typed stands as long as it is what is kept: "23," on its way to "23,5" is not written anew.
  return (
    <input
      id={id}
      className="text-input"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-describedby={described}
      value={stored(typed) === value ? typed : written()}
      onChange={(event) => {
        setTyped(event.target.value);
        onChange(stored(event.target.value));
      }}
    />
  );
}
