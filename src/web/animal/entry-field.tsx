// One field of an entry: a choice, a number or a line of text, with its label.
import { isMessageKey } from '../messages/translate.ts';
import { shownFromStored, storedFromShown } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { ShapeField } from './entry-shape.ts';
import { useSaying } from './say.ts';

interface EntryFieldProps {
  /** Keeps two forms on one sheet apart. */
  readonly within?: string;
  readonly field: ShapeField;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}

export function EntryField({ field, value, onChange, within = 'entry' }: EntryFieldProps) {
  const { t, measure, settings } = useSheet();
  const isMass = field.name === 'massG';
  const shown = (one: number): number =>
    isMass && settings.mass === 'oz' ? Number(shownFromStored('mass', one, settings).toFixed(3)) : one;
  const stored = (one: number): number =>
    isMass && settings.mass === 'oz' ? Number(storedFromShown('mass', one, settings).toFixed(2)) : one;
  const say = useSaying();
  const id = `${within}-${field.name}`;
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
        {isMass && `, ${measure.write('mass', 0).unit}`}
      </label>
      {words ? (
        <select
          id={id}
          className="select-plain"
          value={chosen}
          onChange={(event) => onChange(field.flag ? event.target.value === 'yes' : event.target.value)}
        >
          {words.map((one) => (
            <option key={one} value={one}>
              {word(one)}
            </option>
          ))}
        </select>
      ) : field.number ? (
        <input
          id={id}
          className="text-input"
          type="number"
          inputMode="decimal"
          step="any"
          value={value === null ? '' : String(shown(Number(value)))}
          onChange={(event) => onChange(event.target.value === '' ? null : stored(Number(event.target.value)))}
        />
      ) : (
        <input
          id={id}
          className="text-input"
          type="text"
          maxLength={2000}
          value={String(value)}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </>
  );
}
