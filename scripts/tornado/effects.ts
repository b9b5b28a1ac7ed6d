// How far does each uncertain parameter, moved alone, move the answer of a box at rest with its dial fixed?
// The coldest day's low of the enclosure's own room, day set points. Leaves out how parameters act together.
import type { SteadyAnswer } from '../../src/physics/answer.ts';
import type { Enclosure } from '../../src/physics/enclosure.ts';
import type { MaterialTable } from '../../src/physics/material.ts';
import type { Priors } from '../../src/physics/priors.ts';
import { bestParameters, boxGeometry, modelFrom, type ParameterName, solveSteady } from '../../src/physics/simulate.ts';

export interface Measure {
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly digits: number;
  readonly of: (a: SteadyAnswer) => number;
}

export const measures: readonly Measure[] = [
  { id: 'basking', name: 'basking surface', unit: 'K', digits: 2, of: (a) => a.places['basking-surface']! },
  { id: 'cool', name: 'cool-end air', unit: 'K', digits: 2, of: (a) => a.places['cool-air']! },
  { id: 'watts', name: 'heat used', unit: 'W', digits: 1, of: (a) => a.heaterW.reduce((s, w) => s + w, 0) },
  { id: 'rh', name: 'humidity, cool end', unit: 'points', digits: 1, of: (a) => a.coolRhPct },
];

export interface Effect {
  readonly name: ParameterName;
  readonly words: string;
  readonly from: number;
  readonly to: number;
  /** Change against best values at either end of the belief, and the distance between the ends, by measure. */
  readonly low: Readonly<Record<string, number>>;
  readonly high: Readonly<Record<string, number>>;
  readonly width: Readonly<Record<string, number>>;
}

/** How each parameter is called in pictures and tables. */
const words: Readonly<Record<ParameterName, string>> = {
  mixingAlong: 'mixing end to end',
  mixingUp: 'mixing up and down',
  insideFilm: 'films inside',
  outsideFilm: 'films outside',
  panelConductivity: 'conductivity of panels',
  substrateConductivity: 'conductivity of substrate',
  leakage: 'vents and gaps',
  meshExchange: 'exchange through mesh',
  downwardFrac: 'share radiated downward',
  plumeToCeilingFrac: 'share of plume to ceiling',
  evaporation: 'evaporation',
  heaterPower: 'true watts of heater',
  probeRadiantFrac: 'radiation felt by probe',
  probeWallFrac: 'wall felt by probe',
  probeErrorK: 'error of dial and probe',
};

/** Effects of every prior, the strongest on the basking surface first. */
export function effectsOf(enclosure: Enclosure, materials: MaterialTable, priors: Priors): Effect[] {
  const geometry = boxGeometry(enclosure, materials);
  const { lowC, rhPct } = enclosure.room.winter;
  const conditions = { roomC: lowC, roomRhPct: rhPct, sunWPerM2: 0, isDay: true };
  const answer = (change: Partial<Record<ParameterName, number>>): Record<string, number> => {
    const a = solveSteady(modelFrom(geometry, { ...bestParameters, ...change }), conditions);
    return Object.fromEntries(measures.map((m) => [m.id, m.of(a)]));
  };
  const best = answer({});
  const minus = (a: Record<string, number>, b: Record<string, number>) =>
    Object.fromEntries(measures.map((m) => [m.id, a[m.id]! - b[m.id]!]));
  return priors
    .map((prior): Effect => {
      const low = minus(answer({ [prior.name]: prior.low }), best);
      const high = minus(answer({ [prior.name]: prior.high }), best);
      const width = Object.fromEntries(measures.map((m) => [m.id, Math.abs(high[m.id]! - low[m.id]!)]));
      return { name: prior.name, words: words[prior.name], from: prior.low, to: prior.high, low, high, width };
    })
    .sort((a, b) => b.width.basking! - a.width.basking!);
}
