// Which quantities does a fit move? Those of data/priors.json that this box has at all.
// Every one is a standard normal score: 0 the belief before readings, +-1.645 the ends of its 90 % range.
import type { Enclosure } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { bestParameters, type ParameterName, type Parameters } from '../../physics/parameters.ts';
import { type Priors, priorValueAt } from '../../physics/priors.ts';

export interface Unknowns {
  readonly priors: Priors;
  /** Quantities of this box, in order. */
  readonly names: readonly ParameterName[];
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
    if (name === 'probeWallFrac') return enclosure.thermostats.some((t) => t.probe.at === 'wall');
    if (name === 'probeErrorK') return enclosure.thermostats.length > 0;
    if (name === 'evaporation') return moisture;
    return true;
  };
  const names = priors.map((p) => p.name).filter(has);
  return { priors, names, size: names.length };
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
