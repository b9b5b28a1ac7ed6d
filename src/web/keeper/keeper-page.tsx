// The keeper's page behind a link: the drawing, where to read, three big fields, and whether the home is proven yet.
// Works without a connection: readings wait on the phone and are sent later.
import '../proof/proof.css';
import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Enclosure } from '../../physics/enclosure.ts';
import { type HandPlace, handLimitsC, handPlaces } from '../../proving/hand-readings.ts';
import type { Fault } from '../../shared/fault.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { faultSentences } from '../messages/fault-words.ts';
import { DrawingPatterns } from '../pictures/drawing-patterns.tsx';
import { SectionDrawing } from '../pictures/section-drawing.tsx';
import { useValuesSaid } from '../proof/typed-readings.tsx';
import { wallMoment, wallNow } from '../proof/wall-words.ts';
import { keepPagesForOffline } from '../round/offline-pages.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { useBegun } from '../state/begun.ts';
import { AftercarePart } from './aftercare-part.tsx';
import { type KeeperPageData, openPage, send } from './keeper-api.ts';
import { forget, keepPage, keptPage, queue, unqueue, waiting } from './keeper-store.ts';
import { ReadingMarks } from './reading-marks.tsx';

type Values = Readonly<Record<HandPlace, number | null>>;
/** Height of the drawing's inside on a phone [px]. */
const insideHeight = 200;
const none: Values = { 'basking-surface': null, 'cool-air': null, room: null };

export function KeeperPage({ secret }: { readonly secret: string }) {
  const { t, measure } = useSheet();
  const [page, setPage] = useState<KeeperPageData | null>(() => keptPage(secret) as KeeperPageData | null);
  const [gone, setGone] = useState(false);
  const [offline, setOffline] = useState(false);
  const { now: values, newest, change, forget: startAnew } = useBegun(`keeper-${secret}`, none);
  const [empty, setEmpty] = useState(false);
  const [count, setCount] = useState(() => waiting(secret).length);
  const [sent, setSent] = useState(false);
  const [refused, setRefused] = useState<readonly Fault[]>([]);
  const [asking, setAsking] = useState(false);
  const [ref, width] = useWidth<HTMLDivElement>(520);
  const valuesSaid = useValuesSaid();

  const refresh = useCallback(async () => {
    const list = waiting(secret);
    if (list.length > 0) await deliver(secret, list, setRefused);
    setCount(waiting(secret).length);
    const answer = await openPage(secret);
    if (answer.ok) {
      keepPage(secret, answer.value);
      setPage(answer.value);
      setOffline(false);
    } else if (answer.status === 404 || answer.status === 400) {
      forget(secret);
      setGone(true);
    } else setOffline(true);
  }, [secret]);

  useEffect(() => {
    keepPagesForOffline();
    void refresh();
    const again = () => void refresh();
    addEventListener('online', again);
    return () => removeEventListener('online', again);
  }, [refresh]);

  if (gone) return <main className="keeper">{t('keeper.gone')}</main>;
  if (page === null) return <main className="keeper">{t(offline ? 'keeper.offline' : 'keeper.loading')}</main>;
  const home = page.home as unknown as Enclosure;
  const press = async () => {
    const valuesC = Object.fromEntries(Object.entries(newest()).filter(([, v]) => v !== null));
    if (Object.keys(valuesC).length === 0) {
      setEmpty(true);
      return;
    }
    queue(secret, { at: wallNow(new Date()), valuesC, clientKey: crypto.randomUUID() });
    startAnew();
    setRefused([]);
    await refresh();
    setSent(waiting(secret).length === 0);
  };
  const day = new Intl.DateTimeFormat(measure.locale, { day: 'numeric', month: 'long' }).format(
    new Date(page.expiresAt),
  );
  return (
    <main className="keeper" ref={ref}>
      <DrawingPatterns />
      <AftercarePart secret={secret} onAsking={setAsking} />
      <div hidden={asking}>
        <h1>{t('keeper.title')}</h1>
        <p className={page.state === 'proven' ? 'keeper-state keeper-proven' : 'keeper-state'} role="status">
          {t(`keeper.${page.state}`)}
        </p>
        <p>{t(page.state === 'proven' ? 'keeper.provenSay' : 'keeper.notYetSay')}</p>
        <div className="keeper-drawing">
          <SectionDrawing
            enclosure={home}
            readings={null}
            climate={null}
            width={width}
            mostInsideHeight={insideHeight}
            describedBy="keeper-drawing"
            moves={null}
          />
          <ReadingMarks home={home} width={width} mostInsideHeight={insideHeight} />
        </div>
        <p id="keeper-drawing">
          {t('keeper.drawing')} {t('keeper.probe')}
        </p>
        {handPlaces.map((place, i) => (
          <QuantityField
            key={place}
            kind="temperature"
            label={`${i + 1}. ${t(`keeper.${place}`)}`}
            value={values[place]}
            min={handLimitsC.low}
            max={handLimitsC.high}
            onChange={(v) => {
              change({ [place]: v });
              setEmpty(false);
            }}
          />
        ))}
        <Button className="button button-large" onPress={() => void press()}>
          {t('keeper.send')}
        </Button>
        <div role="status">
          {empty && <p className="field-fault">{t('keeper.empty')}</p>}
          {count > 0 && <p>{t('keeper.waiting', { count })}</p>}
          {offline && <p>{t('keeper.offline')}</p>}
          {sent && count === 0 && refused.length === 0 && <p>{t('keeper.sent')}</p>}
          {refused.length > 0 && (
            <p className="field-fault">
              {t('keeper.refused')} {faultSentences(refused, measure)}
            </p>
          )}
        </div>
        {page.readings.length > 0 && (
          <>
            <h2>{t('keeper.done')}</h2>
            <ul className="proof-list">
              {page.readings.map((r) => (
                <li key={r.at}>
                  <strong>{wallMoment(measure.locale, Date.parse(`${r.at}Z`) / 1000)}</strong>
                  {r.aside ? <s>{valuesSaid(r.valuesC)}</s> : <span>{valuesSaid(r.valuesC)}</span>}
                  {r.aside && <span>{t('keeper.aside')}</span>}
                </li>
              ))}
            </ul>
          </>
        )}
        <p className="field-hint">{t('keeper.until', { day })}</p>
      </div>
    </main>
  );
}

/** Sends what waits, one by one, so that one refused reading never holds the others back. */
async function deliver(
  secret: string,
  list: Parameters<typeof send>[1],
  onRefused: (faults: readonly Fault[]) => void,
): Promise<void> {
  for (const reading of list) {
    const answer = await send(secret, [reading]);
    if (!answer.ok && answer.status !== 422) return;
    if (!answer.ok) onRefused(answer.faults);
    unqueue(secret, [reading.clientKey]);
  }
}
