// How this person has days and quantities written within a sentence.
import type { Reader } from '../../animal/words/say.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { useSheet } from './settings-context.tsx';

export function useReader(): Reader {
  const { settings, measure } = useSheet();
  return {
    days: measure.locale === 'en-US' ? 'en-US' : settings.language,
    prose: (text) => proseInUnits(text, measure),
  };
}
