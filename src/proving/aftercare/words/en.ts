// The words of aftercare in English: for each task what to do, why, and what is asked.
import type { Question, TaskKind } from '../task.ts';

export interface AftercareWords {
  readonly tasks: Readonly<Record<TaskKind, { readonly title: string; readonly why: string }>>;
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
      why: 'The proof read nights down to {roomC} °C in the room; below that it rests on a forecast, and at {endC} °C the forecast ends. In the room {roomC} °C is to be expected at about {outsideC} °C outside: watch the weather forecast for it.',
    },
    'prove-heat': {
      title: 'Prove the home again before the first hot day',
      why: 'The proof read days up to {roomC} °C in the room; above that it rests on a forecast, and at {endC} °C the forecast ends. In the room {roomC} °C is to be expected at about {outsideC} °C outside: watch the weather forecast for it.',
    },
    'renew-heater': {
      title: 'Renew the heater {heater}',
      why: 'Fitted {fitted}; it burns about {hoursPerDay} hours a day and usually lasts {lifeH} hours or longer.',
    },
    'check-instrument': {
      title: 'Check the instrument {name}',
      why: 'At melting ice or a wet salt every {days} days; one that was never checked, at once.',
    },
    'move-up': {
      title: 'Move up to a longer box',
      why: 'By its growth it passes {limitCm} cm in this time; for more this box is too short.',
    },
  },
  questions: {
    ate: 'Did it eat? What, and when?',
    readings: 'What do the three thermometers show: basking place, warm end, cool end?',
    massG: 'What does it weigh?',
    droppings: 'Were there droppings?',
    'day-of-readings': 'Readings of a day and a night, the room among them.',
    fitted: 'On which day was the new one fitted?',
    checked: 'What did it show at the known point?',
    box: 'How long is it now, and which box does it move to?',
  },
};
