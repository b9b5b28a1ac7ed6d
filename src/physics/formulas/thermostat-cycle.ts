// How does an on/off or a pulsing thermostat make the temperature swing? A box of one time constant, closed form; the same
// with a slow probe, stepped from switch to switch; and the ripple of a pulsing one. Leaves out walls that follow slowly.

export interface OneNodePlant {
  readonly roomC: number;
  /** Rise per watt at rest [K/W]. */
  readonly risePerWattK: number;
  readonly powerW: number;
  readonly timeConstantS: number;
}

export interface RelayCycle {
  readonly onS: number;
  readonly offS: number;
  readonly periodS: number;
  readonly dutyFrac: number;
  readonly meanC: number;
  readonly minC: number;
  readonly maxC: number;
}

/** On/off cycle with a perfect probe. @param plant @param setC middle of the band [°C] @param halfBandK [K]
 *  @returns the cycle, or null when heater or room cannot reach the band
 *  Exact solution of the first-order equation. Checks: P-150. */
export function relayCycle(plant: OneNodePlant, setC: number, halfBandK: number): RelayCycle | null {
  const { roomC, timeConstantS } = plant;
  const fullC = roomC + plant.risePerWattK * plant.powerW;
  const minC = setC - halfBandK;
  const maxC = setC + halfBandK;
  if (fullC <= maxC || roomC >= minC) return null;
  const onS = timeConstantS * Math.log((fullC - minC) / (fullC - maxC));
  const offS = timeConstantS * Math.log((maxC - roomC) / (minC - roomC));
  return cycleOf(plant, onS, offS, minC, maxC);
}

function cycleOf(plant: OneNodePlant, onS: number, offS: number, minC: number, maxC: number): RelayCycle {
  const periodS = onS + offS;
  const dutyFrac = onS / periodS;
  const meanC = plant.roomC + plant.risePerWattK * plant.powerW * dutyFrac;
  return { onS, offS, periodS, dutyFrac, meanC, minC, maxC };
}

/** On/off cycle with a probe that lags: air swings further than the dial says. Stepped exactly from switch to switch until
 *  the cycle repeats. @param sensorLagS time constant of the probe [s], > 0 and not equal to the plant's
 *  @returns the cycle of the true air, or null when the band cannot be reached. Checks: P-152; tends to relayCycle for small lag. */
export function relayCycleWithLag(
  plant: OneNodePlant,
  setC: number,
  halfBandK: number,
  sensorLagS: number,
): RelayCycle | null {
  const fullC = plant.roomC + plant.risePerWattK * plant.powerW;
  if (relayCycle(plant, setC, halfBandK) === null) return null;
  let air = setC;
  let probe = setC - halfBandK;
  let cycle: RelayCycle | null = null;
  for (let i = 0; i < 400; i++) {
    const minC = air;
    const on = legUntil(plant.timeConstantS, sensorLagS, fullC, air, probe, setC + halfBandK);
    const off = legUntil(plant.timeConstantS, sensorLagS, plant.roomC, on.air, setC + halfBandK, setC - halfBandK);
    air = off.air;
    probe = setC - halfBandK;
    cycle = cycleOf(plant, on.seconds, off.seconds, off.air, on.air);
    if (Math.abs(air - minC) < 1e-10) break;
  }
  return cycle;
}

/** Time until the lagging probe crosses a level, and the air then. */
function legUntil(tau: number, lag: number, endC: number, air0: number, probe0: number, levelC: number) {
  const airAt = (t: number) => endC + (air0 - endC) * Math.exp(-t / tau);
  const slow = ((air0 - endC) * tau) / (tau - lag);
  const probeAt = (t: number) => endC + slow * Math.exp(-t / tau) + (probe0 - endC - slow) * Math.exp(-t / lag);
  const rising = endC > levelC;
  const crossed = (t: number) => (rising ? probeAt(t) >= levelC : probeAt(t) <= levelC);
  let step = lag / 50;
  let low = step;
  while (crossed(low) && low > 1e-9) low /= 2;
  let high = low;
  while (!crossed(high)) {
    low = high;
    high += step;
    step *= 1.02;
  }
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (crossed(middle)) high = middle;
    else low = middle;
  }
  return { seconds: high, air: airAt(high) };
}

/** Swing (peak to peak) under a pulsing thermostat. @param plant @param cycleS [s] @param dutyFrac 0..1 @returns [K].
 *  Exact for one time constant. Checks: P-154. */
export function pulseRippleK(plant: OneNodePlant, cycleS: number, dutyFrac: number): number {
  const part = (share: number) => 1 - Math.exp((-share * cycleS) / plant.timeConstantS);
  return (plant.risePerWattK * plant.powerW * part(dutyFrac) * part(1 - dutyFrac)) / part(1);
}
