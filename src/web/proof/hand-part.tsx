// Three numbers and a time, typed at the desk on the phone; and what was typed before.
import { useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import { type HandPlace, handLimitsC, handPlaces } from '../../proving/hand-readings.ts';
import type { Asked } from '../animal/animal-api.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { Faults } from './faults.tsx';
import { readTyped, typeReading } from './proof-api.ts';
import { TypedReadings } from './typed-readings.tsx';
import { useKept } from './use-kept.ts';
import { wallNow } from './wall-words.ts';

type Values = Readonly<Record<HandPlace, number | null>>;
const none: Values = { 'basking-surface': null, 'cool-air': null, room: null };

export function HandPart({ enquiryId, onChange }: { readonly enquiryId: string; readonly onChange: () => void }) {
  const { t } = useSheet();
  const [openedAt] = useState(() => wallNow(new Date()));
  const { now, change, newest, forget } = useBegun(`hand-${enquiryId}`, { values: none, at: openedAt });
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const typed = useKept(useCallback(() => readTyped(enquiryId), [enquiryId]));
  const changed = () => {
    typed.again();
    onChange();
  };
  const keep = async () => {
    const valuesC = Object.fromEntries(Object.entries(newest().values).filter(([, v]) => v !== null));
    const sent = await typeReading(enquiryId, { at: newest().at, valuesC, clientKey: crypto.randomUUID() });
    setAnswer(sent);
    if (!sent.ok) return;
    forget();
    changed();
  };
  return (
    <section className="sheet-part" aria-labelledby="hand-title">
      <h2 id="hand-title">{t('proof.hand')}</h2>
      <p className="field-hint">{t('proof.handSay')}</p>
      <div className="field-row">
        {handPlaces.map((place) => (
          <QuantityField
            key={place}
            compact
            kind="temperature"
            label={t(`proof.place.${place}`)}
            value={now.values[place]}
            min={handLimitsC.low}
            max={handLimitsC.high}
            onChange={(v) => change({ values: { ...newest().values, [place]: v } })}
          />
        ))}
      </div>
      <label className="field-label">
        {t('proof.handAt')}
        <input
          type="datetime-local"
          className="text-input"
          value={now.at}
          onChange={(event) => change({ at: event.target.value })}
        />
      </label>
      <Button className="button" onPress={() => void keep()}>
        {t('proof.handKeep')}
      </Button>
      <p role="status">{answer?.ok && t('proof.handKept')}</p>
      <Faults answer={answer} />
      <TypedReadings
        enquiryId={enquiryId}
        readings={typed.answer?.ok ? typed.answer.value.readings : []}
        onChange={changed}
      />
    </section>
  );
}
