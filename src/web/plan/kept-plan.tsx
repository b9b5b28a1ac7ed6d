// The plan that was kept last with this enquiry: what it says, need by need, and the way to set it aside and back.
import { Button } from 'react-aria-components';
import { useSaying } from '../animal/say.ts';
import { type KeptPlan, letPlanCount } from '../api/client.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { needName } from '../messages/need-name.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { sortedNeeds } from './needs-list.tsx';

interface KeptPlanProps {
  readonly enquiryId: string;
  readonly plan: KeptPlan;
  readonly onChange: () => void;
}

export function KeptPlanLine({ enquiryId, plan, onChange }: KeptPlanProps) {
  const { t, settings } = useSheet();
  const say = useSaying();
  const { id, answer, aside } = plan;
  const stand = (way: 'aside' | 'back') => void letPlanCount(enquiryId, id, way).then(onChange);
  return (
    <div className="kept-plan" data-kept={aside === null ? answer.verdict : 'aside'}>
      <p role="status">
        {t('plan.keptOn', {
          day: say.day(plan.at.slice(0, 10)),
          by: plan.by,
          verdict: t(`verdict.${answer.verdict}`),
          model: plan.modelVersion,
        })}{' '}
        {aside !== null && t('plan.keptAside', { by: aside.by, day: say.day(aside.at.slice(0, 10)) })}
      </p>
      <details>
        <summary>{t('plan.keptLook')}</summary>
        <ul className="kept-needs">
          {sortedNeeds(answer.needs).map((need) => {
            const name = needName(need, settings.language);
            return (
              <li key={need.id}>
                <VerdictMark verdict={need.verdict} /> <span lang={name.lang}>{name.text}</span>
              </li>
            );
          })}
        </ul>
      </details>
      <Button className="quiet-button" onPress={() => stand(aside === null ? 'aside' : 'back')}>
        {t(aside === null ? 'plan.setAside' : 'plan.letCount')}
      </Button>
    </div>
  );
}
