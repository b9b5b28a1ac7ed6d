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
import type { DeskContext } from './desk-context.ts';
import { printedPage } from './print/typst-page.ts';
import { shopValueOf } from './shop-values.ts';
import { todayOf } from './today.ts';

const words = {
  en: {
    title: 'Values of our own',
    lead: (shop: string, branch: string, day: string) =>
      `${shop}, ${branch}. Where this branch goes by another value than the shipped facts. Printed ${day}.`,
    standing: 'In use',
    none: 'This branch uses every value as it was shipped.',
    refused: 'Not used: the shipped facts no longer allow them',
    gone: 'Withdrawn',
    head: ['Value', 'Shipped', 'Ours', 'Who, when, why'],
    withdrawn: (by: string, day: string, why: string) => `; withdrawn by ${by}, ${day}: ${why}`,
    unknown: 'not known',
    to: 'to',
    stages: { all: 'every age', hatchling: 'hatchling', young: 'young', adult: 'adult' },
    notesTitle: 'How to read this',
    notes: [
      'The first column names the species, list or policy, the row and the quantity in the words of the screen.',
      'Every plan and proof that a value went into names it with the same words.',
      'Nothing is erased: a withdrawn value stays readable with who, when and why.',
    ],
  },
  de: {
    title: 'Eigene Werte',
    lead: (shop: string, branch: string, day: string) =>
      `${shop}, ${branch}. Wo diese Filiale nach einem anderen Wert geht als den mitgelieferten. Gedruckt ${day}.`,
    standing: 'In Gebrauch',
    none: 'Diese Filiale verwendet alle Werte, wie sie mitgeliefert sind.',
    refused: 'Nicht verwendet: die mitgelieferten Daten lassen sie nicht mehr zu',
    gone: 'Zurückgenommen',
    head: ['Wert', 'Mitgeliefert', 'Eigener', 'Wer, wann, warum'],
    withdrawn: (by: string, day: string, why: string) => `; zurückgenommen von ${by}, ${day}: ${why}`,
    unknown: 'nicht bekannt',
    to: 'bis',
    stages: { all: 'jedes Alter', hatchling: 'Schlüpfling', young: 'Jungtier', adult: 'ausgewachsen' },
    notesTitle: 'Lesehilfe',
    notes: [
      'Die erste Spalte nennt Art, Liste oder Regel, Zeile und Größe mit den Worten des Bildschirms.',
      'Jeder Plan und jeder Nachweis, in den ein Wert einging, nennt ihn mit denselben Worten.',
      'Nichts wird gelöscht: ein zurückgenommener Wert bleibt lesbar mit wer, wann und warum.',
    ],
  },
} as const;

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
  const w = words[language];
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
  const names: Readonly<Record<string, string>> = language === 'de' ? factNamesDe : factNamesEn;
  return names[`fact.${key}`] ?? key;
}

/** Why a value is not used; the English reason stands in the fault itself. */
const refusalsDe: Readonly<Record<string, string>> = {
  OVERLAY_FACT: 'Diesen Wert gibt es in den mitgelieferten Daten nicht mehr.',
  OVERLAY_PARTS: 'Der mitgelieferte Wert hat jetzt andere Teile.',
  OVERLAY_WORD: 'Dieses Wort kennt das Programm hier nicht.',
  OVERLAY_NUMBER: 'Die Zahl liegt außerhalb ihrer Grenzen.',
  OVERLAY_LOOSER: 'Hier darf ein Laden mehr Vorsicht verlangen als mitgeliefert, nie weniger.',
  OVERLAY_UNSIGNED: 'Es fehlt, wer ihn wann und warum gesetzt hat.',
  DATA_FORM: 'Der Wert hat nicht die Form, die er haben soll.',
  DATA_MISSING: 'Ein nötiger Wert fehlt.',
  DATA_RANGE: 'Eine solche Zahl kann nicht sein.',
  DATA_ORDER: 'Der Wert widerspricht einem anderen dieser Zeile.',
};

const refusal = ({ code, say }: Fault, language: AnimalLanguage): string =>
  language === 'de' ? (refusalsDe[code] ?? 'Die mitgelieferten Daten lassen ihn nicht mehr zu.') : say;

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
  const stages: Readonly<Record<string, string>> = words[language].stages;
  const stage = stages[rest[0] ?? ''];
  const named = rest.map((key, i) =>
    i === 0 && table === 'species' && stage !== undefined ? stage : quantityName(key, language),
  );
  return [said ?? (table === 'care' ? 'care' : id), ...(table === 'care' ? [quantityName(id, language)] : named)].join(
    ', ',
  );
}

export async function shopValuesPdf(desk: DeskContext, language: AnimalLanguage): Promise<Buffer> {
  const w = words[language];
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
