// The two days and the verdicts for the enclosure as it is now, worked out once the hand rests.
// A newer enclosure ends the worker at once, whatever it was doing.
import { useEffect, useState } from 'react';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { DayAnswer } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { settledMembers } from '../../planning/plan.ts';
import type { PlanAnswer } from '../../planning/plan-answer.ts';
import type { Fault } from '../../shared/fault.ts';
import { useShopValues } from '../state/shop-values.ts';
import type { PlanReply, PlanRequest } from './protocol.ts';

export interface PlanRun {
  /** The enclosure that the answers below belong to. */
  readonly forEnclosure: Enclosure | null;
  readonly days: { readonly winter: DayAnswer; readonly summer: DayAnswer } | null;
  readonly daysFor: Enclosure | null;
  readonly plan: PlanAnswer | null;
  /** The branch's own values that went into the plan. */
  readonly used: UsedShopValues | null;
  readonly faults: readonly Fault[];
  readonly failed: string | null;
  readonly working: boolean;
}

/** The hand rests when nothing has changed for this long [ms] (our choice). */
const restMs = 250;
/** Boxes in the ensemble and the seed of its draws: as the server does it, so that both say the same. */
export const ensemble = { members: settledMembers, seed: 1 } as const;

const nothing: PlanRun = {
  forEnclosure: null,
  days: null,
  daysFor: null,
  plan: null,
  used: null,
  faults: [],
  failed: null,
  working: false,
};

/** @param standardId the one that the person named; undefined leaves it to the shop */
export function usePlan(enclosure: Enclosure | null, standardId: string | undefined): PlanRun {
  const own = useShopValues();
  const [run, setRun] = useState<PlanRun>(nothing);
  useEffect(() => {
    if (!enclosure || !own) return;
    setRun((now) => (now.working ? now : { ...now, working: true }));
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<PlanReply>) => {
        if (data.kind === 'days') {
          setRun((now) => ({ ...now, days: { winter: data.winter, summer: data.summer }, daysFor: enclosure }));
          return;
        }
        const plan = data.kind === 'plan' ? data.plan : null;
        setRun((now) => ({
          forEnclosure: enclosure,
          days: plan ? { winter: plan.winter.day, summer: plan.summer.day } : now.days,
          daysFor: plan ? enclosure : now.daysFor,
          plan,
          used: data.kind === 'plan' ? data.used : null,
          faults: data.kind === 'refused' ? data.faults : [],
          failed: data.kind === 'failed' ? data.say : null,
          working: false,
        }));
        worker?.terminate();
      };
      worker.postMessage({ enclosure, standardId, shopValues: own.values, ...ensemble } satisfies PlanRequest);
    }, restMs);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [enclosure, standardId, own]);
  return run;
}
