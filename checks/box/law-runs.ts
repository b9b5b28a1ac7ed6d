// How the laws of every box are asked: how many boxes, at which moment, and the same box without water.
import type { Enclosure } from '../../src/physics/enclosure.ts';
import type { SteadyConditions } from '../../src/physics/simulate.ts';

/** How many times as many boxes as in the usual run. */
export const soak = Number(process.env.WARMSTEAD_SOAK ?? 1);

export const runs = (n: number) => ({ numRuns: Math.round(n * soak), seed: 20, endOnFailure: true });

export const day = (e: Enclosure, extra: Partial<SteadyConditions> = {}): SteadyConditions => ({
  roomC: e.room.winter.lowC,
  roomRhPct: e.room.winter.rhPct,
  sunWPerM2: e.room.winter.sunPeakWPerM2,
  isDay: true,
  ...extra,
});

/** The same box without water: evaporation adds its own states to choose from. */
export const dried = (e: Enclosure): Enclosure => ({
  ...e,
  bowl: null,
  misting: null,
  substrate: e.substrate ? { ...e.substrate, wetFrac: 0 } : null,
});

/** The same box without any opening. */
export const shut = (e: Enclosure): Enclosure => ({
  ...e,
  box: {
    ...e.box,
    vents: [],
    gapAreaM2: 0,
    panels: { ...e.box.panels, top: { layers: e.box.panels.top.layers } },
  },
});
