// Live sensors: what each says now, unknown when it has fallen silent; connecting one.
import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type LogPlace, logPlaces, type Quantity } from '../../proving/reading-log.ts';
import type { Asked } from '../animal/animal-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import { Faults } from './faults.tsx';
import { addSource, type LiveState, readLive } from './proof-api.ts';
import { useKept } from './use-kept.ts';

/** How often the states are asked for while the sheet is open [ms]. */
const everyMs = 30_000;

export function LivePart({ enquiryId }: { readonly enquiryId: string }) {
  const { t, measure } = useSheet();
  const { answer, again } = useKept(useCallback(() => readLive(enquiryId), [enquiryId]));
  const [adding, setAdding] = useState(useWasBegun(sourcePlace(enquiryId)));
  useEffect(() => {
    const timer = setInterval(again, everyMs);
    return () => clearInterval(timer);
  }, [again]);
  const sources = answer?.ok ? answer.value.sources : [];
  const time = (iso: string | null) =>
    iso === null
      ? ''
      : new Intl.DateTimeFormat(measure.locale, { hour: '2-digit', minute: '2-digit' }).format(new Date(iso));
  const said = (s: LiveState): string => {
    if (s.state === 'never') return t('proof.liveNever');
    if (s.state === 'stale' || s.value === null) return t('proof.liveStale', { time: time(s.lastAt) });
    const kind = s.quantity === 'tempC' ? 'temperature' : s.quantity === 'rhPct' ? 'percent' : 'power';
    return t('proof.liveFresh', { value: measure.text(kind, s.value), time: time(s.lastAt) });
  };
  return (
    <section className="sheet-part" aria-labelledby="live-title">
      <h2 id="live-title">{t('proof.live')}</h2>
      {sources.length === 0 && <p>{t('proof.liveNone')}</p>}
      <ul className="proof-list">
        {sources.map((s) => (
          <li key={s.id} className={s.state === 'fresh' ? '' : 'live-unknown'}>
            <strong>
              {s.label}, {t(`proof.place.${s.place}`)}
            </strong>
            <span>{said(s)}</span>
          </li>
        ))}
      </ul>
      {adding ? (
        <SourceForm enquiryId={enquiryId} onDone={again} />
      ) : (
        <Button className="button button-quiet" onPress={() => setAdding(true)}>
          {t('proof.liveAdd')}
        </Button>
      )}
    </section>
  );
}

const sourcePlace = (enquiryId: string): string => `source-${enquiryId}`;
const noSource = {
  label: '',
  place: 'basking-surface' as LogPlace,
  quantity: 'tempC' as Quantity,
  topic: '',
  intervalS: 60,
};

function SourceForm({ enquiryId, onDone }: { readonly enquiryId: string; readonly onDone: () => void }) {
  const { t } = useSheet();
  const { now, change, forget } = useBegun(sourcePlace(enquiryId), noSource);
  const { label, place, quantity, topic, intervalS } = now;
  const [answer, setAnswer] = useState<Asked<{ readonly secret: string }> | null>(null);
  const add = async () => {
    const added = await addSource(enquiryId, {
      label,
      place,
      quantity,
      intervalS,
      topic: topic.trim() === '' ? null : topic.trim(),
      valueKey: null,
      instrumentId: null,
    });
    setAnswer(added);
    if (added.ok) forget();
    onDone();
  };
  if (answer?.ok)
    return (
      <p>
        {t('proof.liveAddress')}{' '}
        <code className="live-address">{`POST ${location.origin}/api/live/${answer.value.secret}  {"value": 31.2}`}</code>
      </p>
    );
  return (
    <div className="check-form">
      <label className="field-label">
        {t('proof.liveName')}
        <input
          className="text-input"
          maxLength={80}
          value={label}
          onChange={(event) => change({ label: event.target.value })}
        />
      </label>
      <div className="field-row">
        <label className="field-label">
          {t('proof.where', { label: label || '…' })}
          <select
            className="text-input"
            value={place}
            onChange={(event) => change({ place: event.target.value as LogPlace })}
          >
            {logPlaces.map((p) => (
              <option key={p} value={p}>
                {t(`proof.place.${p}`)}
              </option>
            ))}
          </select>
        </label>
        <select
          className="text-input"
          aria-label={t('proof.unit')}
          value={quantity}
          onChange={(event) => change({ quantity: event.target.value as Quantity })}
        >
          <option value="tempC">°C</option>
          <option value="rhPct">%</option>
          <option value="powerW">W</option>
        </select>
      </div>
      <label className="field-label">
        {t('proof.liveEvery')}
        <input
          type="number"
          className="text-input"
          min={5}
          max={86400}
          value={intervalS}
          aria-describedby="live-every-hint"
          onChange={(event) => change({ intervalS: Number(event.target.value) })}
        />
      </label>
      <span id="live-every-hint" className="field-hint">
        {t('proof.liveEveryHint')}
      </span>
      <label className="field-label">
        {t('proof.liveTopic')}
        <input
          className="text-input"
          maxLength={200}
          aria-describedby="live-topic-hint"
          value={topic}
          onChange={(event) => change({ topic: event.target.value })}
        />
      </label>
      <span id="live-topic-hint" className="field-hint">
        {t('proof.liveTopicHint')}
      </span>
      <Button className="button" isDisabled={label.trim() === ''} onPress={() => void add()}>
        {t('proof.liveAdd')}
      </Button>
      <Faults answer={answer} />
    </div>
  );
}
