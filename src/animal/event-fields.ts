// Is an entry about an animal whole and possible? Every fault at once, each with its field.
// The limits catch slips of the hand; they are our choice, not norms.
import type { Fault } from '../shared/fault.ts';
import { isIsoDate } from './calendar.ts';
import type { EventKind } from './event.ts';

type Field =
  | { readonly type: 'number'; readonly low: number; readonly high: number; readonly nullable?: true }
  | { readonly type: 'text'; readonly needed?: true }
  | { readonly type: 'word'; readonly words: readonly string[] }
  | { readonly type: 'flag' }
  | { readonly type: 'any' };

const num = (low: number, high: number): Field => ({ type: 'number', low, high });
const maybe = (low: number, high: number): Field => ({ type: 'number', low, high, nullable: true });
const text: Field = { type: 'text' };
const needed: Field = { type: 'text', needed: true };
const flag: Field = { type: 'flag' };
const word = (...words: readonly string[]): Field => ({ type: 'word', words });

/** Field -> what it may hold, by kind of entry. Longest text: 2 000 characters. */
export const eventFields: Readonly<Record<EventKind, Readonly<Record<string, Field>>>> = {
  weighing: { massG: num(0.5, 60_000) },
  length: {
    totalLengthCm: num(8, 600),
    snoutVentMm: maybe(60, 5_500),
    errorMm: maybe(0, 500),
    how: word('ruler', 'trace', 'estimate'),
  },
  feeding: {
    preyId: needed,
    preyMassG: maybe(0.3, 6_000),
    count: num(1, 40),
    outcome: word('taken', 'refused', 'regurgitated'),
  },
  slough: { stage: word('cloudy', 'clear', 'complete', 'pieces') },
  mites: { seen: flag, where: text },
  treatment: { step: word('start', 'given', 'end'), what: needed, amount: text, vet: text },
  quarantine: {
    step: word('start', 'end'),
    why: text,
    where: text,
    clearBy: word('time', 'tests', 'both'),
    days: num(0, 730),
    tests: text,
  },
  test: { name: needed, result: word('clear', 'not-clear', 'pending'), vet: text },
  movement: { toPlace: needed, toBranchId: text, why: text },
  rest: { step: word('start', 'end'), why: word('winter', 'laying', 'birth') },
  round: {
    state: word('well', 'look', 'not-seen'),
    water: flag,
    locked: flag,
    droppings: flag,
    warmC: maybe(-5, 60),
    coolC: maybe(-5, 60),
    rhPct: maybe(0, 100),
    note: text,
  },
  examination: { answers: { type: 'any' }, massG: maybe(0.5, 60_000), outline: text, note: text },
  photo: { photoId: needed, of: text },
  sale: { outcome: word('sold', 'rehomed', 'returned'), reference: text },
  death: { foundBy: needed, signs: text, cause: text, carcass: text, vet: text },
  escape: { step: word('missed', 'found'), gap: text, told: text },
  call: { complaint: needed, next: needed, note: text },
  note: { text: needed },
};

export const eventKinds = Object.keys(eventFields) as readonly EventKind[];
export const isEventKind = (kind: string): kind is EventKind => Object.hasOwn(eventFields, kind);

const longestText = 2_000;

function wrong(field: string, got: unknown, allowed: string): Fault {
  const shown = typeof got === 'string' ? got.slice(0, 80) : (JSON.stringify(got) ?? 'nothing');
  return {
    code: 'ANIMAL_ENTRY',
    field,
    got: shown,
    allowed,
    say: `The field "${field}" of this entry cannot be so.`,
    fix: 'Correct it and save again; nothing was written.',
  };
}

function fieldFault(name: string, field: Field, value: unknown): Fault | null {
  switch (field.type) {
    case 'number': {
      if (value === null && field.nullable) return null;
      const fits = typeof value === 'number' && value >= field.low && value <= field.high;
      return fits ? null : wrong(name, value, `a number from ${field.low} to ${field.high}`);
    }
    case 'text': {
      const fits = typeof value === 'string' && value.length <= longestText && !value.includes('\0');
      if (!fits) return wrong(name, value, `a text of at most ${longestText} characters`);
      return field.needed && value.trim() === '' ? wrong(name, value, 'a text that is not empty') : null;
    }
    case 'word':
      return field.words.includes(String(value)) ? null : wrong(name, value, field.words.join(', '));
    case 'flag':
      return typeof value === 'boolean' ? null : wrong(name, value, 'true or false');
    case 'any':
      return typeof value === 'object' && value !== null ? null : wrong(name, value, 'an object');
  }
}

/** Every fault of an entry. Faults: "ANIMAL_ENTRY".
 *  @param today latest day that may be entered */
export function eventFaults(kind: string, on: unknown, body: unknown, today: string): Fault[] {
  if (!isEventKind(kind)) return [wrong('kind', kind, eventKinds.join(', '))];
  const faults: Fault[] = [];
  if (!isIsoDate(on)) faults.push(wrong('on', on, 'a day like 2026-01-31'));
  else if (on > today) faults.push(wrong('on', on, `not after ${today}`));
  const row = (typeof body === 'object' && body !== null ? body : {}) as Readonly<Record<string, unknown>>;
  const fields = eventFields[kind];
  for (const [name, field] of Object.entries(fields)) {
    const fault = fieldFault(name, field, row[name]);
    if (fault) faults.push(fault);
  }
  for (const name of Object.keys(row))
    if (!Object.hasOwn(fields, name)) faults.push(wrong(name, row[name], `only ${Object.keys(fields).join(', ')}`));
  return faults;
}
