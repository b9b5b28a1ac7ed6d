// Enquiries that led to no animal and whose time of keeping is over: listed, and erased with one press.
import './buyer-part.css';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useAsked } from '../animal/use-asked.ts';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { eraseDue, readDue } from './buyer-api.ts';

/** Nothing where the role may not see it. */
export function DueErasures() {
  const { t, measure } = useSheet();
  const { value, again } = useAsked('due-erasures', readDue);
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  if (value === null) return null;
  const day = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium' });
  const n = value.keptDays.value;
  const erase = async () => {
    const done = await eraseDue(value.due.map((one) => one.id));
    setAnswer(done);
    if (done.ok) again();
  };
  return (
    <details className="sheet-part buyer-part">
      <summary>{t('privacy.due.title')}</summary>
      {value.due.length === 0 ? (
        <p>{t('privacy.due.none', { n })}</p>
      ) : (
        <>
          <p>{t('privacy.due.lead', { n, count: value.due.length })}</p>
          <ul className="buyer-words">
            {value.due.map((one) => (
              <li key={one.id}>
                {one.label || t('privacy.due.unnamed')}
                <time dateTime={one.updatedAt}>{day.format(new Date(one.updatedAt))}</time>
              </li>
            ))}
          </ul>
          <p className="buyer-warning">{t('privacy.due.warning')}</p>
          <Button className="button" onPress={() => void erase()}>
            {t('privacy.due.do')}
          </Button>
        </>
      )}
      <Faults answer={answer} />
    </details>
  );
}
