// Which texts of a kept document may hold a person's own words, and the same document without them. Numbers, choices
// among given words, ids and days stay. Leaves out where documents lie (erasures.ts).

type Json = Readonly<Record<string, unknown>>;

/** Keys under which people write what they like, in events, answers and what was kept of them. */
const freeKeys: ReadonlySet<string> = new Set(['text', 'note', 'notes', 'why', 'label', 'name', 'comment']);

/** Answers of an enquiry that are a word of the program, never somebody's own. */
const chosenAnswers: ReadonlySet<string> = new Set(['speciesId', 'stage', 'sun', 'startFrom', 'standardId']);
const chosenParts: ReadonlySet<string> = new Set(['format', 'version', 'answers', 'enclosure']);

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Every text under a free key, and the reason of an override, instead of which the note stands. */
export function withoutOwnWords(value: unknown, note: string): unknown {
  if (Array.isArray(value)) return value.map((one) => withoutOwnWords(one, note));
  if (!isObject(value)) return value;
  const override = 'covers' in value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => {
      const free = freeKeys.has(key) || (override && key === 'reason');
      return [key, free && typeof part === 'string' && part !== '' ? note : withoutOwnWords(part, note)];
    }),
  );
}

/** An enquiry: of what the program does not know only numbers and yes or no stay. */
export function enquiryWithoutOwnWords(document: Json, note: string): Json {
  const known = Object.entries(document).filter(([key]) => chosenParts.has(key));
  return Object.fromEntries(
    known.map(([key, part]) => {
      if (key === 'enclosure') return [key, withoutOwnWords(part, note)];
      if (key !== 'answers' || !isObject(part)) return [key, typeof part === 'object' ? null : part];
      const kept = Object.entries(part).filter(
        ([answer, value]) =>
          chosenAnswers.has(answer) || (typeof value !== 'string' && typeof value !== 'object') || value === null,
      );
      return [key, { ...Object.fromEntries(kept), label: note }];
    }),
  );
}

/** Texts that would go, each with the way to it: what a buyer is shown of the own words. */
export function ownWordsIn(value: unknown, way = ''): readonly { readonly way: string; readonly text: string }[] {
  if (Array.isArray(value)) return value.flatMap((one, i) => ownWordsIn(one, `${way}/${i}`));
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([key, part]) => {
    const free = freeKeys.has(key) || ('covers' in value && key === 'reason');
    if (free && typeof part === 'string') return part === '' ? [] : [{ way: `${way}/${key}`, text: part }];
    return ownWordsIn(part, `${way}/${key}`);
  });
}
