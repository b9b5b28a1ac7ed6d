// Three numbers and a time, typed at the desk on the phone.
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { type HandPlace, handLimitsC, handPlaces } from '../../proving/hand-readings.ts';
import type { Asked } from '../animal/animal-api.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { Faults } from './faults.tsx';
import { typeReading } from './proof-api.ts';
import { wallNow } from './wall-words.ts';

type Values = Readonly<Record<HandPlace, number | null>>;
const none: Values = { 'basking-surface': null, 'cool-air': null, room: null };

export function HandPart({ enquiryId, onChange }: { readonly enquiryId: string; readonly onChange: () => void }) {
  const { t } = useSheet();
  const [values, setValues] = useState<Values>(none);
  // a field gives its number when it is left: pressing the button leaves it, so the newest numbers are read here
  const newest = useRef<Values>(none);
  const put = (next: Values) => {
    newest.current = next;
    setValues(next);
  };
  const [at, setAt] = useState(() => wallNow(new Date()));
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const keep = async () => {
    const valuesC = Object.fromEntries(Object.entries(newest.current).filter(([, v]) => v !== null));
    const sent = await typeReading(enquiryId, { at, valuesC, clientKey: crypto.randomUUID() });
    setAnswer(sent);
    if (!sent.ok) return;
    put(none);
    onChange();
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
            value={values[place]}
            min={handLimitsC.low}
            max={handLimitsC.high}
            onChange={(v) => put({ ...newest.current, [place]: v })}
          />
        ))}
      </div>
      <label className="field-label">
        {t('proof.handAt')}
        <input
          type="datetime-local"
          className="text-input"
          value={at}
          onChange={(event) => setAt(event.target.value)}
        />
      </label>
      <Button className="button" onPress={() => void keep()}>
        {t('proof.handKeep')}
      </Button>
      <p role="status">{answer?.ok && t('proof.handKept')}</p>
      <Faults answer={answer} />
    </section>
  );
}
