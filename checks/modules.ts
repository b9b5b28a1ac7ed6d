// Which check modules there are. A new one is added here; each exports cases(): Promise<CheckRow[]>.
import type { CheckRow } from './check-row.ts';

export interface CheckModule {
  readonly cases: () => Promise<CheckRow[]>;
}

export const modules: Readonly<Record<string, () => Promise<CheckModule>>> = {
  tables: () => import('./tables.ts'),
  'published/air-cavity': () => import('./published/air-cavity.ts'),
  'cross/psychrometrics': () => import('./cross/psychrometrics.ts'),
  'cross/flow-boxes': () => import('./cross/flow-boxes.ts'),
  'cross/zonal-boxes': () => import('./cross/zonal-boxes.ts'),
  'measured/boxes': () => import('./measured/boxes.ts'),
  'two-methods/view-factors': () => import('./two-methods/view-factors.ts'),
  'two-methods/conduction': () => import('./two-methods/conduction.ts'),
  'two-methods/radiation': () => import('./two-methods/radiation.ts'),
  'two-methods/thermostats': () => import('./two-methods/thermostats.ts'),
  'two-methods/step-size': () => import('./two-methods/step-size.ts'),
  animal: () => import('./animal/cases.ts'),
  'husbandry/space': () => import('./husbandry/space.ts'),
  'husbandry/printed': () => import('./husbandry/printed.ts'),
  'husbandry/trade-facts': () => import('./husbandry/trade-facts.ts'),
  'planning/costs': () => import('./planning/costs.ts'),
  'planning/scenarios': () => import('./planning/scenarios.ts'),
  'proving/foam-box': () => import('./proving/foam-box.ts'),
  'proving/diagnosis': () => import('./proving/diagnosis.ts'),
  'proving/held-out': () => import('./proving/held-out.ts'),
};
