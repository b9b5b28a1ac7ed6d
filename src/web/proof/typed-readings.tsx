// What was typed in so far, newest first. A mistyped reading is set aside with its reason; it stays to be read, struck
// through, with who and when, and counts again at one press.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { type HandPlace, handPlaces } from '../../proving/hand-readings.ts';
import type { Asked } from '../animal/animal-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import { Faults } from './faults.tsx';
import { setReadingAside, type TypedReading, takeReadingBack } from './proof-api.ts';
import { wallMoment } from './wall-words.ts';

interface TypedReadingsProps {
  readonly enquiryId: string;
  readonly readings: readonly TypedReading[];
  readonly onChange: () => void;
}

/** Four days of three readings; older ones are behind a press. Our choice. */
const shownAtOnce = 12;

export function TypedReadings({ enquiryId, readings, onChange }: TypedReadingsProps) {
  const { t } = useSheet();
  if (readings.length === 0) return null;
  const rows = (some: readonly TypedReading[]) => (
    <ul className="proof-list">
      {some.map((reading) => (
        <TypedRow key={reading.id} enquiryId={enquiryId} reading={reading} onChange={onChange} />
      ))}
    </ul>
  );
  const older = readings.slice(shownAtOnce);
  return (
    <>
      <h3>{t('proof.typed')}</h3>
      {rows(readings.slice(0, shownAtOnce))}
      {older.length > 0 && (
        <details>
          <summary>{t('proof.typedOlder', { count: older.length })}</summary>
          {rows(older)}
        </details>
      )}
    </>
  );
}

function TypedRow({ enquiryId, reading, onChange }: Omit<TypedReadingsProps, 'readings'> & { reading: TypedReading }) {
  const { t, measure } = useSheet();
  const valuesSaid = useValuesSaid();
  const place = `aside-${reading.id}`;
  const [asking, setAsking] = useState(useWasBegun(place));
  const { now, change, newest, forget } = useBegun(place, { why: '' });
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const { aside } = reading;
  const said = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeStyle: 'short' });
  const moment = wallMoment(measure.locale, reading.atS);
  const done = async (sent: Promise<Asked<unknown>>) => {
    const told = await sent;
    setAnswer(told);
    if (!told.ok) return;
    setAsking(false);
    forget();
    onChange();
  };
  return (
    <li>
      <span>
        <strong>{moment}</strong> · {reading.fromKeeper ? t('proof.typedByKeeper') : reading.by}
      </span>
      {aside === null ? <span>{valuesSaid(reading.valuesC)}</span> : <s>{valuesSaid(reading.valuesC)}</s>}
      {aside !== null && (
        <>
          <span>{t('proof.typedAside', { by: aside.by, at: said.format(new Date(aside.at)), why: aside.why })}</span>
          <Button
            className="quiet-button"
            aria-label={t('proof.typedBackOf', { at: moment })}
            onPress={() => void done(takeReadingBack(enquiryId, reading.id))}
          >
            {t('proof.takeFileBack')}
          </Button>
        </>
      )}
      {aside === null && !asking && (
        <Button
          className="quiet-button"
          aria-label={t('proof.typedSetAsideOf', { at: moment })}
          onPress={() => setAsking(true)}
        >
          {t('proof.typedSetAside')}
        </Button>
      )}
      {aside === null && asking && (
        <TextField className="text-field" value={now.why} onChange={(why) => change({ why })} maxLength={500}>
          <Label className="field-label">{t('proof.typedWhy')}</Label>
          <Input className="text-input" />
          <span className="field-row">
            <Button
              className="button button-quiet"
              isDisabled={now.why.trim() === ''}
              onPress={() => void done(setReadingAside(enquiryId, reading.id, newest().why))}
            >
              {t('proof.typedSetAside')}
            </Button>
            <Button
              className="quiet-button"
              onPress={() => {
                setAsking(false);
                forget();
              }}
            >
              {t('proof.typedLeave')}
            </Button>
          </span>
        </TextField>
      )}
      <Faults answer={answer} />
    </li>
  );
}

/** "Basking surface 31.5 °C, Room 18 °C". */
export function useValuesSaid(): (valuesC: Readonly<Partial<Record<HandPlace, number>>>) => string {
  const { t, measure } = useSheet();
  return (valuesC) =>
    handPlaces
      .flatMap((p) =>
        valuesC[p] === undefined ? [] : [`${t(`proof.place.${p}`)} ${measure.text('temperature', valuesC[p])}`],
      )
      .join(', ');
}
