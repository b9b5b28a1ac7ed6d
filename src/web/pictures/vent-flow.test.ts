import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Box, Enclosure } from '../../physics/enclosure.ts';
import { ventFlows } from './vent-flow.ts';

const boxOf = (id: string): Box => {
  const file = new URL(`../../../data/examples/${id}.json`, import.meta.url);
  return (JSON.parse(readFileSync(file, 'utf8')) as Enclosure).box;
};

it('draws air in low and out high', () => {
  const box = boxOf('wood-1200');
  const flows = ventFlows(box);
  const low = box.vents.findIndex((vent) => vent.heightM === Math.min(...box.vents.map((row) => row.heightM)));
  expect(flows[low]).toBe('in');
  expect(flows.filter((flow) => flow === 'out')).toHaveLength(box.vents.length - 1);
});

it('draws both ways where every opening lies at one height', () => {
  expect(ventFlows(boxOf('tub-mat-600'))).toEqual(['both', 'both']);
});

it('counts an open mesh lid as the way out', () => {
  expect(ventFlows(boxOf('glass-mesh-900'))).toEqual(['in']);
});
