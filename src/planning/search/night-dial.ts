// Where should the dials of a kit stand? By day where the best estimate of the box reaches the wanted basking surface, to be
// trimmed by a thermometer there; at night so that the warm hide keeps the upper end of what the animal needs by night.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { dialForReading, mostDialC } from '../dial/dial-setting.ts';
import { type Behaviour, kitPowers } from './judge-kit.ts';
import { type MemberSurface, onLine, perWatt } from './surface.ts';

/** The warm place is aimed this far above the least it may be, so that doubt about the box does not bring it below;
 *  our choice: the judged spread of the air in a box is about 1.2 K. */
export const nightReserveK = 1.5;
/** Dials are set in halves of a degree. */
const stepC = 0.5;

/** Temperature wanted at the warm hide by night [degC]. */
export const nightAimC = (climate: ClimateNeeds): number =>
  Math.max(climate.nightMinC.high, climate.nightMinC.low + nightReserveK);

/** @param best the best-estimate version   @param b the kit; its own night dial is not looked at
 *  @returns set point for the night [degC], on the dial's half degrees */
export function chooseNightDial(best: MemberSurface, climate: ClimateNeeds, b: Omit<Behaviour, 'setNightC'>): number {
  const { night } = best;
  const place = Number.isNaN(night.low[1] ?? Number.NaN) ? 'warm-air' : 'warm-hide';
  const aimC = nightAimC(climate);
  const atNight = night.lowW + (aimC - onLine(night, place, night.lowW)) / perWatt(night, place);
  const ratedW = b.nightPowerW * best.heaterPower;
  const powerW = Math.max(0, atNight);
  const nightDialC = dialForReading(b.nightBandK, onLine(night, 'probeC', powerW), powerW / ratedW);
  const wanted = Math.min(mostDialC, Math.ceil(nightDialC / stepC - 1e-9) * stepC);
  return b.twoHeaters ? wanted : Math.min(wanted, b.setDayC);
}

/** @param b the kit; its dials are not looked at   @returns set point for the day to start with, the half degree below: a dial is trimmed upwards */
export function chooseDayDial(best: MemberSurface, b: Omit<Behaviour, 'setDayC' | 'setNightC'>): number {
  const { dialC } = kitPowers(best, { ...b, setDayC: 0, setNightC: 0 });
  return Math.floor(dialC / stepC + 1e-9) * stepC;
}
