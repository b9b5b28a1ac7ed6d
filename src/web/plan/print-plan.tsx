// One press puts the plan on paper, as the browser prints it; print.css leaves off what only a screen can use.
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';

export function PrintPlan() {
  const { t, measure } = useSheet();
  const today = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'long' }).format(new Date());
  return (
    <>
      <p className="on-paper">{t('plan.printedOn', { date: today })}</p>
      <Button className="button button-quiet no-paper" onPress={() => window.print()}>
        {t('plan.print')}
      </Button>
    </>
  );
}
