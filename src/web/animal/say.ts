// Reasons, days and spoken facts in this person's language.
import type { Spoken } from '../../animal/care-facts.ts';
import type { Reason } from '../../animal/reason.ts';
import { sayPrey } from '../../animal/words/prey.ts';
import { type Reader, sayDay, sayReason } from '../../animal/words/say.ts';
import { spokenIn } from '../../shared/languages.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { useSheet } from '../settings/settings-context.tsx';

export interface Saying {
  readonly reason: (why: Reason) => string;
  readonly day: (on: string | null | undefined) => string;
  readonly spoken: (text: Spoken) => string;
  readonly prey: (preyId: string) => string;
}

export function useSaying(): Saying {
  const { language } = useSheet().settings;
  const reader = useReader();
  return {
    reason: (why) => sayReason(why, language, reader),
    day: (on) => (on ? sayDay(on, reader.days) : ''),
    spoken: (text) => spokenIn(text, language),
    prey: (preyId) => sayPrey(preyId, language),
  };
}

/** Days and quantities as this person has them. */
export function useReader(): Reader {
  const { settings, measure } = useSheet();
  return {
    days: measure.locale === 'en-US' ? 'en-US' : settings.language,
    prose: (text) => proseInUnits(text, measure),
  };
}
