// Ours for the tables about moist air and evaporation.
import { bowlEvaporation } from '../../src/physics/formulas/evaporation-bowl.ts';
import {
  evaporationForcedShahKgPerM2H,
  evaporationNaturalShahKgPerM2H,
  evaporationPoolAshraeKgPerM2H,
  shahLiftKgPerM3,
} from '../../src/physics/formulas/evaporation-pool.ts';
import { massTransferMPerS } from '../../src/physics/formulas/lewis-relation.ts';
import {
  dewPointCFromRh,
  enthalpyJPerKg,
  humidityRatio,
  moistAirDensityKgPerM3,
  relativeHumidityFrac,
  specificVolumeM3PerKg,
  vapourPressurePa,
  vapourPressurePaFromRatio,
} from '../../src/physics/formulas/moist-air.ts';
import { kelvinHumidityFrac, soilSurfaceResistanceSPerM } from '../../src/physics/formulas/moist-medium.ts';
import { saturationPressurePa } from '../../src/physics/formulas/saturation-pressure.ts';
import { saturationPressurePaMagnus } from '../../src/physics/formulas/saturation-pressure-magnus.ts';
import { steadyHumidityRatio } from '../../src/physics/formulas/steady-humidity.ts';
import { wetBulbC } from '../../src/physics/formulas/wet-bulb.ts';
import { num } from '../inputs.ts';
import type { Runner } from '../table.ts';

function magnusWorst(fromC: number, toC: number): number {
  let worst = 0;
  for (let t = fromC; t <= toC + 1e-9; t += 0.1) {
    worst = Math.max(worst, Math.abs(saturationPressurePaMagnus(t) / saturationPressurePa(t) - 1));
  }
  return worst;
}

export const moistureRunners: Readonly<Record<string, Runner>> = {
  moistAir: (i) => {
    const tempC = num(i, 'tempC');
    const rhFrac = num(i, 'rhFrac');
    const vapour = vapourPressurePa(tempC, rhFrac);
    const ratio = humidityRatio(vapour);
    return {
      saturationPa: saturationPressurePa(tempC),
      vapourPa: vapour,
      ratio,
      dewPointC: dewPointCFromRh(tempC, rhFrac),
      wetBulbC: wetBulbC(tempC, rhFrac),
      enthalpyKJPerKg: enthalpyJPerKg(tempC, ratio) / 1000,
      volumeM3PerKg: specificVolumeM3PerKg(tempC, ratio),
      densityKgPerM3: moistAirDensityKgPerM3(tempC, ratio),
    };
  },
  saturation: (i) => ({ value: saturationPressurePa(num(i, 'tempC')) }),
  magnusError: (i) => ({ worst: magnusWorst(num(i, 'fromC'), num(i, 'toC')) }),
  saturatedRatio: (i) => ({ ratio: humidityRatio(saturationPressurePa(num(i, 'tempC'))) }),
  stillWater: (i) => {
    const [waterC, airC, rhFrac] = [num(i, 'waterC'), num(i, 'airC'), num(i, 'rhFrac')];
    return {
      pool: evaporationPoolAshraeKgPerM2H(waterC, airC, rhFrac, num(i, 'speedMPerS')),
      shahNatural: evaporationNaturalShahKgPerM2H(waterC, airC, rhFrac),
      shahForced: evaporationForcedShahKgPerM2H(waterC, airC, rhFrac),
    };
  },
  shahTable: (i) => ({
    evaporation: evaporationNaturalShahKgPerM2H(num(i, 'waterC'), num(i, 'airC'), num(i, 'rhFrac')),
  }),
  shahLift: (i) => ({ lift: shahLiftKgPerM3(num(i, 'waterC'), num(i, 'airC'), num(i, 'rhFrac')) }),
  bowl: (i) => {
    const { waterC, gPerH, kgPerM2H } = bowlEvaporation({
      diameterM: num(i, 'diameterM'),
      airC: num(i, 'airC'),
      rhFrac: num(i, 'rhFrac'),
      surroundingsC: num(i, 'surroundingsC'),
    });
    return { waterC, gPerH, kgPerM2H };
  },
  lewis: (i) => ({
    transferMmPerS:
      1000 *
      massTransferMPerS(
        num(i, 'filmWPerM2K'),
        num(i, 'densityKgPerM3'),
        num(i, 'thermalM2PerS') / num(i, 'vapourM2PerS'),
      ),
  }),
  steadyHumidity: (i) => {
    const roomRatio = humidityRatio(vapourPressurePa(num(i, 'roomC'), num(i, 'roomRhFrac')));
    const ratio = steadyHumidityRatio(roomRatio, num(i, 'sourceGPerH'), num(i, 'flowM3PerS'), num(i, 'dryAirKgPerM3'));
    return { ratio, rhFrac: relativeHumidityFrac(num(i, 'insideC'), vapourPressurePaFromRatio(ratio)) };
  },
  soilResistance: (i) => ({ resistance: soilSurfaceResistanceSPerM(num(i, 'waterVolumeFrac')) }),
  kelvinHumidity: (i) => ({ rhFrac: kelvinHumidityFrac(num(i, 'potentialMPa'), num(i, 'tempC')) }),
};
