// One column of an article, asked in the person's units: a word to choose, yes or no, a number, a text.
import { Input, Label, TextField } from 'react-aria-components';
import type { ShelfField } from '../../planning/shelf/shelf-fields.ts';
import type { UnitChoice } from '../../shared/measure.ts';
import { NumberEntry } from '../controls/number-entry.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import type { MessageKey } from '../messages/en.ts';
import { isMessageKey } from '../messages/translate.ts';
import type { QuantityKind } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';

interface ArticleFieldProps {
  readonly field: ShelfField;
  readonly value: unknown;
  readonly currency: string;
  readonly materials: readonly string[];
  readonly onChange: (value: unknown) => void;
}

/** How a number is shown: a quantity of the sheet, or a plain one with its own unit. */
interface Shown {
  readonly kind?: QuantityKind;
  readonly unit?: string;
  /** Shown value for each stored one. */
  readonly factor: number;
  readonly digits: number;
}

function shownAs(key: string, currency: string, settings: UnitChoice): Shown {
  if (key.endsWith('M2') && settings.length === 'in') return { unit: 'in²', factor: 1 / inchM ** 2, digits: 1 };
  if (key.endsWith('M2')) return { unit: 'cm²', factor: 10_000, digits: 1 };
  if (key.endsWith('Frac')) return { kind: 'percent', factor: 100, digits: 0 };
  if (key.endsWith('W')) return { kind: 'power', factor: 1, digits: 1 };
  if (key.endsWith('K')) return { kind: 'difference', factor: 1, digits: 2 };
  if (key.endsWith('L')) return { unit: 'l', factor: 1, digits: 1 };
  if (key.endsWith('M')) return { kind: 'length', factor: 1, digits: 2 };
  return { unit: currency, factor: 1, digits: 2 };
}

/** By its definition. */
const inchM = 0.0254;

const tidy = (value: number): number => Number(value.toPrecision(10));

export function ArticleField({ field, value, currency, materials, onChange }: ArticleFieldProps) {
  const { t, settings } = useSheet();
  const label = t(`shelf.field.${field.key}` as MessageKey);
  const id = `article-${field.key}`;
  const hintKey = `shelf.hint.${field.key}`;
  const hint = isMessageKey(hintKey) ? t(hintKey) : undefined;
  const words = field.key.endsWith('aterialId') ? materials : field.words;
  if (field.type === 'flag')
    return (
      <label className="article-flag" htmlFor={id}>
        <input id={id} type="checkbox" checked={value === true} onChange={(event) => onChange(event.target.checked)} />
        <span>
          {label}
          {hint && <span className="field-hint">{hint}</span>}
        </span>
      </label>
    );
  if (words)
    return (
      <div className="article-field">
        <label className="field-label" htmlFor={id}>
          {label}
        </label>
        <select
          id={id}
          className="select-plain"
          aria-describedby={hint && `${id}-hint`}
          value={String(value ?? '')}
          onChange={(event) => onChange(event.target.value)}
        >
          {!words.includes(String(value)) && <option value="">—</option>}
          {words.map((word) => (
            <option key={word} value={word} lang={field.words ? undefined : 'en'}>
              {field.words ? t(`shelf.word.${word}` as MessageKey) : word}
            </option>
          ))}
        </select>
        {hint && (
          <span id={`${id}-hint`} className="field-hint">
            {hint}
          </span>
        )}
      </div>
    );
  if (field.type === 'text')
    return (
      <TextField className="text-field article-field" value={String(value ?? '')} onChange={onChange}>
        <Label className="field-label">{label}</Label>
        <Input className="text-input" />
      </TextField>
    );
  return <ArticleNumber {...{ field, value, label, hint, onChange }} shown={shownAs(field.key, currency, settings)} />;
}

interface ArticleNumberProps {
  readonly field: ShelfField;
  readonly value: unknown;
  readonly label: string;
  readonly hint: string | undefined;
  readonly shown: Shown;
  readonly onChange: (value: unknown) => void;
}

function ArticleNumber({ field, value, label, hint, shown, onChange }: ArticleNumberProps) {
  const { t, measure } = useSheet();
  const { kind, unit, factor, digits } = shown;
  const now = typeof value === 'number' ? value * factor : null;
  const back = (next: number | null) => onChange(next === null || Number.isNaN(next) ? null : tidy(next / factor));
  const limits = { low: (field.low ?? 0) * factor, high: (field.high ?? 0) * factor };
  if (kind)
    return (
      <QuantityField
        label={label}
        kind={kind}
        value={now}
        onChange={back}
        min={limits.low}
        max={limits.high}
        digits={digits}
        {...(hint === undefined ? {} : { hint })}
        compact
      />
    );
  return (
    <NumberEntry
      className="quantity quantity-compact"
      label={label}
      unit={unit ?? ''}
      locale={measure.locale}
      value={now}
      onChange={back}
      min={limits.low}
      max={limits.high}
      digits={digits}
      more={t('field.more', { name: label })}
      less={t('field.less', { name: label })}
      hint={hint}
      isDisabled={false}
    />
  );
}
