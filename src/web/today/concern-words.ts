// Says what was told and asks for a second look.
import type { Concern } from '../../proving/aftercare/answer.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function useConcernWords(): (concern: Concern) => string {
  const { t, measure } = useSheet();
  return ({ id, blanks }) => {
    if (id === 'reading') {
      const key = String(blanks.key) as 'coolAirC';
      return t('concern.reading', {
        place: t(`said.${key}`),
        value: measure.text('temperature', Number(blanks.valueC)),
      });
    }
    if (id === 'mass-loss') return t('concern.mass-loss', { pct: Number(blanks.pct).toLocaleString(measure.locale) });
    if (id === 'instrument-off')
      return t('concern.instrument-off', { off: measure.text('difference', Number(blanks.offK)) });
    return t(`concern.${id}`);
  };
}
