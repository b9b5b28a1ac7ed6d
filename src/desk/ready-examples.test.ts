// A newcomer's first look: the home offered first, and the one of the readme, hold in all they need.
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Enclosure } from '../physics/enclosure.ts';
import { dataFile } from '../records/data-files.ts';
import { programRoot } from '../records/root.ts';
import { runPlanJob } from './plan-job.ts';

const example = (name: string) => dataFile(`examples/${name}`) as unknown as Enclosure;
const volume = ({ box }: Enclosure) => box.lengthM * box.depthM * box.heightM;
const all = readdirSync(`${programRoot()}/data/examples`);
/** As web/enquiry/examples.ts offers them: the smallest first. */
const first = [...all].sort((a, b) => volume(example(a)) - volume(example(b)))[0]!;

test.each([first, 'wood-1200.json'])('%s', { timeout: 60_000 }, (name) => {
  const plan = runPlanJob({ enclosure: example(name) });
  if (!plan.ok) throw new Error(plan.faults[0]!.say);
  const { needs, verdict } = plan.value;
  expect(needs.filter((need) => need.verdict !== 'holds' && need.group !== 'comfort').map((need) => need.id)).toEqual(
    [],
  );
  expect(verdict).toBe('holds');
});
