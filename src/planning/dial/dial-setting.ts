// Where must a dial stand so that its thermostat gives the power that is needed while its probe reads what it reads?
// Every dial that Warmstead tells anyone comes from here. Leaves out: which power is needed, and the doubt about the box.
import type { Thermostat } from '../../physics/enclosure.ts';
import { enclosureFields } from '../../physics/enclosure-fields.ts';

/** No thermostat of the program can be set higher [degC]: a kit whose probe would have to read more is used at this. */
export const mostDialC: number = enclosureFields.find((f) => f.path === 'thermostats[].setDayC')!.high!;

/** On/off switching holds its set point on average [K]. */
export const onOffMeanBandK = 0.02;
/** No proportional band is narrower, as in the simulation of one (physics/control.ts) [K]. */
const leastBandK = 0.05;

/** Band over which the mean power of this thermostat goes from all to none [K]. */
export const meanBandK = (t: Pick<Thermostat, 'control' | 'bandK'>): number =>
  t.control === 'on-off' ? onOffMeanBandK : Math.max(leastBandK, t.bandK);

/** Dial at which a thermostat rests with its probe at this reading and its heater at this share of its power.
 *  A proportional thermostat rests beside its dial: half a band below it at full power, half a band above at none.
 *  @param bandK from meanBandK   @param probeC reading at rest [degC]   @param dutyFrac mean power over full power, clipped to 0..1
 *  @returns set point [degC]   Inverse of duty = 1/2 + (set - probe)/band (physics/control.ts). */
export const dialForReading = (bandK: number, probeC: number, dutyFrac: number): number =>
  probeC + bandK * (Math.max(0, Math.min(1, dutyFrac)) - 0.5);
