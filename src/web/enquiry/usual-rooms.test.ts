import { expect, it } from 'vitest';
import { emptyDocument, isAnswered, spanInOrder } from '../state/document.ts';
import { usualRoomOf, usualRooms } from './usual-rooms.ts';

it('answers winter, summer and humidity, each colder room colder', () => {
  for (const { id, answers } of usualRooms) {
    const document = { ...emptyDocument, answers: { ...emptyDocument.answers, ...answers } };
    for (const question of ['winter', 'summer', 'humidity'] as const)
      expect(isAnswered(question, document), id).toBe(true);
    expect(spanInOrder(answers.winterHighC, answers.summerHighC), id).toBe(true);
  }
  const lows = usualRooms.map((room) => room.answers.winterLowC ?? Number.NaN);
  expect(lows).toEqual([...lows].sort((a, b) => b - a));
});

it('is no longer the usual room once somebody gave a figure of their own', () => {
  const [room] = usualRooms;
  const answers = { ...emptyDocument.answers, ...room!.answers };
  expect(usualRoomOf(answers)).toBe(room!.id);
  expect(usualRoomOf({ ...answers, winterLowC: 12 })).toBeNull();
  expect(usualRoomOf({ ...answers, rhMeasured: true })).toBeNull();
  expect(usualRoomOf(emptyDocument.answers)).toBeNull();
});
