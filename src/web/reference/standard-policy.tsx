// Which space standard the shop goes by when nobody names another; said with who, when and why.
import { useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import type { Fault } from '../../shared/fault.ts';
import { FaultText } from '../controls/fault-text.tsx';
import { HelpLine } from '../controls/help-line.tsx';
import { dateText } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { type Reference, setShopValue, standingAt, withdrawShopValue } from './reference-api.ts';

const path = 'policy.standardId';

export function StandardPolicy({ all, onChanged }: { readonly all: Reference; readonly onChanged: () => void }) {
  const { t, measure } = useSheet();
  const standing = standingAt(all, path);
  const first = { id: String(standing?.value.value ?? all.standards[0]?.id ?? ''), why: '' };
  const { now, change, forget } = useBegun('standard-policy', first);
  const { id, why } = now;
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const nameOf = (wanted: unknown): string => all.standards.find((one) => one.id === wanted)?.name ?? String(wanted);
  const send = async (sent: ReturnType<typeof withdrawShopValue>) => {
    const answer = await sent;
    setFaults(answer.ok ? [] : answer.faults);
    if (!answer.ok) return;
    forget();
    onChanged();
  };
  return (
    <section className="ref-policy">
      <h2>{t('space.policy')}</h2>
      <p>
        {standing
          ? t('space.policyIs', {
              name: nameOf(standing.value.value),
              by: standing.by,
              date: dateText(standing.at.slice(0, 10), measure.locale),
              why: standing.why,
            })
          : t('space.policyNone')}
      </p>
      <form
        className="ref-form"
        onSubmit={(event) => {
          event.preventDefault();
          void send(setShopValue(path, { value: id }, why));
        }}
      >
        <label className="field-label" htmlFor="policy-standard">
          {t('space.standard')}
        </label>
        <select
          id="policy-standard"
          className="select-plain"
          value={id}
          aria-describedby="policy-standard-help"
          onChange={(event) => change({ id: event.target.value })}
        >
          {all.standards.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <HelpLine id="policy-standard-help" text={t('help.own.standard')} />
        <TextField className="text-field" value={why} onChange={(next) => change({ why: next })}>
          <Label className="field-label">{t('ref.why')}</Label>
          <Input className="text-input" />
          <Text slot="description" className="field-hint">
            {t('help.own.why')}
          </Text>
        </TextField>
        <div role="alert">
          {faults.map((fault) => (
            <p key={fault.code} className="field-fault">
              <FaultText fault={fault} />
            </p>
          ))}
        </div>
        <div className="field-row">
          <Button className="button" type="submit">
            {t('ref.keep')}
          </Button>
          {standing && (
            <Button className="button button-quiet" onPress={() => void send(withdrawShopValue(standing.id, why))}>
              {t('ref.withdraw')}
            </Button>
          )}
        </div>
      </form>
    </section>
  );
}
