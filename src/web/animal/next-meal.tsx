// What it eats next, how much and when, and what stands against it; when it is weighed next.
import { millimetresText } from '../controls/parts-text.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { AnimalSheet } from './animal-api.ts';
import { useSaying } from './say.ts';

export function NextMeal({ sheet }: { readonly sheet: AnimalSheet }) {
  const { t, measure } = useSheet();
  const say = useSaying();
  if (sheet.gone) return null;
  const { advice, reasons, state, from, to, mealFrac } = sheet.feeding;
  const g = (value: number): string => measure.text('mass', value, value < 20 ? 1 : 0);
  const { on, overdue } = sheet.mass.next;
  return (
    <section className="sheet-part">
      <h2>{t('sheet.meal')}</h2>
      <p className="meal-line">
        <strong>{t(`feed.state.${state}`)}</strong>{' '}
        {from && to && t('sheet.mealFrom', { from: say.day(from), to: say.day(to) })}
      </p>
      {reasons.map((why) => (
        <p key={why.key}>{say.reason(why)}</p>
      ))}
      {advice ? (
        <>
          <p>
            {t('sheet.mealMass', { low: g(advice.lowG), high: g(advice.highG) })}
            {advice.widestMm !== null && `, ${t('sheet.mealWide', { mm: millimetresText(advice.widestMm, measure) })}`}
          </p>
          <p>
            {advice.prey
              .slice(0, 3)
              .map((prey) => t('sheet.mealPrey', { count: prey.count, prey: say.prey(prey.preyId) }))
              .join(' · ')}
          </p>
          {mealFrac < 1 && <p>{t('sheet.mealHalf')}</p>}
          <p className="field-hint">{t('sheet.mealSource')}</p>
        </>
      ) : (
        <p>{t('sheet.mealUnknown')}</p>
      )}
      <p>{t(overdue ? 'sheet.weighLate' : 'sheet.weighNext', { on: say.day(on) })}</p>
    </section>
  );
}
