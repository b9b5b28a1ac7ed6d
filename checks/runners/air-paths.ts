// Ours for the tables about plumes, openings and screens.
import { dryAirGasConstantJPerKgK, standardPressurePa } from '../../src/physics/formulas/constants.ts';
import {
  adiabaticBoxRiseK,
  dischargeTwoWayAshrae,
  flatExchangeEpsteinM3PerS,
  seriesAreaM2,
  stackFlowM3PerS,
  uprightExchangeM3PerS,
} from '../../src/physics/formulas/opening-flow.ts';
import {
  plumeCentreRiseHeskestadK,
  plumeFlowPopiolekM3PerS,
  plumeMassFlowZukoskiKgPerS,
} from '../../src/physics/formulas/plume-engineering.ts';
import { buoyancyFlux, plumeFlowIntegratedM3PerS, plumeMorton } from '../../src/physics/formulas/plume-morton.ts';
import { screenLossByPores } from '../../src/physics/formulas/screen-flow.ts';
import { dischargeWithScreen, screenLossBailey, screenLossIdelchik } from '../../src/physics/formulas/screen-loss.ts';
import { num } from '../inputs.ts';
import type { Runner } from '../table.ts';

const density = (airK: number) => standardPressurePa / (dryAirGasConstantJPerKgK * airK);

export const airPathRunners: Readonly<Record<string, Runner>> = {
  plumeMorton: (i) => {
    const airK = num(i, 'airK');
    const plume = plumeMorton(num(i, 'convectedW'), num(i, 'heightM'), airK, density(airK), num(i, 'entrainment'));
    return {
      buoyancy: plume.buoyancyM4PerS3,
      flow: plume.flowM3PerS,
      speed: plume.meanSpeedMPerS,
      rise: plume.meanRiseK,
    };
  },
  plumeIntegrated: (i) => {
    const flux = buoyancyFlux(num(i, 'convectedW'), density(num(i, 'airK')), num(i, 'airK'));
    return { flow: plumeFlowIntegratedM3PerS(flux, num(i, 'heightM'), num(i, 'entrainment')) };
  },
  plumePopiolek: (i) => ({ flow: plumeFlowPopiolekM3PerS(num(i, 'convectedW'), num(i, 'heightM')) }),
  plumeFire: (i) => {
    const massFlow = plumeMassFlowZukoskiKgPerS(num(i, 'convectedW'), num(i, 'heightM'));
    const rise = plumeCentreRiseHeskestadK(num(i, 'convectedW'), num(i, 'heightM'));
    return { massFlow, flow: massFlow / density(num(i, 'airK')), rise };
  },
  uprightOpening: (i) => ({
    flow:
      1000 *
      uprightExchangeM3PerS(num(i, 'widthM'), num(i, 'heightM'), num(i, 'deltaK'), num(i, 'airK'), num(i, 'discharge')),
  }),
  flatOpening: (i) => ({
    flow: 1000 * flatExchangeEpsteinM3PerS(num(i, 'diameterM'), num(i, 'deltaK'), num(i, 'airK')),
  }),
  stackFlow: (i) => ({
    flow:
      1000 *
      stackFlowM3PerS(
        seriesAreaM2(num(i, 'lowM2'), num(i, 'highM2')),
        num(i, 'heightM'),
        num(i, 'deltaK'),
        num(i, 'airK'),
        num(i, 'discharge'),
      ),
  }),
  adiabaticBox: (i) => ({
    rise: adiabaticBoxRiseK(
      num(i, 'powerW'),
      num(i, 'densityKgPerM3'),
      seriesAreaM2(num(i, 'lowM2'), num(i, 'highM2')),
      num(i, 'heightM'),
      num(i, 'airK'),
      num(i, 'discharge'),
    ),
  }),
  dischargeTwoWay: (i) => ({ discharge: dischargeTwoWayAshrae(num(i, 'deltaK')) }),
  screenBailey: (i) => ({
    loss: screenLossBailey(num(i, 'openFrac'), num(i, 'wireM'), num(i, 'speedMPerS'), num(i, 'viscosityM2PerS')),
  }),
  screenDischarge: (i) => ({
    discharge:
      1 / Math.sqrt(screenLossByPores({ openFrac: num(i, 'openFrac'), wireM: num(i, 'wireM') }, num(i, 'speedMPerS'))),
  }),
  screenIdelchik: (i) => ({ loss: screenLossIdelchik(num(i, 'openFrac')) }),
  screenedVent: (i) => ({ discharge: dischargeWithScreen(num(i, 'discharge'), num(i, 'loss')) }),
};
