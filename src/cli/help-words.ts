// Changes that would help, in words for the terminal. Leaves out: what they cost (plan-search-text.ts).
import type { HelpStep } from '../planning/search/help-changes.ts';
import { kitName, type Speaker } from './found-words.ts';
import { factSaid } from './need-words.ts';

export const helpStepsEn = {
  box: (name: string) => `The same kit in another box: ${name}.`,
  'box-and-kit': (name: string, kit: string) => `Another box, ${name}, with this kit in it: ${kit}.`,
  insulated: 'Foam outside on back, sides, top and bottom.',
  'mesh-covered': 'The mesh covered four fifths, open round the lamp.',
  'vents-halved': 'Vents half shut.',
  'vents-doubled': 'Vents twice as large.',
  'damp-floor': (share: string) => `Keep about ${share} of the floor damp, away from the heater.`,
  'dry-floor': 'Let the floor dry out.',
  'dry-floor-small-bowl': 'Let the floor dry out, and keep the water in a smaller bowl.',
  shade: 'Out of the sun, or the glass shaded from outside.',
  'warmer-winter': (by: string, low: string, high: string) => `A room ${by} warmer in winter (${low} to ${high}).`,
  'cooler-summer': (by: string, low: string, high: string) =>
    `Another room, or a cooled one: ${by} cooler in summer (${low} to ${high}).`,
};

export type HelpSteps = typeof helpStepsEn;

export const helpStepsDe: HelpSteps = {
  box: (name) => `Dieselbe Ausstattung in einem anderen Terrarium: ${name}.`,
  'box-and-kit': (name, kit) => `Ein anderes Terrarium, ${name}, mit dieser Ausstattung: ${kit}.`,
  insulated: 'Dämmplatten außen an Rückwand, Seiten, Decke und Boden.',
  'mesh-covered': 'Das Gitter zu vier Fünfteln abgedeckt, um die Lampe offen.',
  'vents-halved': 'Lüftung halb geschlossen.',
  'vents-doubled': 'Lüftung doppelt so groß.',
  'damp-floor': (share) => `Etwa ${share} des Bodens feucht halten, von der Heizung entfernt.`,
  'dry-floor': 'Den Boden trocknen lassen.',
  'dry-floor-small-bowl': 'Den Boden trocknen lassen und das Wasser in eine kleinere Schale geben.',
  shade: 'Aus der Sonne, oder das Glas von außen beschattet.',
  'warmer-winter': (by, low, high) => `Ein Raum, der im Winter ${by} wärmer ist (${low} bis ${high}).`,
  'cooler-summer': (by, low, high) => `Ein anderer oder gekühlter Raum: im Sommer ${by} kühler (${low} bis ${high}).`,
};

export function helpStepSaid(step: HelpStep, speaker: Speaker): string {
  const { show } = speaker;
  const steps = speaker.words.helpSteps;
  switch (step.id) {
    case 'box':
      return steps.box(factSaid(show, step.name));
    case 'box-and-kit':
      return steps['box-and-kit'](factSaid(show, step.name), kitName(step, speaker));
    case 'damp-floor':
      return steps['damp-floor'](show.percent(step.shareFrac * 100));
    case 'warmer-winter':
    case 'cooler-summer':
      return steps[step.id](show.span(step.byK), show.temp(step.lowC), show.temp(step.highC));
    default:
      return steps[step.id];
  }
}
