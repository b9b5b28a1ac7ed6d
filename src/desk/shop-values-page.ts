// A branch's own values on paper: what was shipped, what the shop uses, who, when and why; withdrawn ones below.
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
import { bookIn, type Language } from '../shared/languages.ts';
import { type QuantityKind, shownFromStored, type UnitChoice, unitText } from '../shared/measure.ts';
import type { DeskContext } from './desk-context.ts';
import { type PaperReader, type PaperUnits, paperReader, paperUnits } from './paper-units.ts';
import { printedPage } from './print/typst-page.ts';
import { shopValueOf } from './shop-values.ts';
import { shopValuesRefusals, shopValuesWords } from './shop-values-words.ts';
import { todayOf } from './today.ts';

const metricUnits: UnitChoice = { book: 'en', temperature: 'C', length: 'cm', mass: 'g' };

const wordsIn = (language: Language) => bookIn('shop-values', language, shopValuesWords);

/** A unit as data/ has it: how it is written, and which quantity of the reader's it is. */
const units: Readonly<
  Record<string, { readonly metric: string; readonly of?: QuantityKind; readonly toStored?: number }>
> = {
  C: { metric: '°C', of: 'temperature' },
  K: { metric: 'K', of: 'difference' },
  Mm: { metric: 'mm', of: 'length', toStored: 0.001 },
  Cm: { metric: 'cm', of: 'length', toStored: 0.01 },
  G: { metric: 'g', of: 'mass' },
  Pct: { metric: '%' },
  W: { metric: 'W' },
  // As the data sheet of a material has them everywhere.
  WPerMK: { metric: 'W/(m K)' },
  KgPerM3: { metric: 'kg/m³' },
  JPerKgK: { metric: 'J/(kg K)' },
};

/** A value as it stands on paper, with its unit. */
function written(path: string, parts: ShopParts, { measure }: PaperReader, language: Language): string {
  const w = wordsIn(language);
  const { metric = '', of, toStored = 1 } = units[unitSuffix(path.split('.').at(-1) ?? '') ?? ''] ?? {};
  const own = of === undefined ? metric : unitText(of, measure.settings);
  const isOther = of !== undefined && own !== unitText(of, metricUnits);
  const plain = new Intl.NumberFormat(measure.locale, { maximumFractionDigits: 3, useGrouping: false });
  // A hundredth of an inch or of an ounce is about a quarter of a millimetre or of a gram.
  const isFine = metric === 'mm' || metric === 'g';
  const fine = new Intl.NumberFormat(measure.locale, { maximumFractionDigits: isFine ? 2 : 1 });
  const number = (x: unknown): string => {
    if (typeof x !== 'number') return String(x);
    return isOther ? fine.format(shownFromStored(of, x * toStored, measure.settings)) : plain.format(x);
  };
  const { low, high, value, values } = parts;
  const text = Array.isArray(values)
    ? values.map(number).join(', ')
    : low !== undefined && high !== undefined
      ? `${number(low)} ${w.to} ${number(high)}`
      : value === null || value === undefined
        ? w.unknown
        : number(value);
  const unit = isOther ? own : metric;
  return unit === '' ? text : `${text} ${unit}`;
}

/** "Humidity" for "rhPct"; a key without a name stays as it is. */
function quantityName(key: string, language: Language): string {
  const names: Readonly<Record<string, string>> = bookIn('web', language, { en: factNamesEn, de: factNamesDe });
  return names[`fact.${key}`] ?? key;
}

const refusalSaid = (book: Readonly<Record<string, string>>, code: string): string => book[code] ?? book.other ?? '';

const refusal = ({ code, say }: Fault, language: Language): string =>
  language === 'en' ? say : refusalSaid(bookIn('shop-values.refusals', language, shopValuesRefusals), code);

/** "Corn snake, every age, Humidity": the name of the row where there is one. */
function placeName(facts: Facts, path: string, language: Language): string {
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

export async function shopValuesPdf(desk: DeskContext, asked: Partial<PaperUnits>): Promise<Buffer> {
  const { facts } = allFacts();
  const { shopName, branchName, place } = await branchFacts(desk.db, desk.actor.branchId);
  const choice = paperUnits(asked, place);
  const { language } = choice;
  const reader = paperReader(choice);
  const w = wordsIn(language);
  const rows = await overlayRows(desk.db, desk.actor.branchId);
  const standing = rows.filter(({ withdrawn }) => withdrawn === null);
  const { faults } = withShopValues(facts, standing.map(shopValueOf));
  const day = (at: Date): string => reader.day(at.toISOString().slice(0, 10));
  const today = reader.day(todayOf(desk.clock));
  const line = (row: OverlayRow): readonly string[] => [
    placeName(facts, row.path, language),
    written(row.path, row.was, reader, language),
    written(row.path, row.value, reader, language),
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
