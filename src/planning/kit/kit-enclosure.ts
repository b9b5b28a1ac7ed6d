// The home as it stands with one kit in it: the box with its own hides, floor and room, and the kit's heaters, thermostats
// and thermometers in their places. Leaves out: choosing the kit.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Enclosure, Heater, Thermometer, Thermostat } from '../../physics/enclosure.ts';
import type { ShelfHeater, ShelfThermostat } from '../shelf/shelf.ts';
import type { HeaterSpot } from './heater-spot.ts';
import { placedHeater, probeFor } from './place-heater.ts';

export interface KitHeart {
  readonly heater: ShelfHeater;
  readonly nightHeater: ShelfHeater | null;
  readonly thermostat: ShelfThermostat;
  readonly nightThermostat: ShelfThermostat | null;
}

export interface Dials {
  readonly setDayC: number;
  readonly setNightC: number;
  /** A night heater of its own by day: it rests, and only comes on when the day heater has failed [degC]. */
  readonly restC?: number;
}

/** Dial of a night heater by day: this far below what the animal needs at night, so that it stands by; our choice [K]. */
const restBelowK = 1;
export const restDialC = (climate: ClimateNeeds): number => climate.nightMinC.low - restBelowK;

/** A second cut-out is set this far above the dial [K]; keepers' advice is "a couple of degrees", 3 K is our choice. */
export const cutOutAboveDialK = 3;
/** Dials before anything has been worked out [degC]; they decide nothing. */
const noDials: Dials = { setDayC: 27, setNightC: 22, restC: 15 };

/** @param base the box; its own heaters and thermostats are replaced
 *  Throws when a heater has no place in the box: candidates are checked before (kit-candidates.ts). */
export function kitEnclosure(
  base: Enclosure,
  kit: KitHeart,
  dials: Dials = noDials,
  spot: HeaterSpot = 'usual',
): Enclosure {
  const main = placed(base, kit.heater, 'main', spot);
  const night = kit.nightHeater ? placed(base, kit.nightHeater, 'night', spot) : null;
  const probed = { ...base, heaters: night ? [main, night] : [main] };
  const thermostats: Thermostat[] = [thermostatOf('main', kit.thermostat, probed, main, dials)];
  if (night && kit.nightThermostat)
    thermostats.push(
      thermostatOf('night', kit.nightThermostat, probed, night, { ...dials, setDayC: dials.restC ?? dials.setNightC }),
    );
  return { ...probed, thermostats, thermometers: withThermometers(base.thermometers) };
}

function placed(base: Enclosure, item: ShelfHeater, role: 'main' | 'night', spot: HeaterSpot): Heater {
  const place = placedHeater(base, item, role, spot);
  if ('why' in place) throw new Error(`${item.id}: ${place.why}`);
  return place.heater;
}

function thermostatOf(
  id: 'main' | 'night',
  item: ShelfThermostat,
  enclosure: Enclosure,
  heater: Heater,
  dials: Dials,
): Thermostat {
  return {
    id,
    control: item.control,
    probe: probeFor(enclosure, heater),
    setDayC: dials.setDayC,
    setNightC: dials.setNightC,
    bandK: item.bandK,
    ratingW: item.ratingW,
    cutOutC: item.hasCutOut ? Math.max(dials.setDayC, dials.setNightC) + cutOutAboveDialK : null,
  };
}

/** Every kit has a thermometer at the basking site and one at the cool end. */
function withThermometers(own: readonly Thermometer[]): Thermometer[] {
  const sound = (place: Thermometer['place']) => own.some((t) => t.place === place && t.kind !== 'stick-on-dial');
  const missing = (['basking', 'cool-end'] as const).filter((place) => !sound(place));
  return [...own, ...missing.map((place) => ({ place, kind: 'digital-probe' as const }))];
}
