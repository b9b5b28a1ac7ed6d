// The body of an entry in words: chosen words and quantities as the reader has them, empty fields left out. What people
// typed stays as it is. Leaves out when it was and who wrote it.
import type { Measure, QuantityKind } from '../../shared/measure.ts';

export interface EntrySpeech {
  /** The word under a key such as "field.massG" or "word.taken"; null where there is none. */
  readonly word: (key: string) => string | null;
  readonly prey: (preyId: string) => string;
  readonly measure: Measure;
}

/** Ids that say nothing to a reader. */
const unsaid: ReadonlySet<string> = new Set(['photoId', 'toBranchId']);

export function sayEntry(body: unknown, speech: EntrySpeech): string {
  if (typeof body !== 'object' || body === null) return '';
  return Object.entries(body)
    .filter(([name, value]) => value !== '' && value !== null && typeof value !== 'object' && !unsaid.has(name))
    .map(([name, value]) => {
      const label = speech.word(`field.${name}`);
      const said = valueSaid(name, value, speech);
      return label === null ? said : `${label}: ${said}`;
    })
    .join(' · ');
}

function valueSaid(name: string, value: unknown, { word, prey, measure }: EntrySpeech): string {
  if (typeof value === 'boolean') return word(value ? 'word.yes' : 'word.no') ?? String(value);
  if (name === 'preyId') return prey(String(value));
  if (typeof value === 'number') return numberSaid(name, value, measure);
  return word(`word.${String(value)}`) ?? String(value);
}

/** Suffix of a name, its kind of quantity, and what makes the stored unit of it. */
const kinds: readonly (readonly [RegExp, QuantityKind, number])[] = [
  [/assG$/, 'mass', 1],
  [/[a-z]C$/, 'temperature', 1],
  [/Cm$/, 'length', 0.01],
  [/Pct$/, 'percent', 1],
];

function numberSaid(name: string, value: number, measure: Measure): string {
  if (name.endsWith('Mm'))
    return measure.settings.length === 'in' ? measure.text('length', value / 1000, 2) : `${value}\u00a0mm`;
  const digits = Number.isInteger(value) ? 0 : 1;
  const found = kinds.find(([suffix]) => suffix.test(name));
  if (found === undefined) return measure.number(value, digits);
  const [, kind, toStored] = found;
  return measure.text(kind, value * toStored, kind === 'mass' && value < 20 ? 1 : digits);
}
