// Says a task in a language, days written as the reader is used to.
import { type AnimalLanguage, filledFor, metric, type Reader, sayDay } from '../../../animal/words/say.ts';
import { heaterNameIn } from '../../../husbandry/words/names.ts';
import { bookIn } from '../../../shared/languages.ts';
import type { AftercareTask } from '../task.ts';
import { de } from './de.ts';
import { type AftercareWords, en } from './en.ts';

const books = { en, de } as const;

export type SayableTask = Pick<AftercareTask, 'kind' | 'blanks' | 'ask'>;

export interface SaidTask {
  readonly title: string;
  readonly why: string;
  readonly ask: readonly string[];
}

/** @param to who reads it: the desk calls, the keeper is asked */
export function sayTask(
  task: SayableTask,
  language: AnimalLanguage,
  to: 'desk' | 'keeper' = 'desk',
  reader: Reader = metric(language),
): SaidTask {
  const { tasks, questions, keeper, ownThermometer, earlierHeater } = bookIn<AftercareWords>(
    'aftercare',
    language,
    books,
  );
  const saidBlank = (name: string, value: string | number): string => {
    if (name === 'name' && value === '') return ownThermometer.replace('{n}', String(task.blanks.n ?? ''));
    if (name === 'heater') return heaterIn(task.blanks, language) ?? earlierHeater;
    if (typeof value === 'string') return sayDay(value, reader.days);
    return value.toLocaleString(language === 'en' ? 'en-GB' : language, { useGrouping: false });
  };
  const blanks = Object.fromEntries(Object.entries(task.blanks).map(([name, value]) => [name, saidBlank(name, value)]));
  const filled = (text: string): string => filledFor(reader, text, blanks, language);
  const { title, why } = tasks[task.blanks.assumed === 1 ? 'renew-heater-assumed' : task.kind];
  const own = to === 'keeper' ? keeper[task.kind] : undefined;
  return { title: filled(own ?? title), why: filled(why), ask: task.ask.map((one) => questions[one]) };
}

/** As the plan names it: by its kind, and by its number among several. */
function heaterIn({ heaterKind, heaterN }: AftercareTask['blanks'], language: AnimalLanguage): string | null {
  const name = heaterNameIn(String(heaterKind), language);
  return name === null || heaterN === undefined ? name : `${name} ${heaterN}`;
}
