// Rooms that nobody has read yet: usual figures to start from, our choice, each to be replaced by a thermometer's.
import rows from '../../../data/usual-rooms.json';
import type { Answers } from '../state/document.ts';

type RoomFigure = 'winterLowC' | 'winterHighC' | 'summerLowC' | 'summerHighC' | 'rhPct';
const figures: readonly RoomFigure[] = ['winterLowC', 'winterHighC', 'summerLowC', 'summerHighC', 'rhPct'];

export type UsualRoomId = 'lived-in' | 'bedroom' | 'barely-heated' | 'unheated';

export interface UsualRoom {
  readonly id: UsualRoomId;
  readonly answers: Pick<Answers, RoomFigure | 'summerRhPct' | 'rhMeasured'>;
}

export const usualRooms: readonly UsualRoom[] = rows.map((row) => ({
  id: row.id as UsualRoomId,
  answers: {
    winterLowC: row.winterLowC.value,
    winterHighC: row.winterHighC.value,
    summerLowC: row.summerLowC.value,
    summerHighC: row.summerHighC.value,
    rhPct: row.rhPct.value,
    summerRhPct: null,
    rhMeasured: false,
  },
}));

/** The usual room that all figures of the room still are; null as soon as one of them is somebody's own. */
export function usualRoomOf(answers: Answers): UsualRoomId | null {
  const same = ({ answers: room }: UsualRoom): boolean =>
    !answers.rhMeasured && answers.summerRhPct === null && figures.every((key) => room[key] === answers[key]);
  return usualRooms.find(same)?.id ?? null;
}
