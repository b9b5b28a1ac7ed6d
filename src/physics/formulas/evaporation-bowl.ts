// How much water does an undisturbed bowl give to the air, and how cool does it become? A film on buoyancy of damp air,
// the Lewis analogy and the bowl's own heat balance. Leaves out wind, splashing and heat from below.
// Uncertain by a factor of about three between published laws (check P-132); one amateur measurement lies a third lower.
import {
  kelvinFromCelsius,
  standardPressurePa,
  stefanBoltzmannWPerM2K4,
  vapourGasConstantJPerKgK,
} from './constants.ts';
import { dryAir } from './dry-air.ts';
import { massTransferMPerS, vapourDiffusivityM2PerS } from './lewis-relation.ts';
import {
  evaporationHeatJPerKg,
  humidityRatio,
  moistAirDensityKgPerM3,
  vapourPressurePa,
  virtualTempK,
} from './moist-air.ts';
import { nusseltPlateDrivenSmooth, nusseltPlateStableFifth } from './nusselt-horizontal-plate.ts';
import type { FormulaRange } from './range.ts';
import { rayleighNumber } from './rayleigh.ts';
import { saturationPressurePa } from './saturation-pressure.ts';

/** Long-wave emissivity of water [-]. Source: INCROPERA tab. A.11 (memory). */
export const waterEmissivity = 0.96;

export const bowlEvaporationRange: FormulaRange = {
  formula: 'Bowl evaporation by the Lewis analogy',
  source: 'CHILTON1934',
  inputs: {
    diameterM: { low: 0.05, high: 1, unit: 'm' },
    airC: { low: 5, high: 50, unit: '°C' },
    rhFrac: { low: 0, high: 1, unit: '' },
  },
};

export interface BowlAir {
  readonly diameterM: number;
  readonly airC: number;
  readonly rhFrac: number;
  /** Mean temperature of the faces that the water looks at [°C]. */
  readonly surroundingsC: number;
  readonly pressurePa?: number;
}

export interface BowlEvaporation {
  readonly waterC: number;
  readonly filmWPerM2K: number;
  readonly massTransferMPerS: number;
  readonly kgPerM2H: number;
  readonly gPerH: number;
  /** Heat taken from air and surroundings [W]. */
  readonly heatW: number;
}

/** The air over a bowl in a heated box is never quite still: it differs by about this much from place to place, so the drive
 *  counts as no less [K]; our choice. A law that lets the film shrink to conduction as the drive passes through zero gives
 *  dry air below warm walls two states at rest, up to 8 K apart; this one gives one (evaporation.test.ts). */
const unevenK = 1;
/** Width of the change from air that lies on the water to air that rises from it [K]; our choice, as for the box's faces. */
const turningK = 0.3;

/** Both laws, blended where the drive changes sign. */
function nusseltAtDrive(rayleigh: number, driveK: number): number {
  const rising = 1 / (1 + Math.exp(-driveK / turningK));
  const blended = rising * nusseltPlateDrivenSmooth(rayleigh) + (1 - rising) * nusseltPlateStableFifth(rayleigh);
  return Math.max(1, blended);
}

/** Evaporation of a bowl whose water has a known temperature; negative when dew falls on it.
 *  @param bowl   size and air around it      @param waterC temperature of the surface [°C]
 *  Source: CHILTON1934, film by INCROPERA eq. 9.30 and 9.32 (memory). Checks: P-133. */
export function bowlEvaporationAtWater(bowl: BowlAir, waterC: number): BowlEvaporation {
  const pressure = bowl.pressurePa ?? standardPressurePa;
  const areaM2 = (Math.PI * bowl.diameterM ** 2) / 4;
  const airPa = vapourPressurePa(bowl.airC, bowl.rhFrac);
  const waterPa = saturationPressurePa(waterC);
  const filmC = (bowl.airC + waterC) / 2;
  const air = dryAir(filmC, pressure);
  const density = moistAirDensityKgPerM3(filmC, humidityRatio((airPa + waterPa) / 2, pressure), pressure);
  const driveK =
    virtualTempK(waterC, humidityRatio(waterPa, pressure)) - virtualTempK(bowl.airC, humidityRatio(airPa, pressure));
  const lengthM = bowl.diameterM / 4;
  const rayleigh = rayleighNumber(air, Math.hypot(driveK, unevenK), lengthM);
  const film = (nusseltAtDrive(rayleigh, driveK) * air.conductivityWPerMK) / lengthM;
  const transfer = massTransferMPerS(film, density, air.diffusivityM2PerS / vapourDiffusivityM2PerS(filmC));
  const kgPerM2S =
    (transfer * (waterPa / kelvinFromCelsius(waterC) - airPa / kelvinFromCelsius(bowl.airC))) /
    vapourGasConstantJPerKgK;
  return {
    waterC,
    filmWPerM2K: film,
    massTransferMPerS: transfer,
    kgPerM2H: kgPerM2S * 3600,
    gPerH: kgPerM2S * areaM2 * 3.6e6,
    heatW: kgPerM2S * areaM2 * evaporationHeatJPerKg(waterC),
  };
}

/** Heat that reaches the water's surface beyond what it spends on evaporation [W/m2]; 0 at rest. @param waterC [°C]
 *  Source: own heat balance on bowlEvaporationAtWater. Checks: unit (one change of sign). */
export function bowlSurplusWPerM2(bowl: BowlAir, waterC: number): number {
  const at = bowlEvaporationAtWater(bowl, waterC);
  const radiant =
    waterEmissivity *
    stefanBoltzmannWPerM2K4 *
    (kelvinFromCelsius(bowl.surroundingsC) ** 4 - kelvinFromCelsius(waterC) ** 4);
  const latent = (at.kgPerM2H / 3600) * evaporationHeatJPerKg(waterC);
  return at.filmWPerM2K * (bowl.airC - waterC) + radiant - latent;
}

/** Evaporation of a bowl that is insulated below and has come to rest with air and surroundings.
 *  @param bowl  size and air around it
 *  Source: own heat balance on bowlEvaporationAtWater. Checks: P-133, P-225. */
export function bowlEvaporation(bowl: BowlAir): BowlEvaporation {
  let low = Math.min(bowl.airC, bowl.surroundingsC) - 40;
  let high = Math.max(bowl.airC, bowl.surroundingsC) + 40;
  while (high - low > 1e-10) {
    const middle = (low + high) / 2;
    if (bowlSurplusWPerM2(bowl, middle) > 0) low = middle;
    else high = middle;
  }
  return bowlEvaporationAtWater(bowl, (low + high) / 2);
}
