// From a settled box to the answer that people read: named places, losses by panel, moisture, balances.

import type { Fault } from '../shared/fault.ts';
import type { SteadyAnswer } from './answer.ts';
import { formulaNotes } from './formula-notes.ts';
import { dewPointC } from './formulas/dew-point.ts';
import { relativeHumidityFrac, vapourPressurePaFromRatio } from './formulas/moist-air.ts';
import { warmEndOf } from './grid.ts';
import { keptW } from './heater-body.ts';
import type { BoxModel } from './model.ts';
import { columnAt } from './model.ts';
import { latentW } from './moisture.ts';
import { columnFloor, readPlaces } from './places.ts';
import { readingValue } from './reading.ts';
import { heatOutW, patchLossW } from './solve-network.ts';
import type { SettledBox, SteadyConditions } from './steady.ts';

export function steadyAnswer(model: BoxModel, conditions: SteadyConditions, box: SettledBox): SteadyAnswer {
  const { grid, enclosure } = model;
  const { state, net, now, moisture } = box;
  const places = readPlaces(model, box, box.probeC[0] ?? null);
  const end = warmEndOf(enclosure);
  const L = enclosure.box.lengthM;
  const warmX = end === 'left' ? L / 16 : L - L / 16;
  const rhAt = (xM: number) => nodeRh(state.airC, moisture.ratio, columnAt(grid, xM));
  const coolNode = columnAt(grid, L - warmX);
  const dew = dewPointC(vapourPressurePaFromRatio(moisture.ratio[coolNode]!));
  const lossByPanelW: Record<string, number> = {};
  grid.patches.forEach((p, s) => {
    lossByPanelW[p.panel] = (lossByPanelW[p.panel] ?? 0) + patchLossW(net, state, s);
  });
  const volume = enclosure.box.lengthM * enclosure.box.depthM * enclosure.box.heightM;
  const installed = enclosure.heaters.reduce((s, h) => s + h.powerW, 0);
  const used = now.reduce((s, h) => s + h.powerW, 0);
  const glassDewMarginK = places['front-glass']! - dew;
  const column = (i: number, k: number) => state.airC[k * grid.columns + i]!;
  return {
    places,
    operativeC: Object.fromEntries(
      model.readings.operative.map(({ place, reading }) => [place, readingValue(reading, state, now)]),
    ),
    warmEnd: end,
    columns: {
      xM: grid.columnXM,
      floorC: grid.columnXM.map((_, i) => columnFloor(model, state, i)),
      airC: Array.from({ length: grid.layers }, (_, k) => grid.columnXM.map((_, i) => column(i, k))),
      ceilingC: grid.columnXM.map((_, i) => ceilingMean(model, state.surfaceC, i)),
      rhPct: grid.columnXM.map((_, i) => nodeRh(state.airC, moisture.ratio, i)),
    },
    heaterW: now.map((h) => h.powerW),
    dutyFrac: installed > 0 ? used / (installed * model.parameters.heaterPower) : 0,
    roomC: conditions.roomC,
    warmRhPct: rhAt(warmX),
    coolRhPct: rhAt(L - warmX),
    dewOnGlass: glassDewMarginK < 0,
    glassDewMarginK,
    evaporationGPerH: (moisture.bowlKgPerS + moisture.substrateKgPerS + moisture.sprayKgPerS) * 3.6e6,
    condensationGPerH: moisture.condensedKgPerS * 3.6e6,
    airChangePerH: (net.ventilation.freshKgPerS / 1.19 / volume) * 3600,
    lossByPanelW,
    balance: steadyBalance(model, box, conditions),
    iterations: box.iterations,
    notes: [...settlingNotes(box), ...formulaNotes(model, box)],
  };
}

function nodeRh(airC: Float64Array, ratio: Float64Array, node: number): number {
  return Math.min(100, 100 * relativeHumidityFrac(airC[node]!, vapourPressurePaFromRatio(ratio[node]!)));
}

function ceilingMean(model: BoxModel, surfaceC: Float64Array, column: number): number {
  let sum = 0;
  let area = 0;
  model.grid.patches.forEach((p, s) => {
    if (p.facing !== 'ceiling' || p.column !== column) return;
    sum += p.areaM2 * surfaceC[s]!;
    area += p.areaM2;
  });
  return sum / area;
}

/** Heat in: what heaters and sun give to the inside; out: through panels and with the air. Latent heat given and taken counts on its side. */
function steadyBalance(model: BoxModel, box: SettledBox, conditions: SteadyConditions): SteadyAnswer['balance'] {
  let heatIn = 0;
  let direct = 0;
  box.now.forEach((h, i) => {
    const path = model.heaters[i]!;
    heatIn += h.powerW;
    direct += h.powerW - keptW(model, i, h);
    void path;
  });
  const sunKept = model.sunShares.reduce((s, v) => s + v, 0) * box.sunW;
  heatIn += box.sunW;
  direct += box.sunW - sunKept;
  const latent = latentW(box.moisture, box.state);
  const heatOut = heatOutW(box.net, box.state, conditions.roomC) + direct - latent;
  const water = box.moisture;
  return {
    heatIn,
    heatOut,
    stored: 0,
    relative: Math.abs(heatIn - heatOut) / Math.max(heatIn, 1),
    waterInGPerH: (water.bowlKgPerS + water.substrateKgPerS + water.sprayKgPerS) * 3.6e6,
    waterOutGPerH: (water.outKgPerS + water.condensedKgPerS) * 3.6e6,
    waterRelative: Math.abs(water.balanceRelative),
  };
}

/** Not settled within the allowed rounds: said, never hidden. */
export function settlingNotes(box: SettledBox): Fault[] {
  if (box.change < 0.01) return [];
  return [
    {
      code: 'PHYS_NOT_SETTLED',
      field: '',
      got: `${box.change.toPrecision(2)} K`,
      allowed: 'below 0.01 K',
      say: 'The temperatures still moved in the last round of the steady solution.',
      fix: 'Read the answer as uncertain by this much, or look at the whole day instead.',
    },
  ];
}
