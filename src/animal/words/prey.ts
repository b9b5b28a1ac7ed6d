// What prey animals are called at the desk, in each language; the sizes stand in data/prey.json.
import { type Language, spokenIn } from '../../shared/languages.ts';
import type { Spoken } from '../care-facts.ts';

export const preyWords: Readonly<Record<string, Spoken>> = {
  'mouse-pink': { en: 'Mouse, pink', de: 'Maus, nackt' },
  'mouse-fuzzy': { en: 'Mouse, first fur', de: 'Maus, erstes Fell' },
  'mouse-hopper': { en: 'Mouse, hopper', de: 'Maus, Springer' },
  'mouse-small': { en: 'Mouse, small', de: 'Maus, klein' },
  'mouse-adult': { en: 'Mouse, adult', de: 'Maus, erwachsen' },
  'rat-pink': { en: 'Rat, pink', de: 'Ratte, nackt' },
  'rat-fuzzy': { en: 'Rat, first fur', de: 'Ratte, erstes Fell' },
  'rat-weaner': { en: 'Rat, weaner', de: 'Ratte, abgesetzt' },
  'rat-small': { en: 'Rat, small', de: 'Ratte, klein' },
  'rat-medium': { en: 'Rat, medium', de: 'Ratte, mittel' },
  'rat-large': { en: 'Rat, large', de: 'Ratte, groß' },
  'multimammate-adult': { en: 'Multimammate mouse, adult', de: 'Vielzitzenmaus, erwachsen' },
  chick: { en: 'Day-old chick', de: 'Eintagsküken' },
  'quail-chick': { en: 'Quail, day old', de: 'Wachtelküken' },
  'fish-whole': { en: 'Whole small fish', de: 'Kleiner ganzer Fisch' },
  earthworm: { en: 'Earthworm', de: 'Regenwurm' },
};

/** The word, or what somebody wrote by hand as it stands. */
export const sayPrey = (preyId: string, language: Language): string =>
  Object.hasOwn(preyWords, preyId) ? spokenIn(preyWords[preyId]!, language) : preyId;
