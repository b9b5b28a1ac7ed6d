// Says a task in a language, days written as the reader is used to.
import { type AnimalLanguage, sayDay } from '../../../animal/words/say.ts';
import type { AftercareTask } from '../task.ts';
import { de } from './de.ts';
import { en } from './en.ts';

const books = { en, de } as const;

export interface SaidTask {
  readonly title: string;
  readonly why: string;
  readonly ask: readonly string[];
}

export function sayTask(task: AftercareTask, language: AnimalLanguage): SaidTask {
  const { tasks, questions } = books[language];
  const filled = (text: string): string =>
    text.replace(/\{(\w+)\}/g, (all, name: string) => {
      if (!Object.hasOwn(task.blanks, name)) return all;
      const value = task.blanks[name]!;
      if (typeof value === 'string') return sayDay(value, language);
      return value.toLocaleString(language === 'de' ? 'de-DE' : 'en-GB', { useGrouping: false });
    });
  const { title, why } = tasks[task.kind];
  return { title: filled(title), why: filled(why), ask: task.ask.map((one) => questions[one]) };
}
