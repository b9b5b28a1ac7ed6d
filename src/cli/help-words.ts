// Changes that would help, in words for the terminal. Leaves out: what they cost (plan-search-text.ts).
import type { HelpStep } from '../planning/search/help-changes.ts';
import type { Display } from './display.ts';

export function helpStepEn(step: HelpStep, show: Display): string {
  switch (step.id) {
    case 'box':
      return `The same kit in another box: ${step.name}.`;
    case 'box-and-kit':
      return `Another box, ${step.name}; a kit that may be used in it: ${step.kit}.`;
    case 'insulated':
      return 'Foam outside on back, sides, top and bottom.';
    case 'mesh-covered':
      return 'The mesh covered four fifths, open round the lamp.';
    case 'vents-halved':
      return 'Vents half shut.';
    case 'vents-doubled':
      return 'Vents twice as large.';
    case 'damp-floor':
      return `Keep about ${show.percent(step.shareFrac * 100)} of the floor damp, away from the heater.`;
    case 'dry-floor':
      return 'Let the floor dry out.';
    case 'dry-floor-small-bowl':
      return 'Let the floor dry out, and keep the water in a smaller bowl.';
    case 'shade':
      return 'Out of the sun, or the glass shaded from outside.';
    case 'warmer-winter':
      return `A room ${show.span(step.byK)} warmer in winter (${show.temp(step.lowC)} to ${show.temp(step.highC)}).`;
    case 'cooler-summer':
      return `Another room, or a cooled one: ${show.span(step.byK)} cooler in summer (${show.temp(step.lowC)} to ${show.temp(step.highC)}).`;
  }
}

export function helpStepDe(step: HelpStep, show: Display): string {
  switch (step.id) {
    case 'box':
      return `Dieselbe Ausstattung in einem anderen Behälter: ${step.name}.`;
    case 'box-and-kit':
      return `Ein anderer Behälter, ${step.name}; eine Ausstattung, die hineindarf: ${step.kit}.`;
    case 'insulated':
      return 'Dämmplatten außen an Rückwand, Seiten, Decke und Boden.';
    case 'mesh-covered':
      return 'Das Gitter zu vier Fünfteln abgedeckt, um die Lampe offen.';
    case 'vents-halved':
      return 'Lüftung halb geschlossen.';
    case 'vents-doubled':
      return 'Lüftung doppelt so groß.';
    case 'damp-floor':
      return `Etwa ${show.percent(step.shareFrac * 100)} des Bodens feucht halten, von der Heizung entfernt.`;
    case 'dry-floor':
      return 'Den Boden trocknen lassen.';
    case 'dry-floor-small-bowl':
      return 'Den Boden trocknen lassen und das Wasser in eine kleinere Schale geben.';
    case 'shade':
      return 'Aus der Sonne, oder das Glas von außen beschattet.';
    case 'warmer-winter':
      return `Ein Raum, der im Winter ${show.span(step.byK)} wärmer ist (${show.temp(step.lowC)} bis ${show.temp(step.highC)}).`;
    case 'cooler-summer':
      return `Ein anderer oder gekühlter Raum: im Sommer ${show.span(step.byK)} kühler (${show.temp(step.lowC)} bis ${show.temp(step.highC)}).`;
  }
}
