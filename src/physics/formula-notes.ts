// Is any formula of the simulator used outside the range in which its authors tested it? Looked at once per answer, with
// the most extreme inputs that the settled box gives each formula.
import type { Fault } from '../shared/fault.ts';
import { alamdariHammondRange } from './formulas/convection-alamdari-hammond.ts';
import { bowlEvaporationRange } from './formulas/evaporation-bowl.ts';
import { rangeNotes } from './formulas/range.ts';
import { saturationPressureRange } from './formulas/saturation-pressure.ts';
import { screenFlowRange } from './formulas/screen-flow.ts';
import { meshOf } from './mesh-lid.ts';
import type { BoxModel } from './model.ts';
import type { SettledBox } from './steady.ts';

/** Notes "PHYS_FORMULA_RANGE" for films, moisture, bowl and mesh; empty inside every range. */
export function formulaNotes(model: BoxModel, box: SettledBox): Fault[] {
  const { grid, enclosure } = model;
  const { lengthM, depthM, heightM } = enclosure.box;
  const { airC, surfaceC } = box.state;
  let deltaK = 1;
  let hottest = Number.NEGATIVE_INFINITY;
  let coldest = Number.POSITIVE_INFINITY;
  grid.patches.forEach((p, s) => {
    if (p.role === 'mesh') return;
    deltaK = Math.max(deltaK, Math.abs(surfaceC[s]! - airC[p.layer * grid.columns + p.column]!));
    hottest = Math.max(hottest, surfaceC[s]!);
    coldest = Math.min(coldest, surfaceC[s]!);
  });
  const hydraulicDiameterM = (2 * lengthM * depthM) / (lengthM + depthM);
  const notes = [
    ...rangeNotes(alamdariHammondRange, { deltaK, heightM, hydraulicDiameterM }),
    ...rangeNotes(saturationPressureRange, { tempC: hottest }),
    ...rangeNotes(saturationPressureRange, { tempC: coldest }),
  ];
  if (enclosure.bowl)
    notes.push(...rangeNotes(bowlEvaporationRange, { diameterM: enclosure.bowl.diameterM, airC: Math.max(...airC) }));
  const meshed = new Set(grid.patches.filter((p) => p.role === 'mesh').map((p) => p.panel));
  for (const panel of meshed) {
    const { openFrac, wireM } = meshOf(enclosure, panel);
    notes.push(...rangeNotes(screenFlowRange, { openFrac, wireMm: wireM * 1000 }));
  }
  return notes;
}
