// The bodies that the simulator heats are those of data/heaters.json.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { HeaterKind } from './enclosure.ts';
import { heaterBodies } from './heater-kinds.ts';

type Value = { value: number | string };
const rows: ({ id: HeaterKind } & Record<string, Value>)[] = JSON.parse(
  readFileSync(new URL('../../data/heaters.json', import.meta.url), 'utf8'),
);

test.each(rows.map((row) => [row.id, row] as const))('%s', (id, row) => {
  const body = heaterBodies[id];
  expect(body.emitsLight).toBe(row.emitsLight!.value === 'yes');
  expect(body.emissivity).toBe(row.bodyEmissivity!.value);
  const short = Number(row.radiantShareFrac!.value) * Number(row.shortWaveShareFrac!.value);
  expect(body.shortWaveFrac).toBeCloseTo(short, 2);
  expect(body.heatCapacity).toBe(row.bodyHeatCapacityJPerK!.value);
  if (body.form === 'area') return;
  expect(body.diameterM * 1000).toBeCloseTo(Number(row.bodyDiameterMm!.value), 6);
  expect(body.beamDeg).toBe(row.beamDeg!.value);
});
