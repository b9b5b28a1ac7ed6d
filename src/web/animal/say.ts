// Reasons, days and spoken facts in this person's language.
import type { Spoken } from '../../animal/care-facts.ts';
import type { Reason } from '../../animal/reason.ts';
import { sayPrey } from '../../animal/words/prey.ts';
import { sayDay, sayReason } from '../../animal/words/say.ts';
import { sayEntry } from '../../animal/words/say-entry.ts';
import { spokenIn } from '../../shared/languages.ts';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';

export interface Saying {
  readonly reason: (why: Reason) => string;
  readonly day: (on: string | null | undefined) => string;
  readonly spoken: (text: Spoken) => string;
  readonly prey: (preyId: string) => string;
  /** The body of an entry. */
  readonly entry: (body: unknown) => string;
}

export function useSaying(): Saying {
  const { settings, measure, t } = useSheet();
  const { language } = settings;
  const reader = useReader();
  return {
    reason: (why) => sayReason(why, language, reader),
    day: (on) => (on ? sayDay(on, reader.days) : ''),
    spoken: (text) => spokenIn(text, language),
    prey: (preyId) => sayPrey(preyId, language),
    entry: (body) =>
      sayEntry(body, {
        word: (key) => (isMessageKey(key) ? t(key) : null),
        prey: (preyId) => sayPrey(preyId, language),
        measure,
      }),
  };
}
