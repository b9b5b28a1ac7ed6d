// Hands every component this person's settings, the way quantities are written and the words.
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import { factWord, inWords } from '../../husbandry/fact-words.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { factWordsOf, findLanguages, isLoaded, loadBook, type Translate, translateFor } from '../messages/translate.ts';
import { type Measure, measureFor } from './measure.ts';
import { languageToAskFor, loadSettings, type Settings, saveSettings } from './settings.ts';

interface SheetContext {
  readonly settings: Settings;
  readonly change: (part: Partial<Settings>) => void;
  readonly measure: Measure;
  readonly t: Translate;
  /** A text of data/ in this person's language. */
  readonly fromFacts: (english: string) => string;
  /** Rows of data/ with their texts in this person's language. */
  readonly factsSaid: <T>(rows: T) => T;
}

const Context = createContext<SheetContext | null>(null);

export function SettingsProvider({ children }: { readonly children: ReactNode }) {
  const [settings, setSettings] = useState(loadSettings);
  const [wish] = useState(languageToAskFor);
  useEffect(() => {
    if (wish === null) return;
    const read = async () => {
      if (!(await findLanguages()).includes(wish)) return;
      await loadBook(wish);
      setSettings((now) => ({ ...now, book: wish, language: wish }));
    };
    void read();
  }, [wish]);
  useEffect(() => {
    saveSettings(settings);
    document.documentElement.lang = settings.book;
    document.documentElement.dataset.sheet = settings.sheet;
  }, [settings]);
  const value = useMemo<SheetContext>(() => {
    const measure = measureFor(settings);
    const isMetric = settings.temperature === 'C' && settings.length === 'cm' && settings.mass === 'g';
    return {
      settings,
      change: (part) => {
        const set = () =>
          setSettings((now) => {
            const next = { ...now, ...part };
            return { ...next, language: next.book };
          });
        // The sheet stays in the old language until the words of the new one are here.
        if (part.book === undefined || isLoaded(part.book)) set();
        else void loadBook(part.book).then(set, () => {});
      },
      measure,
      t: translateFor(settings.book, isMetric ? null : (text) => proseInUnits(text, measure)),
      fromFacts: (english) => factWord(factWordsOf(settings.book), english),
      factsSaid: (rows) => (settings.book === 'en' ? rows : inWords(rows, factWordsOf(settings.book))),
    };
  }, [settings]);
  return <Context.Provider value={value}>{children}</Context.Provider>;
}

export function useSheet(): SheetContext {
  const context = useContext(Context);
  if (!context) throw new Error('useSheet outside SettingsProvider');
  return context;
}
