// Every sentence that the program can say, in English, by its key: the books of all rooms, the sentences of the pure
// rooms, the texts of data/. Whoever adds a book names it here; every-text.test.ts finds one that is missing.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { en as animalEn } from '../../src/animal/words/en.ts';
import { preyWords } from '../../src/animal/words/prey.ts';
import { choiceWords, fieldWords } from '../../src/animal/words/register.ts';
import { chooseWords } from '../../src/cli/choose-words.ts';
import { messagesFor } from '../../src/cli/messages/languages.ts';
import { shellWords } from '../../src/cli/messages/manual-words.ts';
import { packMessages } from '../../src/cli/pack-messages.ts';
import { proofMessages } from '../../src/cli/proof-messages.ts';
import { recordsMessages } from '../../src/cli/records-messages.ts';
import { calendarWords } from '../../src/desk/aftercare/calendar-words.ts';
import { inspectionColumns, inspectionWords } from '../../src/desk/inspection-words.ts';
import { packBook } from '../../src/desk/pack/words/books.ts';
import { shopValuesRefusals, shopValuesWords } from '../../src/desk/shop-values-words.ts';
import { givenPatterns } from '../../src/husbandry/coded.ts';
import { namesEn } from '../../src/husbandry/words/names-en.ts';
import { needTitlesEn } from '../../src/planning/words/need-titles-en.ts';
import { en as aftercareEn } from '../../src/proving/aftercare/words/en.ts';
import { en as releaseEn } from '../../src/proving/release/words/en.ts';
import { faultsDe } from '../../src/proving/words/faults-de.ts';
import { germanSayings } from '../../src/proving/words/say-told.ts';
import { flatBook } from '../../src/shared/languages.ts';
import { en as webEn } from '../../src/web/messages/en.ts';
import '../../src/husbandry/judge-enclosure.ts';
import '../../src/husbandry/law-checks.ts';
import '../../src/planning/faults/guards.ts';
import '../../src/planning/faults/power-cut.ts';
import '../../src/planning/faults/rehearsals.ts';
import '../../src/planning/kit/refusal.ts';
import '../../src/planning/plan.ts';
import '../../src/proving/diagnosis/diagnose.ts';
import '../../src/proving/files/understand-log.ts';

const root = join(import.meta.dirname, '../..');
const json = (file: string): unknown => JSON.parse(readFileSync(join(root, 'data', file), 'utf8'));

/** The room of a book, which is the beginning of its keys, and its English. */
const books: Readonly<Record<string, unknown>> = {
  web: webEn,
  animal: animalEn,
  release: releaseEn,
  aftercare: aftercareEn,
  need: needTitlesEn,
  name: namesEn,
  pack: packBook('en'),
  calendar: calendarWords.en,
  register: inspectionWords.en,
  'register.columns': inspectionColumns.en,
  'shop-values': shopValuesWords.en,
  'shop-values.refusals': shopValuesRefusals.en,
  terminal: messagesFor('en'),
  'terminal.choose': chooseWords('en'),
  'terminal.proof': proofMessages('en'),
  'terminal.pack': packMessages('en'),
  'terminal.records': recordsMessages('en'),
  'terminal.manual': shellWords('en'),
};

const keyed = (room: string, sentences: Readonly<Record<string, string>>): [string, string][] =>
  Object.entries(sentences).map(([key, english]) => [`${room}:${key}`, english]);

/** Sentences whose English carries a word beside its id: the other languages say the word by the id. */
const byId: Readonly<Record<string, string>> = {
  'space.why': 'Under "{0}" {1} for a snake of {3}.',
  'space.tolerated': '{0} is a little under ({2} of {3}), which the standard tolerates',
  'probe.placed': '{0}, {2} from the left, {3} up',
};

function sayings(): [string, string][] {
  return Object.keys(germanSayings).map((code) => {
    const pattern = givenPatterns.get(code);
    if (pattern === undefined) throw new Error(`no English for ${code}`);
    return [`say:${code}`, byId[code] ?? pattern()];
  });
}

/** What a refusal means, from the page of errors: a language says it in one sentence, figures follow. */
function refusals(): [string, string][] {
  const page = readFileSync(join(root, 'docs/errors.md'), 'utf8');
  const meaning = Object.fromEntries(
    [...page.matchAll(/^\| `([A-Z_]+)` \|([^|]*)\|/gm)].map((row) => [row[1], row[2]?.trim() ?? '']),
  );
  return Object.keys(faultsDe).map((key) => {
    const code = key.slice('fault.'.length);
    return [`fault:${code}`, meaning[code] ?? englishLabels[code] ?? code];
  });
}

const englishLabels: Readonly<Record<string, string>> = {
  gotWord: 'given: {value}',
  allowedWord: 'allowed: {value}',
};

const isSpoken = (x: object): x is { readonly en: string } => 'en' in x && 'de' in x && typeof x.en === 'string';

/** Texts that data and tables hold in both own languages. */
function spokenTexts(x: unknown): string[] {
  if (typeof x !== 'object' || x === null) return [];
  return isSpoken(x) ? [x.en] : Object.values(x).flatMap(spokenTexts);
}

function facts(): [string, string][] {
  // What German says of data/ is what there is to say: ids and scientific names are not in it.
  const german = Object.keys(json('words/de.json') as object);
  const care = ['examination.json', 'register.json', 'triage.json', 'care-headings.json'].map(json);
  const known = new Set([...german, ...spokenTexts([care, fieldWords, choiceWords, preyWords])]);
  return [...known].map((text) => [`fact:${text}`, text]);
}

export { books };

/** Key to English. */
export function everyText(): Readonly<Record<string, string>> {
  return Object.fromEntries([
    ...Object.entries(books).flatMap(([room, book]) => keyed(room, flatBook(book))),
    ...sayings(),
    ...refusals(),
    ...facts(),
  ]);
}
