// How a paper or a calendar is wanted: language and units, each as the place reads it where it is not said.
import { Type } from 'typebox';
import type { PaperUnits } from '../desk/paper-units.ts';
import { languageCode } from './language-code.ts';

const one = <T extends string>(...words: readonly T[]) => Type.Optional(Type.Union(words.map((w) => Type.Literal(w))));

export const unitFields = { temperature: one('C', 'F'), length: one('cm', 'in'), mass: one('g', 'oz') } as const;
export const paperFields = { language: Type.Optional(languageCode), ...unitFields } as const;
export const paperQuery = Type.Object(paperFields, { additionalProperties: false });

/** Only what was said of it, without the other fields of the query. */
export function askedUnits(query: object): Partial<PaperUnits> {
  const said = query as Partial<PaperUnits>;
  const names = ['language', 'temperature', 'length', 'mass'] as const;
  return Object.fromEntries(names.flatMap((name) => (said[name] === undefined ? [] : [[name, said[name]]])));
}
