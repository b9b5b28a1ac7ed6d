// Sentences that keep their code and blanks beside the English, so that another language is found by code and not by
// matching words. Leaves out the other languages (words/).

/** As it travels: plain, without the English. */
export interface Told {
  readonly code: string;
  readonly blanks: readonly (string | Told)[];
}

/** A sentence in the making; stands for its English wherever a text is put together. */
export interface Saying extends Told {
  readonly en: string;
  readonly toString: () => string;
}

export type Sayable = string | Saying;

type Blank<A> = { [I in keyof A]: A[I] extends string ? Sayable : A[I] };
export type Coded<T> = {
  readonly [K in keyof T]: T[K] extends string
    ? Saying
    : T[K] extends (...args: infer A) => string
      ? (...args: Blank<A>) => Saying
      : Coded<T[K]>;
};

export const isSaying = (x: unknown): x is Saying =>
  typeof x === 'object' && x !== null && 'code' in x && 'en' in x && 'blanks' in x;

const blankOf = (x: unknown): string | Told => (isSaying(x) ? told(x) : String(x));

export const told = ({ code, blanks }: Told): Told => ({ code, blanks });
export const english = (x: Sayable): string => (typeof x === 'string' ? x : x.en);

/** Every code that a table gave and how many blanks it has, for the test that other languages have them. */
export const givenCodes = new Map<string, number>();

/** The English of such a code with its blanks open, for whoever makes a further language. */
export const givenPatterns = new Map<string, () => string>();

function saying(code: string, blanks: readonly (string | Told)[], en: string): Saying {
  return { code, blanks, en, toString: () => en };
}

/** Gives every sentence of a table its code: "water.none" for the entry "none" of the room "water". */
export function coded<const T extends object>(room: string, table: T): Coded<T> {
  const entries = Object.entries(table).map(([key, entry]: [string, unknown]) => {
    const code = `${room}.${key}`;
    if (typeof entry !== 'object') givenCodes.set(code, typeof entry === 'function' ? entry.length : 0);
    if (typeof entry === 'string') {
      givenPatterns.set(code, () => entry);
      return [key, saying(code, [], entry)];
    }
    if (typeof entry === 'function') {
      const write = entry as (...args: readonly unknown[]) => string;
      givenPatterns.set(code, () => write(...Array.from({ length: entry.length }, (_, i) => `{${i}}`)));
      return [key, (...args: readonly unknown[]) => saying(code, args.map(blankOf), write(...args))];
    }
    return [key, coded(code, entry as object)];
  });
  return Object.fromEntries(entries) as Coded<T>;
}

/** What a need says, without a language; an entry that was written in English only is null. */
export interface ToldNeed {
  readonly wanted: Told | null;
  readonly found: Told | null;
  readonly reasons: readonly (Told | null)[];
  readonly fixes: readonly (Told | null)[];
  readonly settledBy: Told | null;
}
