// The shelf: what the shop sells to make a home with. Changed here article by article, or brought in as a table; every
// earlier shelf can stand again. Kits are chosen from what is in stock on it.
import '../choose/choose.css';
import './shelf.css';
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Shelf, ShelfItem, ShelfKind } from '../../planning/shelf/shelf.ts';
import { shelfKinds } from '../../planning/shelf/shelf-fields.ts';
import type { Fault } from '../../shared/fault.ts';
import type { Asked } from '../animal/animal-api.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { moneyFor } from '../choose/money.ts';
import { SortableTable, type SortColumn } from '../choose/sortable-table.tsx';
import { FaultText } from '../controls/fault-text.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { begunAt, keepBegun } from '../state/begun.ts';
import { type ArticleDraft, ArticleForm, articlePlace, type BegunArticle } from './article-form.tsx';
import {
  bringInShelf,
  type KeptShelf,
  keepShelf,
  putBackShelf,
  readShelf,
  type ShownShelf,
  shelfTable,
} from './shelf-api.ts';
import { ShelfChanges } from './shelf-changes.tsx';
import { ShelfHead } from './shelf-head.tsx';
import { textOfFile } from './text-of-file.ts';

/** A choice of kind that shows all of them. */
const everyKind = 'all';

export function ShelfPage() {
  const { t } = useSheet();
  const { value: shown, failed, again } = useAsked<ShownShelf>('shelf', readShelf);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [unreached, setUnreached] = useState(false);
  const [said, setSaid] = useState('');
  if (!shown) return <NotReached failed={failed} again={again} />;
  const send = async (sent: Promise<Asked<KeptShelf>>, done: () => void = () => {}) => {
    const answer = await sent;
    setFaults(answer.ok ? [] : answer.faults);
    setUnreached(!answer.ok && answer.faults.length === 0);
    setSaid(answer.ok ? t('shelf.kept', { count: answer.value.items }) : '');
    if (answer.ok) done();
    if (answer.ok) again();
  };
  const { shelf, version } = shown;
  const keep = (next: Shelf, why: string, done?: () => void) => void send(keepShelf(next, version, why), done);
  return (
    <main className="choose shelf-page">
      <h1>{t('shelf.title')}</h1>
      <p className="lead">
        {t('shelf.sum', {
          name: shelf.name,
          count: shelf.items.length,
          there: shelf.items.filter((item) => item.inStock).length,
          currency: shelf.currency,
        })}{' '}
        {shelf.invented && t('choose.invented')}
      </p>
      <TableButtons
        version={version}
        onText={(text) => void send(bringInShelf(text, version, t('shelf.tableWhy')))}
        onUndo={version > 0 ? () => void send(putBackShelf(version - 1, version)) : null}
      />
      <p role="status" className="field-hint">
        {said}
      </p>
      <div role="alert">
        {faults.length > 0 && <p className="field-fault">{t('shelf.refused', { count: faults.length })}</p>}
        {faults.length > 0 && (
          <ul className="shelf-faults">
            {faults.map((fault, i) => (
              <li key={`${fault.field}-${String(i)}`}>
                {fault.field}: <FaultText fault={fault} />
              </li>
            ))}
          </ul>
        )}
        {unreached && <p className="field-fault">{t('animals.unreached')}</p>}
      </div>
      <ShelfHead
        key={`head-${version}`}
        shelf={shelf}
        onKeep={(head) => keep({ ...shelf, ...head }, t('shelf.about'))}
      />
      <Articles key={`articles-${version}`} shown={shown} onKeep={keep} />
      <ShelfChanges shown={shown} onBack={(to) => void send(putBackShelf(to, version))} />
    </main>
  );
}

interface TableButtonsProps {
  readonly version: number;
  readonly onText: (text: string) => void;
  readonly onUndo: (() => void) | null;
}

function TableButtons({ onText, onUndo }: TableButtonsProps) {
  const { t } = useSheet();
  const input = useRef<HTMLInputElement>(null);
  return (
    <div className="field-row">
      <a className="button button-quiet" href={shelfTable} download="shelf.csv">
        {t('shelf.saveTable')}
      </a>
      <Button className="button button-quiet" onPress={() => input.current?.click()}>
        {t('shelf.bringIn')}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={t('shelf.bringIn')}
        accept=".csv,.tsv,.txt,text/*"
        onChange={async (event) => {
          const field = event.target;
          const file = field.files?.[0];
          if (file) onText(await textOfFile(file));
          // the same file may be chosen again once it was mended
          field.value = '';
        }}
      />
      <Button className="button button-quiet" isDisabled={!onUndo} onPress={() => onUndo?.()}>
        {t('shelf.undo')}
      </Button>
    </div>
  );
}

interface ArticlesProps {
  readonly shown: ShownShelf;
  readonly onKeep: (shelf: Shelf, why: string, done?: () => void) => void;
}

