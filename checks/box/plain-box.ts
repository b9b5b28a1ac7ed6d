// A bare enclosure for comparisons: only what the other side describes, everything else absent.
// Leaves out hides, locks, animals: nothing that a comparison of heat and moisture needs.
import type { Box, Enclosure, Heater, Panel, Thermostat } from '../../src/physics/enclosure.ts';

export interface BareBox {
  readonly name: string;
  /** Inside length, depth, height [m]. */
  readonly sizeM: readonly [number, number, number];
  readonly wall: Panel;
  readonly panels?: Partial<Box['panels']>;
  readonly vents?: Box['vents'];
  readonly gapAreaM2?: number;
  readonly base?: Box['base'];
  readonly heaters: readonly Heater[];
  readonly thermostats?: readonly Thermostat[];
  readonly substrate?: Enclosure['substrate'];
  readonly bowl?: Enclosure['bowl'];
  readonly roomC: number;
  readonly roomRhPct: number;
}

/** One layer of one material. */
export const panelOf = (materialId: string, thicknessM: number): Panel => ({ layers: [{ materialId, thicknessM }] });

/** A heater with the fields that most comparisons share. */
export const heaterOf = (
  part: Pick<Heater, 'kind' | 'powerW' | 'mount' | 'xM' | 'yM' | 'zM'> & Partial<Heater>,
): Heater => ({ id: 'h', guarded: true, thermostatId: null, period: 'all', ...part });

/** A thermostat that keeps one set point day and night. */
export const thermostatOf = (
  part: Pick<Thermostat, 'control' | 'probe' | 'bandK'> & { readonly setC: number },
): Thermostat => ({
  id: 't',
  control: part.control,
  probe: part.probe,
  setDayC: part.setC,
  setNightC: part.setC,
  bandK: part.bandK,
  ratingW: 1000,
  cutOutC: null,
});

export function bareEnclosure(b: BareBox): Enclosure {
  const day = { lowC: b.roomC, highC: b.roomC, rhPct: b.roomRhPct, sunPeakWPerM2: 0 };
  const [lengthM, depthM, heightM] = b.sizeM;
  const six = { front: b.wall, back: b.wall, left: b.wall, right: b.wall, top: b.wall, bottom: b.wall };
  return {
    format: 'warmstead-enclosure',
    version: 1,
    name: b.name,
    box: {
      lengthM,
      depthM,
      heightM,
      panels: { ...six, ...b.panels },
      vents: b.vents ?? [],
      gapAreaM2: b.gapAreaM2 ?? 0,
      widestGapM: null,
      base: b.base ?? { kind: 'shelf' },
    },
    heaters: b.heaters,
    thermostats: b.thermostats ?? [],
    day: { startH: 8, endH: 20 },
    substrate: b.substrate ?? null,
    hides: [],
    bowl: b.bowl ?? null,
    perch: null,
    misting: null,
    coverFrac: 0,
    lock: 'lock',
    thermometers: [],
    room: { winter: day, summer: day },
    animal: null,
  };
}
