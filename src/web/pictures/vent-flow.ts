// Which way the air moves through each opening of a warm box: in low, out high, both ways when all lie at one height.
// A rule of buoyancy for the arrows only; how much flows is the physics room's.
import type { Box } from '../../physics/enclosure.ts';

export type Flow = 'in' | 'out' | 'both';

/** Openings closer in height than this count as one level [m] (our choice, for the picture). */
const sameLevelM = 0.02;

/** The flow of each vent, in the order of box.vents; a mesh lid counts as an opening at the top. */
export function ventFlows(box: Box): readonly Flow[] {
  const { meshShareFrac = 0, meshCoveredFrac = 0 } = box.panels.top;
  const heightOf = (vent: Box['vents'][number]) => (vent.panel === 'top' ? box.heightM : vent.heightM);
  const heights = box.vents.map(heightOf);
  if (meshShareFrac * (1 - meshCoveredFrac) > 0) heights.push(box.heightM);
  const highest = Math.max(...heights);
  const lowest = Math.min(...heights);
  if (highest - lowest < sameLevelM) return box.vents.map(() => 'both');
  const middle = (highest + lowest) / 2;
  return box.vents.map((vent) => (heightOf(vent) > middle ? 'out' : 'in'));
}
