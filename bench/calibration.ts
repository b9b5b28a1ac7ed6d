// How fast is a fit? A week of five-minute readings in two channels and the room, from the different model of
// checks/proving; target: fitted in under 2 s. Also the whole proof: fit, forecast, dial, diagnosis.
// Times depend on what else the machine does: the ratio to one settled state is printed beside them.
import { exampleHome, materials, priors } from '../checks/proving/homes-of-check.ts';
import { otherHome } from '../checks/proving/other-homes.ts';
import { climateNeeds } from '../src/husbandry/climate-needs.ts';
import { boxGeometry, modelFrom, settleBox } from '../src/physics/simulate.ts';
import { calibrate } from '../src/proving/calibration/calibrate.ts';
import { proveHome } from '../src/proving/prove.ts';
import { defaultRule } from '../src/proving/verdict/rule.ts';
import { loadFacts } from '../src/records/facts.ts';

export interface CalibrationBench {
  readonly readings: number;
  readonly fitMs: number;
  readonly proofMs: number;
  readonly settledMs: number;
}

/** Best of three runs each, after one to warm up. */
export function benchCalibration(): CalibrationBench {
  const enclosure = exampleHome('wood-1200');
  const { log } = otherHome(enclosure, materials, 42, {
    nights: 7,
    intervalS: 300,
    places: ['basking-surface', 'cool-air'],
  });
  const species = loadFacts(new URL('../data', import.meta.url).pathname).facts.species[enclosure.animal!.speciesId]!;
  const climate = climateNeeds(species, enclosure.animal!.stage);
  if (!climate.ok) throw new Error('data/ is damaged');
  const input = { enclosure, materials, priors, log, instruments: [] };
  const model = modelFrom(boxGeometry(enclosure, materials));
  const settledMs = bestOf(20, () => settleBox(model, { roomC: 18, roomRhPct: 50, sunWPerM2: 0, isDay: true }));
  const fitMs = bestOf(3, () => calibrate(input));
  const proofMs = bestOf(2, () => proveHome({ ...input, climate: climate.value, rule: defaultRule, questions: [] }));
  return { readings: log.timesS.length, fitMs, proofMs, settledMs };
}

/** Lines for a person. */
export function calibrationBenchLines(): string[] {
  const b = benchCalibration();
  return [
    `fit, ${b.readings} times in 2 channels and the room: ${b.fitMs.toFixed(0)} ms (target 2000), ${(b.fitMs / b.settledMs).toFixed(0)} settled states`,
    `whole proof (fit, forecast of 48 boxes, dial, diagnosis): ${b.proofMs.toFixed(0)} ms, ${(b.proofMs / b.settledMs).toFixed(0)} settled states`,
  ];
}

function bestOf(runs: number, run: () => unknown): number {
  run();
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const started = performance.now();
    run();
    best = Math.min(best, performance.now() - started);
  }
  return best;
}

if (process.argv[1]?.endsWith('calibration.ts')) for (const line of calibrationBenchLines()) console.log(line);
