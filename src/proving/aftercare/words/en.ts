// The words of aftercare in English: for each task what to do, why, and what is asked.
import type { Question, TaskKind } from '../task.ts';

/** A heater whose hours are not known is worded apart. */
export type WordedTask = TaskKind | 'renew-heater-assumed';

export interface AftercareWords {
  readonly tasks: Readonly<Record<WordedTask, { readonly title: string; readonly why: string }>>;
  /** Titles as the keeper reads them, where they differ. */
  readonly keeper: Readonly<Partial<Record<TaskKind, string>>>;
  /** Instruments that have no name of their own. */
  readonly ownThermometer: string;
  /** A heater of which nothing but its fitting was kept. */
  readonly earlierHeater: string;
  readonly questions: Readonly<Record<Question, string>>;
}

export const en: AftercareWords = {
  tasks: {
    'call-first': {
      title: 'Call the keeper: the first nights',
      why: 'Day {days} after the release on {day}: the home has had its first nights with the animal in it.',
    },
    'call-week': {
      title: 'Call the keeper: the first week',
      why: 'Day {days} after the release on {day}: readings, water, droppings and food can be told of.',
    },
    'call-meal': {
      title: 'Call the keeper: after the first meal',
      why: '{days} days after the first meal at home ({day}): the rest after the meal is over.',
    },
    weigh: { title: 'Weigh', why: 'At this age every {days} days; sooner while it refuses or loses mass.' },
    'prove-home': {
      title: 'Read the room and prove the home again',
      why: 'The room was not read in the proof, so nothing is known of colder nights and hotter days.',
    },
    'prove-cold': {
      title: 'Prove the home again before the first cold night',
      why: 'The proof read nights down to {roomC} °C in the room; below that it rests on a forecast, and at {endC} °C the forecast ends. The days are a guess from the year’s course: watch the thermometer in the room.',
    },
    'prove-heat': {
      title: 'Prove the home again before the first hot day',
      why: 'The proof read days up to {roomC} °C in the room; above that it rests on a forecast, and at {endC} °C the forecast ends. The days are a guess from the year’s course: watch the thermometer in the room.',
    },
    'renew-heater': {
      title: 'Renew the heater: {heater}',
      why: 'Fitted {fitted}; it burns about {hoursPerDay} hours a day and usually lasts {lifeH} hours or longer.',
    },
    'renew-heater-assumed': {
      title: 'Renew the heater: {heater}',
      why: 'Fitted {fitted}; no plan is kept, so it is taken to burn {hoursPerDay} hours a day, the most it can. It usually lasts {lifeH} hours or longer.',
    },
    'check-instrument': {
      title: 'Check the instrument: {name}',
      why: 'At melting ice or a wet salt every {days} days; one that was never checked, at once.',
    },
    'move-up': {
      title: 'Move up to a longer box',
      why: 'By its growth it passes {limitCm} cm in this time; for more this box is too short.',
    },
  },
  keeper: {
    'call-first': 'The first nights',
    'call-week': 'The first week',
    'call-meal': 'After the first meal',
    weigh: 'Weigh your snake',
  },
  ownThermometer: 'thermometer {n} of the home',
  earlierHeater: 'the one fitted before',
  questions: {
    well: 'Is it well?',
    ate: 'Did it eat?',
    readings: 'What do the thermometers show?',
    massG: 'What does it weigh?',
    droppings: 'Were there droppings?',
    'day-of-readings': 'Did you send readings of a day and a night, the room among them?',
    fitted: 'On which day was the new one fitted?',
    checked: 'What did it show in melting ice?',
    box: 'How long is it now?',
  },
};
