// Which fields the form asks for each kind of entry, and what they begin with.
import type { EventKind } from '../../animal/event.ts';
import { preyWords } from '../../animal/words/prey.ts';
import type { AnimalSheet } from './animal-api.ts';

export interface ShapeField {
  readonly name: string;
  readonly start: string | number | boolean | null;
  readonly words?: readonly string[];
  readonly number?: true;
  /** Yes or no. */
  readonly flag?: true;
}

const text = (name: string): ShapeField => ({ name, start: '' });
const number = (name: string, start: number | null = null): ShapeField => ({ name, start, number: true });
const choice = (name: string, ...words: readonly string[]): ShapeField => ({ name, start: words[0] ?? '', words });

export const entryShape = {
  weighing: [number('massG')],
  feeding: [
    choice('preyId', ...Object.keys(preyWords)),
    number('count', 1),
    choice('outcome', 'taken', 'refused', 'regurgitated'),
  ],
  slough: [choice('stage', 'cloudy', 'clear', 'complete', 'pieces')],
  mites: [{ name: 'seen', start: true, words: ['yes', 'no'], flag: true }, text('where')],
  length: [number('totalLengthCm')],
  movement: [text('toPlace'), text('why')],
  treatment: [choice('step', 'start', 'given', 'end'), text('what'), text('amount'), text('vet')],
  quarantine: [
    choice('step', 'start', 'end'),
    choice('clearBy', 'time', 'tests', 'both'),
    number('days', 90),
    text('where'),
    text('why'),
    text('tests'),
  ],
  test: [text('name'), choice('result', 'pending', 'clear', 'not-clear'), text('vet')],
  rest: [choice('step', 'start', 'end'), choice('why', 'winter', 'laying', 'birth')],
  sale: [choice('outcome', 'sold', 'rehomed', 'returned'), text('reference')],
  escape: [choice('step', 'missed', 'found'), text('gap'), text('told')],
  death: [text('foundBy'), text('signs'), text('cause'), text('carcass'), text('vet')],
  note: [text('text')],
} as const satisfies Partial<Record<EventKind, readonly ShapeField[]>> as Readonly<
  Record<EntryKind, readonly ShapeField[]>
>;

export type EntryKind =
  | 'weighing'
  | 'feeding'
  | 'slough'
  | 'mites'
  | 'length'
  | 'movement'
  | 'treatment'
  | 'quarantine'
  | 'test'
  | 'rest'
  | 'sale'
  | 'escape'
  | 'death'
  | 'note';

export const entryKinds = Object.keys(entryShape) as readonly EntryKind[];

/** What the server wants beside the fields that are asked. */
const unasked: Readonly<Partial<Record<EntryKind, object>>> = {
  feeding: { preyMassG: null },
  length: { snoutVentMm: null, errorMm: null, how: 'ruler' },
  movement: { toBranchId: '' },
};

export function emptyBody(kind: EntryKind, sheet: AnimalSheet): Record<string, unknown> {
  const asked = Object.fromEntries(entryShape[kind].map((field) => [field.name, field.start]));
  const prey =
    kind === 'feeding'
      ? {
          preyId: sheet.feeding.advice?.prey[0]?.preyId ?? 'mouse-adult',
          count: sheet.feeding.advice?.prey[0]?.count ?? 1,
        }
      : {};
  return { ...unasked[kind], ...asked, ...prey };
}
