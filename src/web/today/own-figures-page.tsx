// The shop's own figures: of the animals it heard of again, how many died or came back, by species, drawn to scale with
// the interval; the counts behind it as a table; "too few to say" where it is so.
import { useState } from 'react';
import type { OwnShare } from '../../proving/aftercare/own-share.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { useSpecies } from '../animal/use-species.ts';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { ShareBars } from './share-bars.tsx';
import { type OwnFigures, readOwnFigures } from './today-api.ts';

export function OwnFiguresPage() {
  const { value, failed, again } = useAsked('own-figures', readOwnFigures);
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Sheet figures={value} />;
}

type What = 'died' | 'returned';

function Sheet({ figures }: { readonly figures: OwnFigures }) {
  const { t } = useSheet();
  const { nameOf } = useSpecies();
  const [days, setDays] = useState(String(figures.horizons[0]?.days ?? 30));
  const [what, setWhat] = useState<What>('died');
  const [ref, width] = useWidth<HTMLDivElement>(720);
  const shown = figures.horizons.find((one) => String(one.days) === days)?.figures ?? [];
  const rows = shown.map((one) => ({
    name: one.speciesId === null ? t('figures.all') : nameOf(one.speciesId),
    share: one[what],
  }));
  const all = rows[0]?.share ?? null;
  return (
    <main className="today own-figures" ref={ref}>
      <div className="sheet-head">
        <h1>{t('figures.title')}</h1>
        <p className="lead">{t('figures.lead')}</p>
        {figures.waiting > 0 && <p role="status">{t('today.waiting', { n: figures.waiting })}</p>}
      </div>
      <Choice<What>
        label={t('figures.what')}
        value={what}
        onChange={setWhat}
        options={[
          { value: 'died', text: t('figures.died') },
          { value: 'returned', text: t('figures.returned') },
        ]}
      />
      <Choice
        label={t('figures.within')}
        value={days}
        onChange={setDays}
        options={figures.horizons.map((one) => ({ value: String(one.days), text: t('figures.days', { n: one.days }) }))}
      />
      <h2>{all === null || all.released === 0 ? t('figures.none') : <Finding what={what} share={all} />}</h2>
      <ShareBars rows={rows} width={Math.min(width, 900)} />
      <div className="table-scroll">
        <table className="plain-table">
          <caption className="visually-hidden">{t('figures.table')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('figures.species')}</th>
              <th scope="col">{t('figures.released')}</th>
              <th scope="col">{t('figures.followed')}</th>
              <th scope="col">{t(`figures.${what}`)}</th>
              <th scope="col">{t('figures.share')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, share }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{share.released}</td>
                <td>{share.followed}</td>
                <td>{share.count}</td>
                <td>
                  <ShareText share={share} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="field-hint">{t('figures.how', { fewest: all?.fewest ?? 30 })}</p>
    </main>
  );
}

function Finding({ what, share }: { readonly what: What; readonly share: OwnShare }) {
  const { t } = useSheet();
  const { count, followed, released } = share;
  return <>{t(`figures.finding.${what}`, { count, followed, released })}</>;
}

function ShareText({ share }: { readonly share: OwnShare }) {
  const { t, measure } = useSheet();
  const pct = (x: number) => (100 * x).toLocaleString(measure.locale, { maximumFractionDigits: 1 });
  if (share.share === null) return <>{t('figures.tooFew')}</>;
  const { middle, low, high } = share.share;
  return <>{t('figures.interval', { middle: pct(middle), low: pct(low), high: pct(high) })}</>;
}
