// An answer in a few words, in this person's units.
import type { AftercareAnswers } from '../../proving/aftercare/answer.ts';
import { answeredReadings } from '../../proving/aftercare/answer.ts';
import { useSaying } from '../animal/say.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function useAnswerWords(): (said: AftercareAnswers) => readonly string[] {
  const { t, measure } = useSheet();
  const say = useSaying();
  return (said) => [
    ...(said.well ? [t(`said.well.${said.well}`)] : []),
    ...(said.flags && said.flags.length > 0 ? [t('concern.flags')] : []),
    ...(said.ate ? [`${t(`said.ate.${said.ate}`)}${said.mealOn ? ` (${say.day(said.mealOn)})` : ''}`] : []),
    ...answeredReadings.flatMap((key) => {
      const value = said[key];
      return value === undefined ? [] : [`${t(`said.${key}`)} ${measure.text('temperature', value)}`];
    }),
    ...(said.massG === undefined ? [] : [measure.text('mass', said.massG)]),
    ...(said.droppings ? [t(`said.droppings.${said.droppings}`)] : []),
    ...(said.readingsSent === undefined ? [] : [t(said.readingsSent ? 'said.sent.yes' : 'said.sent.no')]),
    ...(said.fittedOn ? [t('said.fitted', { day: say.day(said.fittedOn) })] : []),
    ...(said.iceShownC === undefined ? [] : [t('said.ice', { value: measure.text('temperature', said.iceShownC) })]),
    ...(said.lengthCm === undefined ? [] : [measure.text('length', said.lengthCm / 100)]),
    ...(said.note ? [said.note] : []),
  ];
}
