// What the thin line on top says while a plan stands: the first thing that keeps it from holding.
import type { Translate } from '../messages/translate.ts';
import { isMessageKey } from '../messages/translate.ts';
import type { PlanRun } from '../worker/use-plan.ts';
import { sortedNeeds } from './needs-list.tsx';

export function nextOnPlan(run: PlanRun, t: Translate): string | null {
  if (!run.plan) return null;
  const open = sortedNeeds(run.plan.needs).filter((need) => need.verdict !== 'holds');
  const [first] = open;
  if (!first) return t('missing.proof');
  const key = `need.${first.id}`;
  const name = isMessageKey(key) ? t(key) : first.title;
  const more = open.length - 1;
  const blanks = { need: name, more };
  if (first.verdict === 'fails') return t(more > 0 ? 'missing.failsMore' : 'missing.fails', blanks);
  return t(more > 0 ? 'missing.unknownMore' : 'missing.unknown', blanks);
}
