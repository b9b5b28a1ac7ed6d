// What a complete kit is: heater (and one for the night where the first gives light), guard, holder, thermostat, probe
// place, thermometers, and the box it goes into. Leaves out: whether it is safe, holds, or what it costs to run.
import type { Enclosure, HeaterKind } from '../../physics/enclosure.ts';
import type { ShelfHeater, ShelfThermostat } from '../shelf/shelf.ts';
import type { BoxVariant } from './box-variant.ts';
import type { HeaterSpot } from './heater-spot.ts';
import type { KitPart } from './kit-part.ts';

/** Kits that share box, heater kind and place share one simulation per version of the box. */
export interface Arrangement {
  readonly id: string;
  readonly variant: BoxVariant;
  readonly heaterKind: HeaterKind;
  /** Where the heater sits; boxes with changes are tried with the usual place only. */
  readonly spot: HeaterSpot;
  /** Id of the same with the heater in its usual place. */
  readonly likeId: string;
  readonly nightKind: HeaterKind | null;
  /** The box with the strongest heaters of this arrangement, thermostats "main" (and "night"), and spare probes. */
  readonly enclosure: Enclosure;
  /** Strongest day and night heater among its kits [W]. */
  readonly mostW: number;
  readonly mostNightW: number;
}

export interface Kit {
  readonly id: string;
  readonly arrangementId: string;
  readonly heater: ShelfHeater;
  readonly nightHeater: ShelfHeater | null;
  readonly thermostat: ShelfThermostat;
  readonly nightThermostat: ShelfThermostat | null;
  readonly parts: readonly KitPart[];
  /** Sum of the parts' prices. */
  readonly price: number;
  /** Whether thermostats suit their heaters well, or at a pinch. */
  readonly fit: 'good' | 'allowed';
}
