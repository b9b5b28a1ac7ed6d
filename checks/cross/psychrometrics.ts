// Our moist air against an independent program (psychrolib) over a grid of temperatures, humidities and pressures.
// Reports the largest difference of each quantity; the other program's values are computed on the spot.
import other from 'psychrolib';
import {
  dewPointCFromRh,
  enthalpyJPerKg,
  humidityRatio,
  moistAirDensityKgPerM3,
  specificVolumeM3PerKg,
  vapourPressurePa,
} from '../../src/physics/formulas/moist-air.ts';
import { saturationPressurePa } from '../../src/physics/formulas/saturation-pressure.ts';
import { humidityRatioFromWetBulb, wetBulbC } from '../../src/physics/formulas/wet-bulb.ts';
import type { CheckRow } from '../check-row.ts';

const temps = Array.from({ length: 31 }, (_, i) => -15 + 2.1 * i);
const humidities = [0.05, 0.2, 0.35, 0.5, 0.65, 0.8, 0.95, 1];
const pressures = [80_000, 95_000, 101_325, 104_000];

interface Worst {
  readonly unit: string;
  readonly limit: number;
  readonly relative: boolean;
  readonly why: string;
  value: number;
}
const tight = 'Same equations, so only the rounding of shared constants may differ.';

function worstTable(): Record<string, Worst> {
  const rel = (limit: number, why = tight): Worst => ({ unit: 'relative', limit, relative: true, why, value: 0 });
  const abs = (limit: number, why: string): Worst => ({ unit: 'K', limit, relative: false, why, value: 0 });
  return {
    'saturation pressure': rel(1e-9),
    'humidity ratio': rel(1e-9),
    'dew point': abs(0.002, 'The other program stops its iteration at 0.001 K; twice that.'),
    'wet bulb': abs(0.002, 'The other program stops its halving at 0.001 K; twice that.'),
    'wet bulb, other branch': rel(
      1e-3,
      'Around freezing the wick may be wet or iced and both readings are valid; where the other program reports the other one, its reading must still give our humidity. Its 0.001 K are worth 0.03 %.',
    ),
    enthalpy: rel(1e-6),
    volume: rel(1e-5),
    density: rel(1e-5),
  };
}

export async function cases(): Promise<CheckRow[]> {
  other.SetUnitSystem(other.SI);
  const worst = worstTable();
  const note = (name: string, ours: number, theirs: number) => {
    const entry = worst[name] as Worst;
    const gap = entry.relative ? Math.abs(ours / theirs - 1) : Math.abs(ours - theirs);
    entry.value = Number.isNaN(gap) ? Number.NaN : Math.max(entry.value, gap);
  };
  let points = 0;
  for (const t of temps)
    for (const rh of humidities)
      for (const p of pressures) {
        points++;
        const ratio = humidityRatio(vapourPressurePa(t, rh), p);
        const theirs = other.GetHumRatioFromRelHum(t, rh, p);
        note('saturation pressure', saturationPressurePa(t), other.GetSatVapPres(t));
        note('humidity ratio', ratio, theirs);
        note('dew point', dewPointCFromRh(t, rh), other.GetTDewPointFromRelHum(t, rh));
        const [wet, theirWet] = [wetBulbC(t, rh, p), other.GetTWetBulbFromRelHum(t, rh, p)];
        if (wet < 0 === theirWet < 0) note('wet bulb', wet, theirWet);
        else note('wet bulb, other branch', humidityRatioFromWetBulb(t, theirWet, p), ratio);
        note('enthalpy', enthalpyJPerKg(t, ratio) + 50_000, other.GetMoistAirEnthalpy(t, theirs) + 50_000);
        note('volume', specificVolumeM3PerKg(t, ratio, p), other.GetMoistAirVolume(t, theirs, p));
        note('density', moistAirDensityKgPerM3(t, ratio, p), other.GetMoistAirDensity(t, theirs, p));
      }
  return Object.entries(worst).map(([quantity, entry]) => ({
    id: 'PSY-GRID',
    title: `Moist air, largest difference over ${points} points from -15 to 48 °C, 5 to 100 %, 800 to 1040 hPa`,
    quantity,
    kind: 'cross',
    source: 'PSYCHROLIB',
    at: 'run on the grid',
    provenance: 'read',
    expected: 0,
    ours: entry.value,
    unit: entry.unit,
    tolerance: { abs: entry.limit },
    why: entry.why,
  }));
}
