// Ours for the tables about thermostats, dimmers and probes.
import {
  lampColourTempFrac,
  lampPowerFrac,
  phaseAngleDeg,
  phaseAnglePowerFrac,
} from '../../src/physics/formulas/lamp-dimming.ts';
import { beadDiameterM, beadTimeConstantS, timeToReachS } from '../../src/physics/formulas/lumped-body.ts';
import {
  pulseRippleK,
  type RelayCycle,
  relayCycle,
  relayCycleWithLag,
} from '../../src/physics/formulas/thermostat-cycle.ts';
import { num } from '../inputs.ts';
import type { Inputs, Runner } from '../table.ts';

const plantOf = (i: Inputs) => ({
  roomC: num(i, 'roomC'),
  risePerWattK: num(i, 'risePerWattK'),
  powerW: num(i, 'powerW'),
  timeConstantS: num(i, 'timeConstantS'),
});

function flat(cycle: RelayCycle | null): Record<string, number> {
  if (cycle === null)
    return { onS: Number.NaN, offS: Number.NaN, periodS: Number.NaN, duty: Number.NaN, meanC: Number.NaN };
  const { onS, offS, periodS, dutyFrac, meanC, minC, maxC } = cycle;
  return { onS, offS, periodS, duty: dutyFrac, meanC, minC, maxC };
}

export const controlRunners: Readonly<Record<string, Runner>> = {
  dimmedLamp: (i) => ({
    power: lampPowerFrac(num(i, 'voltageRatio')),
    colourTemp: lampColourTempFrac(num(i, 'voltageRatio')),
  }),
  relayCycle: (i) => flat(relayCycle(plantOf(i), num(i, 'setC'), num(i, 'halfBandK'))),
  relayCycleWithLag: (i) =>
    flat(relayCycleWithLag(plantOf(i), num(i, 'setC'), num(i, 'halfBandK'), num(i, 'sensorLagS'))),
  pulseRipple: (i) => ({ ripple: pulseRippleK(plantOf(i), num(i, 'cycleS'), num(i, 'dutyFrac')) }),
  phaseAngle: (i) => ({ power: phaseAnglePowerFrac(num(i, 'firingDeg')) }),
  phaseAngleInverse: (i) => ({ firingDeg: phaseAngleDeg(num(i, 'powerFrac')) }),
  bead: (i) => ({
    timeConstantS: beadTimeConstantS(num(i, 'diameterM'), num(i, 'volumetricJPerM3K'), num(i, 'filmWPerM2K')),
  }),
  thermocouple: (i) => ({
    diameterM: beadDiameterM(num(i, 'timeConstantS'), num(i, 'volumetricJPerM3K'), num(i, 'filmWPerM2K')),
    timeS: timeToReachS(num(i, 'timeConstantS'), num(i, 'fromC'), num(i, 'toC'), num(i, 'gasC')),
  }),
};