function Articles({ shown, onKeep }: ArticlesProps) {
  const { t } = useSheet();
  const { shelf } = shown;
  const [kind, setKind] = useState<ShelfKind | typeof everyKind>(everyKind);
  const [begun, setBegun] = useState(() => begunAt<BegunArticle>(articlePlace));
  const [open, setOpen] = useState<string | null>(begun?.isNew === false ? (begun.article?.id ?? null) : null);
  const [fresh, setFresh] = useState<ArticleDraft | null>(begun?.isNew ? (begun.article ?? null) : null);
  const rows = shelf.items.filter((item) => kind === everyKind || item.kind === kind);
  const chosen = shelf.items.find((item) => item.id === open);
  // An article that somebody took off the shelf meanwhile is not written any more.
  const begunHere = chosen !== undefined && begun?.article?.id === chosen.id ? begun.article : undefined;
  const draft = fresh ?? begunHere ?? (chosen as unknown as ArticleDraft | undefined);
  const leave = () => {
    setBegun(null);
    keepBegun(articlePlace, null);
  };
  const close = () => {
    leave();
    setOpen(null);
    setFresh(null);
  };
  const keepItems = (items: readonly ShelfItem[], why: string) => onKeep({ ...shelf, items }, why, close);
  return (
    <section className="sheet-part shelf-articles" aria-labelledby="articles-title">
      <h2 id="articles-title">{t('shelf.articles')}</h2>
      <div className="field-row shelf-choose">
        <div>
          <label className="field-label" htmlFor="shelf-kind">
            {t('shelf.kind')}
          </label>
          <select
            id="shelf-kind"
            className="select-plain"
            value={kind}
            onChange={(event) => {
              setKind(event.target.value as ShelfKind);
              close();
            }}
          >
            <option value={everyKind}>{t('shelf.all')}</option>
            {shelfKinds.map((one) => (
              <option key={one} value={one}>
                {t(`shelf.word.${one}`)}
              </option>
            ))}
          </select>
        </div>
        <Button
          className="button"
          isDisabled={kind === everyKind}
          onPress={() => {
            leave();
            setOpen(null);
            if (kind !== everyKind) setFresh(newArticle(kind, shelf));
          }}
        >
          {kind === everyKind ? t('shelf.newFirst') : t('shelf.new', { kind: t(`shelf.word.${kind}`) })}
        </Button>
      </div>
      {draft && (
        <ArticleForm
          key={draft.id}
          draft={draft}
          isNew={fresh !== null}
          currency={shelf.currency}
          materials={shown.materials}
          onKeep={(article) => keepItems(withArticle(shelf, open, article), String(article.name ?? ''))}
          onRemove={() =>
            keepItems(
              shelf.items.filter((item) => item.id !== open),
              `− ${chosen?.name ?? ''}`,
            )
          }
          onClose={close}
        />
      )}
      <SortableTable
        caption={t('shelf.articles')}
        columns={useColumns(shelf, (item) =>
          keepItems(
            shelf.items.map((one) => (one === item ? { ...one, inStock: !one.inStock } : one)),
            item.name,
          ),
        )}
        rows={rows}
        idOf={(item) => item.id}
        first="kind"
        chosen={open}
        onChoose={(id) => {
          leave();
          setFresh(null);
          setOpen(id);
          scrollTo({ top: 0 });
        }}
      />
    </section>
  );
}

function useColumns(shelf: Shelf, onStock: (item: ShelfItem) => void): readonly SortColumn<ShelfItem>[] {
  const { t, measure, fromFacts } = useSheet();
  const money = moneyFor(measure, shelf.currency);
  return [
    { key: 'name', head: t('shelf.field.name'), value: (i) => fromFacts(i.name), cell: (i) => fromFacts(i.name) },
    {
      key: 'kind',
      head: t('shelf.kind'),
      value: (i) => shelfKinds.indexOf(i.kind),
      cell: (i) => t(`shelf.word.${i.kind}`),
    },
    {
      key: 'price',
      head: t('kits.price'),
      value: (i) => i.price,
      cell: (i) => money(i.price, i.price % 1 === 0 ? 0 : 2),
      numeric: true,
    },
    {
      key: 'stock',
      head: t('shelf.field.inStock'),
      value: (i) => (i.inStock ? 0 : 1),
      cell: (i) => (
        <button type="button" className="sort-choose" aria-pressed={i.inStock} onClick={() => onStock(i)}>
          {t(i.inStock ? 'shelf.there' : 'shelf.soldOut')}
        </button>
      ),
    },
  ];
}

/** A new article with an id that the shelf has not. */
function newArticle(kind: ShelfKind, shelf: Shelf): ArticleDraft {
  const taken = new Set(shelf.items.map((item) => item.id));
  let n = 1;
  while (taken.has(`${kind}-${n}`)) n++;
  return { id: `${kind}-${n}`, kind, inStock: true, hasCutOut: false };
}

/** @param open id of the article that is replaced; null for a new one */
function withArticle(shelf: Shelf, open: string | null, article: ArticleDraft): readonly ShelfItem[] {
  const { hasCutOut, ...rest } = article;
  const item = (article.kind === 'thermostat' ? { ...rest, hasCutOut } : rest) as unknown as ShelfItem;
  return open === null ? [...shelf.items, item] : shelf.items.map((one) => (one.id === open ? item : one));
}
