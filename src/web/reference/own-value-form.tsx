// The shop puts its own value over a shipped one, or goes back. Everything wrong is said at once, below the fields.
import { useId, useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import type { Fact } from '../../husbandry/fact.ts';
import { limitsFor } from '../../husbandry/quantities.ts';
import type { Fault } from '../../shared/fault.ts';
import { FaultText } from '../controls/fault-text.tsx';
import { HelpLine } from '../controls/help-line.tsx';
import { kindOf, numberText, type Parts } from '../controls/parts-text.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { type ShopValue, setShopValue, withdrawShopValue } from './reference-api.ts';

interface OwnValueFormProps {
  readonly path: string;
  readonly name: string;
  readonly fact: Fact;
  /** Words to choose from; null for numbers and free text. */
  readonly words: readonly string[] | null;
  readonly own: ShopValue | null;
  readonly onDone: () => void;
}

export const ownValuePlace = (path: string): string => `own-${path}`;

const partNames = ['low', 'high', 'value', 'values'] as const;
/** Keys that may only become more careful; the shop computer holds it, the form says so first. */
const carefulKeys: readonly string[] = ['emitsLight', 'needsGuard', 'holder', 'years'];

export function OwnValueForm({ path, name, fact, words, own, onDone }: OwnValueFormProps) {
  const { t, measure } = useSheet();
  const key = path.split('.').at(-1) ?? '';
  const parts = partNames.filter((part) => part in fact);
  const first = Object.fromEntries(parts.map((part) => [part, own?.value[part] ?? fact[part] ?? null])) as Parts;
  const { now, change: begin, forget } = useBegun(ownValuePlace(path), { value: first, why: '' });
  const { value, why } = now;
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [unreached, setUnreached] = useState(false);
  const limits = limitsFor(key);
  const help = `${useId()}-help`;
  const kind = kindOf(key, measure);
  const send = async (sent: Promise<{ ok: boolean; faults?: readonly Fault[]; status?: number }>) => {
    const answer = await sent;
    setFaults(answer.faults ?? []);
    setUnreached(!answer.ok && (answer.faults ?? []).length === 0);
    if (!answer.ok) return;
    forget();
    onDone();
  };
  const filled: Parts = Object.fromEntries(Object.entries(value).filter(([, part]) => part !== null));
  return (
    <form
      className="ref-form"
      aria-label={t('ref.changeOf', { what: name })}
      onSubmit={(event) => {
        event.preventDefault();
        void send(setShopValue(path, filled, why));
      }}
    >
      <div className="field-row">
        {parts.map((part) => {
          const now = (value[part] ?? null) as number | string | null;
          const change = (next: number | string | null) => begin({ value: { ...value, [part]: next } });
          if (part === 'values')
            return (
              <ListField
                key={part}
                first={Array.isArray(value.values) ? value.values : []}
                help={help}
                numbers={Array.isArray(fact.values) && typeof fact.values[0] === 'number'}
                words={words}
                onChange={(values) => begin({ value: { ...value, values } })}
              />
            );
          if (words && typeof fact.value === 'string')
            return (
              <label key={part} className="lists-place">
                <span className="field-label">{t(`ref.${part}`)}</span>
                <select
                  className="select-plain"
                  value={String(now ?? '')}
                  aria-describedby={help}
                  onChange={(event) => change(event.target.value)}
                >
                  {words.map((word) => (
                    <option key={word} value={word}>
                      {isMessageKey(`factword.${word}`) ? t(`factword.${word}` as 'factword.yes') : word}
                    </option>
                  ))}
                </select>
              </label>
            );
          if (typeof fact.value === 'string' || !kind)
            return (
              <TextField
                key={part}
                className="text-field"
                aria-describedby={help}
                value={String(now ?? '')}
                onChange={(text) => change(typeof fact[part] === 'string' ? text : asNumber(text))}
              >
                <Label className="field-label">{t(`ref.${part}`)}</Label>
                <Input className="text-input" />
              </TextField>
            );
          return (
            <QuantityField
              key={part}
              label={t(`ref.${part}`)}
              kind={kind.kind}
              value={typeof now === 'number' ? now * kind.toStored : null}
              onChange={(next) => change(next === null ? null : Number((next / kind.toStored).toFixed(3)))}
              min={-10000}
              max={100000}
              digits={kind.digits}
              describedBy={help}
            />
          );
        })}
      </div>
      <HelpLine id={help} text={t(parts.includes('low') ? 'help.own.span' : 'help.own.value')} />
      {(carefulKeys.includes(key) || path.includes('.drives.')) && <p className="field-hint">{t('lists.careful')}</p>}
      {limits && typeof fact.value !== 'string' && (
        <p className="field-hint">
          {t('ref.possible', {
            low: numberText(key, limits.low, limits.low, measure),
            high: numberText(key, limits.high, limits.high, measure),
          })}
        </p>
      )}
      <TextField className="text-field" value={why} onChange={(next) => begin({ why: next })}>
        <Label className="field-label">{t('ref.why')}</Label>
        <Input className="text-input" />
        <Text slot="description" className="field-hint">
          {t('help.own.why')}
        </Text>
      </TextField>
      <div role="alert">
        {faults.map((fault, i) => (
          <p key={`${fault.code}-${i}`} className="field-fault">
            <FaultText fault={fault} />
          </p>
        ))}
        {unreached && <p className="field-fault">{t('animals.unreached')}</p>}
      </div>
      <div className="field-row">
        <Button className="button" type="submit">
          {t('ref.keep')}
        </Button>
        {own && (
          <Button className="button button-quiet" onPress={() => void send(withdrawShopValue(own.id, why))}>
            {t('ref.withdraw')}
          </Button>
        )}
      </div>
    </form>
  );
}

interface ListFieldProps {
  /** Id of the line that says what is asked. */
  readonly help: string;
  readonly first: readonly (number | string)[];
  readonly numbers: boolean;
  readonly words: readonly string[] | null;
  readonly onChange: (values: readonly (number | string)[]) => void;
}

/** Several numbers or words, with commas between them. */
function ListField({ help, first, numbers, words, onChange }: ListFieldProps) {
  const { t } = useSheet();
  const [text, setText] = useState(first.join(', '));
  const change = (typed: string) => {
    setText(typed);
    const parts = typed.split(/[,;]/).map((one) => one.trim());
    onChange(parts.filter((one) => one !== '').map((one) => (numbers ? (asNumber(one) ?? one) : one)));
  };
  return (
    <div>
      <TextField className="text-field" aria-describedby={help} value={text} onChange={change}>
        <Label className="field-label">{t('ref.value')}</Label>
        <Input className="text-input" />
      </TextField>
      {words && <p className="field-hint">{t('lists.commas', { words: words.join(', ') })}</p>}
    </div>
  );
}

/** What was typed as a number when it is one; else as typed, so that the answer can say what is wrong. */
function asNumber(text: string): number | string | null {
  const number = Number(text.replace(',', '.'));
  return text.trim() === '' ? null : Number.isFinite(number) ? number : text;
}
