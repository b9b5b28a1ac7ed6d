// What stands in the register about one animal, what is missing, and whose law asks for it.
// Leaves out who wrote what when and what it said before (records/).
import type { Place } from '../husbandry/law-rule.ts';
import type { Sourced } from '../husbandry/need.ts';
import type { Fault } from '../shared/fault.ts';
import { isIsoDate } from './calendar.ts';
import type { Spoken } from './care-facts.ts';
import type { AnimalEvent, EventKind } from './event.ts';

/** A field of the register and what it may hold; '' = nobody has said, 'unknown' = asked and not known. */
const fieldKinds = {
  speciesId: 'text',
  callName: 'text',
  sex: ['male', 'female', 'unknown'],
  hatched: 'date',
  supplierName: 'text',
  supplierContact: 'text',
  originCountry: 'text',
  acquiredOn: 'date',
  acquiredHow: ['bought', 'bred-here', 'rescued', 'returned', 'loan', 'unknown'],
  bred: ['bred', 'ranched', 'wild', 'unknown'],
  chipNumber: 'text',
  otherMark: 'text',
  paperKind: 'text',
  paperNumber: 'text',
  colourForm: 'text',
} as const satisfies Readonly<Record<string, 'text' | 'date' | readonly string[]>>;

export type RegisterField = keyof typeof fieldKinds;
export const registerFields = Object.keys(fieldKinds) as readonly RegisterField[];
export type RegisterEntry = Readonly<Partial<Record<RegisterField, string>>>;

/** Choices of a field, null when it takes free text or a day. */
export function choicesOf(field: RegisterField): readonly string[] | null {
  const kind = fieldKinds[field];
  return typeof kind === 'string' ? null : kind;
}

export const isDateField = (field: RegisterField): boolean => fieldKinds[field] === 'date';

/** Faults: "ANIMAL_REGISTER". */
export function registerFaults(values: Readonly<Record<string, unknown>>): Fault[] {
  return Object.entries(values).flatMap(([field, value]) => {
    if (!(field in fieldKinds)) return [registerFault(field, value, registerFields.join(', '))];
    const kind = fieldKinds[field as RegisterField];
    if (typeof value !== 'string' || value.length > 500 || value.includes('\0'))
      return [registerFault(field, value, 'a text of at most 500 characters')];
    if (value === '') return [];
    if (kind === 'date')
      return isIsoDate(value) || value === 'unknown'
        ? []
        : [registerFault(field, value, 'a day like 2026-01-31, or "unknown"')];
    if (kind === 'text' || (kind as readonly string[]).includes(value)) return [];
    return [registerFault(field, value, kind.join(', '))];
  });
}

function registerFault(field: string, got: unknown, allowed: string): Fault {
  return {
    code: 'ANIMAL_REGISTER',
    field,
    got: (JSON.stringify(got) ?? 'nothing').slice(0, 80),
    allowed,
    say: `The register cannot take this for "${field}".`,
    fix: 'Correct it; nothing was written.',
  };
}

/** One row of data/register.json. */
export interface RegisterHeading extends Sourced {
  readonly id: string;
  readonly field?: RegisterField;
  readonly orField?: RegisterField;
  readonly event?: EventKind;
  readonly need: 'always' | 'where-known' | 'if-any' | 'when-it-happens' | 'annex';
  readonly say: Spoken;
  /** Letter of the English schedule, schedule 3 paragraph 2(1). */
  readonly paragraph?: string;
  /** Places whose law asks for it. */
  readonly laws: Readonly<Partial<Record<Place, Sourced>>>;
}

export type HeadingState = 'there' | 'said-unknown' | 'missing' | 'does-not-apply';

export interface HeadingFinding {
  readonly heading: RegisterHeading;
  readonly state: HeadingState;
  readonly value: string;
  /** The law of this place asks for it; else it is our own default. */
  readonly law: Sourced | null;
}

/** Every heading with what stands under it. A closed register has neither "missing" nor silence.
 *  @param annex "A", "B" or "none", as the species record says; null = not known */
export function registerFindings(
  entry: RegisterEntry,
  events: readonly AnimalEvent[],
  headings: readonly RegisterHeading[],
  place: Place,
  annex: string | null,
): readonly HeadingFinding[] {
  return headings.map((heading) => {
    const law = heading.laws[place] ?? null;
    if (heading.event !== undefined) {
      const found = events.filter((event) => event.kind === heading.event);
      const state = found.length > 0 ? 'there' : heading.need === 'always' ? 'missing' : 'does-not-apply';
      return { heading, state, value: found.map((event) => event.on).join(', '), law };
    }
    const value = textUnder(entry, heading.field) || textUnder(entry, heading.orField);
    if (heading.need === 'annex' && annex === 'none') return { heading, state: 'does-not-apply', value, law };
    if (heading.need === 'if-any' && value === '') return { heading, state: 'does-not-apply', value, law };
    const state = value === '' ? 'missing' : value === 'unknown' ? unknownState(heading) : 'there';
    return { heading, state, value, law };
  });
}

const textUnder = (entry: RegisterEntry, field: RegisterField | undefined): string =>
  field === undefined ? '' : (entry[field] ?? '').trim();

/** "Where known" is fulfilled by having asked; what must always stand there is not. */
const unknownState = (heading: RegisterHeading): HeadingState =>
  heading.need === 'where-known' ? 'said-unknown' : 'missing';
