// Why a heater, or a heater on a thermostat, may not be used: a need of husbandry that it breaks, or a sentence of our own.
// Leaves out: which kits these are (kit-candidates.ts).
import { coded, english, type Saying, type Told, told } from '../../husbandry/coded.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';

export interface RefusalSays {
  /** In English, whole. */
  readonly why: string;
  /** The need that it breaks, whose name comes first; null for a sentence of our own. */
  readonly needId: string | null;
  /** The sentence without a language; null when it was written in English only. */
  readonly told: Told | null;
}

export const refusals = coded('kit', {
  noSuchPlace: 'There is no such place for it in this box.',
  panelLid: 'A panel needs a closed lid to hang under.',
  panelLow: 'The box is too low for a panel under its lid.',
  tooLarge: 'It is too large for this box: no cool end would be left.',
  aboveMesh: 'It cannot stand above mesh.',
  bodyLow: 'The box is too low for a lamp or emitter inside.',
  noNightHeater: 'It gives light, and no heater for the night fits this box.',
  lacksParts: 'The shelf lacks a guard, a holder or a thermometer for it.',
  noNightThermostat: 'The shelf has no thermostat for the night heater.',
  noHeater: 'The shelf has no heater in stock, and the customer has none.',
  noThermostat: 'The shelf has no thermostat in stock, and the customer has none.',
  overloaded: 'The thermostat should not carry so many watts.',
  tooStrongNight: 'The night heater would be stronger than the lamp, and the basking site under it.',
});

export const ownRefusal = (say: Saying): RefusalSays => ({ why: english(say), needId: null, told: told(say) });

/** Loads of every size are one refusal, and a sentence of watts says nothing of them all. */
export const needRefusal = (need: NeedVerdict): RefusalSays => {
  const load = need.id.startsWith('load-');
  return {
    why: `${need.title}: ${load ? english(refusals.overloaded) : withoutWatts(need.reasons[0] ?? '')}`,
    needId: need.id,
    told: load ? told(refusals.overloaded) : (need.told?.reasons[0] ?? null),
  };
};

/** The same sentence for heaters of every size, so that refusals can be counted together. */
export const withoutWatts = (text: string): string => text.replace(/\s*\(\d+ W\)/g, '');
