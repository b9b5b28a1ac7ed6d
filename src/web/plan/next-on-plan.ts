// What the thin line on top says while a plan stands: the first thing that keeps it from holding.
import { needName } from '../messages/need-name.ts';
import type { Translate } from '../messages/translate.ts';
import type { Language } from '../settings/settings.ts';
import type { PlanRun } from '../worker/use-plan.ts';
import { sortedNeeds } from './needs-list.tsx';

export function nextOnPlan(run: PlanRun, language: Language, t: Translate): string | null {
  if (!run.plan) return null;
  const open = sortedNeeds(run.plan.needs).filter((need) => need.verdict !== 'holds');
  const [first] = open;
  if (!first) return t('missing.proof');
  const more = open.length - 1;
  const blanks = { need: needName(first, language).text, more };
  if (first.verdict === 'fails') return t(more > 0 ? 'missing.failsMore' : 'missing.fails', blanks);
  return t(more > 0 ? 'missing.unknownMore' : 'missing.unknown', blanks);
}
