// Which quantities does a fit move? Those of data/priors.json that this box has at all, and how far each dial is off.
// Every one is a standard normal score: 0 the belief before readings, +-1.645 the ends of its 90 % range.
import type { Enclosure } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { bestParameters, type ParameterName, type Parameters } from '../../physics/parameters.ts';
import { type Priors, priorValueAt } from '../../physics/priors.ts';

/** How far a thermostat regulates from its dial: 90 % within this [K]. Basis: probes sold as +-2 °F, reported by one
 *  keeper in a forum; our choice of a range. */
export const dialErrorK = 1.2;

export interface Unknowns {
  readonly priors: Priors;
  /** Quantities of this box, in order. */
  readonly names: readonly ParameterName[];
  readonly thermostats: number;
  readonly size: number;
}

/** Unknowns that can show in readings of this box. Those left out keep their prior.
 *  @param moisture whether humidity was read */
export function unknownsOf(enclosure: Enclosure, priors: Priors, moisture: boolean): Unknowns {
  const mesh = Object.values(enclosure.box.panels).some((p) => (p.meshShareFrac ?? 0) > 0);
  const body = enclosure.heaters.some((h) => heaterBodies[h.kind].form === 'body');
  const free = enclosure.thermostats.some((t) => t.probe.at !== 'mat');
  const has = (name: ParameterName): boolean => {
    if (name === 'meshExchange') return mesh;
    if (name === 'downwardFrac' || name === 'plumeToCeilingFrac') return body;
    if (name === 'substrateConductivity') return (enclosure.substrate?.depthM ?? 0) > 0;
    if (name === 'probeRadiantFrac') return free;
    if (name === 'evaporation') return moisture;
    return true;
  };
  const names = priors.map((p) => p.name).filter(has);
  const thermostats = enclosure.thermostats.length;
  return { priors, names, thermostats, size: names.length + thermostats };
}

/** Parameters at these scores; quantities that are no unknowns stand at their best value. */
export function parametersAt(unknowns: Unknowns, scores: ArrayLike<number>): Parameters {
  const set: Record<string, number> = { ...bestParameters };
  for (const prior of unknowns.priors) set[prior.name] = prior.best;
  unknowns.names.forEach((name, i) => {
    const prior = unknowns.priors.find((p) => p.name === name)!;
    set[name] = priorValueAt(prior, scores[i]!);
  });
  return set as unknown as Parameters;
}

/** True regulation point less the dial, one for each thermostat [K]. */
export const dialErrorsAt = (unknowns: Unknowns, scores: ArrayLike<number>): number[] =>
  Array.from({ length: unknowns.thermostats }, (_, t) => (scores[unknowns.names.length + t]! * dialErrorK) / 1.645);
