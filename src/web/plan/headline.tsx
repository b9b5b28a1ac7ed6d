// The verdict on the whole plan: shape and word, then the sentence that says why.

import { proseInUnits } from '../../shared/prose-units.ts';
import { FaultText } from '../controls/fault-text.tsx';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import type { PlanRun } from '../worker/use-plan.ts';

/** The sentence without the verdict's own word in front, which stands above it in large letters. */
export function withoutVerdictWord(headline: string): string {
  const rest = headline.replace(/^(?:Holds|Fails|Not known)[:.]\s*/, '');
  return capitalised(rest);
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

interface HeadlineProps {
  readonly run: PlanRun;
  readonly stale: boolean;
  /** What is missing next, in this language; stands in where the rooms' own sentence is in another. */
  readonly next: string | null;
}

export function Headline({ run, stale, next }: HeadlineProps) {
  const { t, measure, settings } = useSheet();
  const { plan } = run;
  const shortly = () => (plan?.verdict === 'holds' ? t('plan.allHeld') : `${capitalised(next ?? '')}.`);
  const troubled = run.failed !== null || run.faults.length > 0;
  return (
    <div aria-live="polite" aria-busy={run.working} className={stale ? 'headline headline-stale' : 'headline'}>
      {plan ? (
        <>
          <h1 data-verdict={stale ? 'working' : plan.verdict}>
            <VerdictMark verdict={plan.verdict} large />
          </h1>
          <p className="headline-say">
            {settings.language === 'en' ? proseInUnits(withoutVerdictWord(plan.headline), measure) : shortly()}
          </p>
        </>
      ) : (
        <h1 className="headline-wait">{t(troubled ? 'plan.noAnswer' : 'plan.working')}</h1>
      )}
      <p className="headline-note">
        {run.working && t('plan.workingNote')}
        {!run.working && plan && t('plan.members', { members: plan.members })}
      </p>
      {run.failed && <p className="field-fault">{run.failed}</p>}
      {run.faults.map((fault) => (
        <p key={`${fault.code}${fault.field}`} className="field-fault">
          <FaultText fault={fault} /> ({fault.field})
        </p>
      ))}
    </div>
  );
}
