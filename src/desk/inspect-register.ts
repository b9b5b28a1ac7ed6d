// What an inspector asks for: any animal in seconds, years back, with what is missing and what was corrected.
// Leaves out how it is printed (inspection-page.ts) and written as a table (inspection-table.ts).
import { addDays } from '../animal/calendar.ts';
import { type AnimalEvent, eventsOf } from '../animal/event.ts';
import type { HeadingFinding } from '../animal/register.ts';
import { type FactRow, factHistories } from '../records/animals.ts';
import { type AnimalRecord, recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { registerOf } from './show-animal.ts';

export interface InspectionChoice {
  /** Part of a name, number, chip, supplier, species or enclosure; "" for all. */
  readonly search: string;
  /** How far back animals that are gone are listed; null as long as the law of the branch asks. */
  readonly years: number | null;
  readonly animalId: string | null;
}

export interface InspectedAnimal {
  readonly record: AnimalRecord;
  readonly headings: readonly HeadingFinding[];
  /** Every value of the register that was ever replaced, with the new one. */
  readonly corrections: readonly Correction[];
  readonly goneOn: string | null;
}

export interface Correction {
  /** A field of the register, or the kind of an entry. */
  readonly what: string;
  /** A value of the register, or the body of an entry; "" and null where there is none. */
  readonly was: unknown;
  readonly now: unknown;
  readonly at: string;
  readonly by: string;
  readonly reason: string;
}

export interface Inspection {
  readonly shopName: string;
  readonly branchName: string;
  readonly place: string;
  readonly today: string;
  readonly years: number;
  /** What was looked for; "" when all of the register is here. */
  readonly search: string;
  /** Only one animal was asked for. */
  readonly oneOnly: boolean;
  /** The law that asks for so many years, null when it is our own choice. */
  readonly yearsLaw: string | null;
  readonly animals: readonly InspectedAnimal[];
  /** Key of data/sources.json -> title and the day on which it was last looked at. */
  readonly lawTitles: Readonly<Record<string, { readonly title: string; readonly lookedAtOn: string | null }>>;
}

/** Where no rule of the place was read: our choice. */
const usualYears = 3;

export async function inspectRegister(desk: DeskContext, choice: InspectionChoice): Promise<Inspection> {
  const around = await surroundings(desk);
  const asked = around.facts.law.flatMap((rule) =>
    rule.effect.kind === 'keep-records' && rule.places.includes(around.place)
      ? [{ rule, years: rule.effect.years }]
      : [],
  );
  const longest = asked.sort((a, b) => b.years - a.years)[0];
  const years = choice.years ?? longest?.years ?? usualYears;
  const earliest = addDays(around.today, -Math.ceil(years * 365.25));
  const records = await recordsOf(desk, around, {
    seenAt: desk.actor.branchId,
    ...(choice.animalId === null ? {} : { id: choice.animalId }),
  });
  const wanted = records.filter((record) => {
    const gone = goneOn(record.events);
    return matches(record, choice.search) && (!record.row.gone || gone === null || gone >= earliest);
  });
  const histories = await factHistories(
    desk.db,
    wanted.map((record) => record.row.id),
  );
  const animals = wanted.map(
    (record): InspectedAnimal => ({
      record,
      headings: registerOf(record, around),
      corrections: [...factCorrections(histories.get(record.row.id) ?? []), ...entryCorrections(record)],
      goneOn: goneOn(record.events),
    }),
  );
  const { shopName, branchName, place, today } = around;
  const lawTitles = Object.fromEntries(
    around.care.register.flatMap(({ laws }) =>
      Object.values(laws).map(({ source }) => {
        const row = around.facts.sources[source];
        return [source, { title: row?.title ?? source, lookedAtOn: row?.dateChecked ?? null }] as const;
      }),
    ),
  );
  return {
    shopName,
    branchName,
    place,
    today,
    years,
    yearsLaw: choice.years === null ? (longest?.rule.id ?? null) : null,
    search: choice.search.trim(),
    oneOnly: choice.animalId !== null,
    lawTitles,
    animals,
  };
}

function goneOn(events: readonly AnimalEvent[]): string | null {
  const days = [...eventsOf(events, 'sale'), ...eventsOf(events, 'death')].map((event) => event.on);
  return days.sort().at(-1) ?? null;
}

function matches({ entry, species, row }: AnimalRecord, search: string): boolean {
  const wanted = search.trim().toLowerCase();
  if (wanted === '') return true;
  const texts = [...Object.values(entry), species.commonName, species.scientificName, row.enclosure, row.id];
  return texts.some((text) => text.toLowerCase().includes(wanted));
}

function factCorrections(history: readonly FactRow[]): readonly Correction[] {
  const last = new Map<string, string>();
  return history.flatMap((fact) => {
    const was = last.get(fact.field) ?? '';
    last.set(fact.field, fact.value);
    if (was === '' || was === fact.value) return [];
    const { field, value, by, reason } = fact;
    return [{ what: field, was, now: value, at: fact.at.toISOString(), by, reason }];
  });
}

function entryCorrections({ rows }: AnimalRecord): readonly Correction[] {
  return rows.flatMap((row) => {
    if (row.corrects === null) return [];
    const before = rows.find((one) => one.id === row.corrects);
    const at = row.recordedAt.toISOString();
    return [{ what: row.kind, was: before?.body ?? null, now: row.body ?? null, at, by: row.by, reason: row.reason }];
  });
}
