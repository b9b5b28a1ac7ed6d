// Law by place, kinds of kit and the shop's own rules: what the program goes by, how old it is, and where the shop goes by
// a value of its own. A rule of law past its review stands in amber, said in words too.
import { useState } from 'react';
import type { Fault } from '../../shared/fault.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { Choice } from '../controls/choice.tsx';
import { FaultText } from '../controls/fault-text.tsx';
import { dateText } from '../controls/source-note.tsx';
import { isMessageKey } from '../messages/translate.ts';
import { paperQuery } from '../settings/paper-query.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';
import { FactRow } from './fact-row.tsx';
import { type ListedRow, type Lists, listTables, readLists } from './reference-api.ts';
import { useReference } from './use-reference.ts';

const everywhere = 'everywhere';

export function ListsPage() {
  const { t, settings } = useSheet();
  const { value: all, failed, again } = useReference('lists', readLists);
  const [table, setTable] = useState<(typeof listTables)[number]>('law');
  const [place, setPlace] = useState(everywhere);
  if (!all) return <NotReached failed={failed} again={again} />;
  const places = [...new Set(all.lists.law.flatMap((row) => row.places))];
  const rows = all.lists[table].filter(
    ({ places: at }) => table !== 'law' || place === everywhere || at.includes(place),
  );
  const stale = all.lists.law.filter((row) => row.stale).length;
  return (
    <main className="ref-sheet">
      <div className="sheet-head">
        <h1>{t('lists.title')}</h1>
        <p className="lead">{t('lists.lead')}</p>
      </div>
      <div className="ref-tools">
        <Choice
          label={t('lists.choose')}
          value={table}
          onChange={setTable}
          options={listTables.map((value) => ({ value, text: t(`list.${value}`) }))}
        />
        {table === 'law' && (
          <label className="lists-place">
            <span className="field-label">{t('lists.place')}</span>
            <select className="select-plain" value={place} onChange={(event) => setPlace(event.target.value)}>
              <option value={everywhere}>{t('lists.everywhere')}</option>
              {places.map((one) => (
                <option key={one} value={one}>
                  {isMessageKey(`place.${one}`) ? t(`place.${one}` as 'place.england') : one}
                </option>
              ))}
            </select>
          </label>
        )}
        <a
          className="button button-quiet"
          href={`/api/shop-values.pdf?${paperQuery(settings)}`}
          target="_blank"
          rel="noreferrer"
        >
          {t('lists.paper')}
        </a>
        <a className="button button-quiet" href="/api/shop-values.json" download="shop-values.json">
          {t('lists.file')}
        </a>
      </div>
      {stale > 0 && (
        <p className="lists-stale" role="status">
          {t('lists.staleCount', { count: stale })}
        </p>
      )}
      <LeftOut faults={all.leftOut} />
      <h2>{t(`list.${table}`)}</h2>
      {rows.map((row) => (
        <ListRow key={`${table}.${row.id}`} all={all} row={row} onChanged={again} open={table === 'policy'} />
      ))}
    </main>
  );
}

/** Shipped rows that are not sound: the sheets go on without them, and say so. */
function LeftOut({ faults }: { readonly faults: readonly Fault[] }) {
  const { t } = useSheet();
  if (faults.length === 0) return null;
  return (
    <div className="lists-stale" role="status">
      <p>{t('lists.leftOut', { count: faults.length })}</p>
      <ul>
        {faults.map((fault) => (
          <li key={`${fault.code} ${fault.field}`}>
            <code>{fault.field}</code>: <FaultText fault={fault} />
          </li>
        ))}
      </ul>
    </div>
  );
}

interface ListRowProps {
  readonly all: Lists;
  readonly row: ListedRow;
  readonly onChanged: () => void;
  /** Shown at once: rows of a single value. */
  readonly open: boolean;
}

function ListRow({ all, row, onChanged, open }: ListRowProps) {
  const { t, measure } = useSheet();
  const reader = useReader();
  const { id, name, say, places, dateChecked, reviewBy, secondHand, stale, decides } = row;
  const facts = row.facts.map(({ path, fact, words }) => (
    <FactRow key={path} all={all} path={path} fact={fact} words={words} onChanged={onChanged} />
  ));
  if (open) return facts;
  const isLaw = row.facts[0]?.path.startsWith('law.') ?? false;
  const own = row.facts.some(({ path }) => all.overlays.some((one) => one.path === path && one.withdrawn === null));
  const key = `row.${id}`;
  const known = isMessageKey(key);
  const date = (iso: string) => dateText(iso, measure.locale);
  return (
    <details className={stale ? 'lists-row lists-row-stale' : 'lists-row'} data-row={id}>
      <summary>
        <b>{known ? t(key as 'row.peat') : name}</b>
        {places.length > 0 && (
          <span className="lists-places">
            {places
              .map((one) => (isMessageKey(`place.${one}`) ? t(`place.${one}` as 'place.england') : one))
              .join(', ')}
          </span>
        )}
        {own && <span className="own-mark">{t('own.sign')}</span>}
        {stale && reviewBy && <span className="lists-stale">{t('lists.stale', { date: date(reviewBy) })}</span>}
      </summary>
      {say && <p>{isLaw ? say : reader.prose(say)}</p>}
      {dateChecked && reviewBy && (
        <p className="ref-from">
          {[
            t('lists.fresh', { checked: date(dateChecked), review: date(reviewBy) }),
            secondHand ? t('lists.secondHand') : '',
            t('lists.decides', { who: decides }),
          ]
            .filter(Boolean)
            .join(' · ')}
        </p>
      )}
      {facts}
    </details>
  );
}
