// A branch's own values on paper: what was shipped, what the shop uses, who, when and why; withdrawn ones below.
import { type AnimalLanguage, sayDay } from '../animal/words/say.ts';
import type { Facts } from '../husbandry/fact.ts';
import { factWord } from '../husbandry/fact-words.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import { unitSuffix } from '../husbandry/quantities.ts';
import type { ShopParts } from '../husbandry/shop-value.ts';
import { factNamesDe } from '../husbandry/words/fact-names-de.ts';
import { factNamesEn } from '../husbandry/words/fact-names-en.ts';
import { allFacts } from '../records/animal-facts.ts';
import { branchFacts } from '../records/animals.ts';
import { factWords } from '../records/fact-words.ts';
import { type OverlayRow, overlayRows } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import { bookIn } from '../shared/languages.ts';
import type { DeskContext } from './desk-context.ts';
import { printedPage } from './print/typst-page.ts';
import { shopValueOf } from './shop-values.ts';
import { shopValuesRefusals, shopValuesWords } from './shop-values-words.ts';
import { todayOf } from './today.ts';

const wordsIn = (language: AnimalLanguage) => bookIn('shop-values', language, shopValuesWords);

const units: Readonly<Record<string, string>> = {
  C: '°C',
  K: 'K',
  Pct: '%',
  Mm: 'mm',
  Cm: 'cm',
  G: 'g',
  W: 'W',
  WPerMK: 'W/(m K)',
  KgPerM3: 'kg/m³',
  JPerKgK: 'J/(kg K)',
};

/** A value as it stands on paper, with its unit. */
function written(path: string, parts: ShopParts, language: AnimalLanguage): string {
  const w = wordsIn(language);
  const number = (x: unknown): string =>
    typeof x === 'number'
      ? new Intl.NumberFormat(language, { maximumFractionDigits: 3, useGrouping: false }).format(x)
      : String(x);
  const unit = units[unitSuffix(path.split('.').at(-1) ?? '') ?? ''] ?? '';
  const { low, high, value, values } = parts;
  const text = Array.isArray(values)
    ? values.map(number).join(', ')
    : low !== undefined && high !== undefined
      ? `${number(low)} ${w.to} ${number(high)}`
      : value === null || value === undefined
        ? w.unknown
        : number(value);
  return unit === '' ? text : `${text} ${unit}`;
}

/** "Humidity" for "rhPct"; a key without a name stays as it is. */
function quantityName(key: string, language: AnimalLanguage): string {
  const names: Readonly<Record<string, string>> = bookIn('web', language, { en: factNamesEn, de: factNamesDe });
  return names[`fact.${key}`] ?? key;
}

const refusalSaid = (book: Readonly<Record<string, string>>, code: string): string => book[code] ?? book.other ?? '';

const refusal = ({ code, say }: Fault, language: AnimalLanguage): string =>
  language === 'en' ? say : refusalSaid(bookIn('shop-values.refusals', language, shopValuesRefusals), code);

/** "Corn snake, every age, Humidity": the name of the row where there is one. */
function placeName(facts: Facts, path: string, language: AnimalLanguage): string {
  const [table = '', id = '', ...rest] = path.split('.');
  const name =
    table === 'species'
      ? facts.species[id]?.commonName
      : table === 'policy'
        ? facts.policies[id]?.title
        : table === 'law'
          ? facts.law.find((row) => row.id === id)?.title
          : table === 'materials'
            ? facts.materialFacts[id]?.name
            : undefined;
  const said = name === undefined ? undefined : factWord(factWords(language), name);
  const stages: Readonly<Record<string, string>> = wordsIn(language).stages;
  const stage = stages[rest[0] ?? ''];
  const named = rest.map((key, i) =>
    i === 0 && table === 'species' && stage !== undefined ? stage : quantityName(key, language),
  );
  return [said ?? (table === 'care' ? 'care' : id), ...(table === 'care' ? [quantityName(id, language)] : named)].join(
    ', ',
  );
}

export async function shopValuesPdf(desk: DeskContext, language: AnimalLanguage): Promise<Buffer> {
  const w = wordsIn(language);
  const { facts } = allFacts();
  const { shopName, branchName } = await branchFacts(desk.db, desk.actor.branchId);
  const rows = await overlayRows(desk.db, desk.actor.branchId);
  const standing = rows.filter(({ withdrawn }) => withdrawn === null);
  const { faults } = withShopValues(facts, standing.map(shopValueOf));
  const day = (at: Date): string => sayDay(at.toISOString().slice(0, 10), language);
  const today = sayDay(todayOf(desk.clock), language);
  const line = (row: OverlayRow): readonly string[] => [
    placeName(facts, row.path, language),
    written(row.path, row.was, language),
    written(row.path, row.value, language),
    `${row.by}, ${day(row.at)}: ${row.why}${row.withdrawn ? w.withdrawn(row.withdrawn.by, day(row.withdrawn.at), row.withdrawn.why) : ''}`,
  ];
  return printedPage(
    'shop-values.typ',
    {
      language,
      title: w.title,
      lead: w.lead(shopName, branchName, today),
      footer: `${shopName}, ${today}`,
      head: w.head,
      standingTitle: w.standing,
      standingNone: w.none,
      standing: standing.map(line),
      refusedTitle: w.refused,
      refused: faults.map((fault) => `${placeName(facts, fault.field, language)}: ${refusal(fault, language)}`),
      goneTitle: w.gone,
      gone: rows.filter(({ withdrawn }) => withdrawn !== null).map(line),
      notesTitle: w.notesTitle,
      notes: w.notes,
    },
    desk.clock.now(),
  );
}
