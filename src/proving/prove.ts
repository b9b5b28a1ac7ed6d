// The door of the room: a home, an animal's needs, readings and instruments in; proven, not proven or failed out, with
// what was learned, what is forecast, and what to do next.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { MaterialTable } from '../physics/material.ts';
import type { Priors } from '../physics/priors.ts';
import type { Fault } from '../shared/fault.ts';
import { spreadOf } from '../shared/interval.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { calibrate, correctedLog, instrumentOf } from './calibration/calibrate.ts';
import { dialFor } from './calibration/dial.ts';
import { type Forecast, forecastBox, usualDraws } from './calibration/forecast.ts';
import { learnedFrom } from './calibration/learned.ts';
import { forecastMoments } from './calibration/moments.ts';
import { nextReadings } from './calibration/next-reading.ts';
import { diagnose } from './diagnosis/diagnose.ts';
import type { LogQuestion } from './files/understood.ts';
import { type Instrument, trustIn } from './instrument.ts';
import { loggerPart, type ReadingLog } from './reading-log.ts';
import { coverageOf } from './verdict/coverage.ts';
import { decide } from './verdict/decide.ts';
import { type ForecastNeed, forecastNeeds } from './verdict/forecast-needs.ts';
import type { MomentSummary, ProofAnswer } from './verdict/proof-answer.ts';
import { readNeeds } from './verdict/read-needs.ts';
import { roomReadOf } from './verdict/room-read.ts';
import { basisOf, type ProofRule, type RuleSetting } from './verdict/rule.ts';

export interface ProofInput {
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  readonly log: ReadingLog;
  readonly instruments: readonly Instrument[];
  readonly rule: ProofRule;
  /** Parts of the rule that the shop set; none = all of it is our choice. */
  readonly ruleSettings?: readonly RuleSetting[];
  /** Questions about the file that nobody has answered. */
  readonly questions: readonly LogQuestion[];
  readonly draws?: number;
  readonly seed?: number;
}

/** Judge a home by its readings.
 *  Faults: "PROOF_NO_READINGS" when no temperature lies at a known place inside. */
export function proveHome(input: ProofInput): Result<ProofAnswer> {
  const { enclosure, climate, instruments, rule } = input;
  const log = correctedLog(input.log, instruments);
  const placed = log.channels.some((c) => c.quantity === 'tempC' && c.place !== null && c.place !== 'room');
  if (!placed || log.timesS.length === 0) return bad([noReadings]);
  const seed = input.seed ?? 1;
  const baskingAimC = (climate.baskingSurfaceC.low + climate.baskingSurfaceC.high) / 2;
  // single readings at a typed minute neither fit a response nor show a pattern: those two go by the logger
  const logged = loggerPart(log);
  const found = calibrate({ ...input, log: loggerPart(input.log) });
  const lagH = found?.lagH ?? 1;
  const at = log.timesS.at(-1)!;
  const trust = (channel: number) => {
    const c = log.channels[channel]!;
    return trustIn(instrumentOf(c.instrumentId, instruments), c.quantity, at);
  };
  const needs = readNeeds(log, climate, enclosure.day, lagH, trust);
  const coverage = coverageOf(log, enclosure.day, rule);
  const diagnosis = diagnose({ ...input, log: logged, baskingAimC });
  const forecast = found && forecastBox(found.fit, forecastMoments(enclosure, lagH), input.draws ?? usualDraws, seed);
  const coming = forecast ? forecastNeeds(forecast, climate) : [];
  const dial = found && forecast ? dialFor(found.fit, forecast, baskingAimC) : null;
  const checked = log.channels.flatMap((c, i) =>
    trust(i).checked && c.place !== null && c.place !== 'room' ? [c.place] : [],
  );
  const doubt = mostDoubted(coming);
  const advice = found && forecast && doubt ? nextReadings(found.fit, forecast, doubt, checked) : [];
  const decision = decide({
    log,
    rule,
    coverage,
    needs,
    forecastNeeds: coming,
    diagnosis,
    questions: input.questions,
    dial,
    nextReadings: advice,
  });
  return good({
    ...decision,
    coverage,
    needs,
    forecastNeeds: coming,
    moments: forecast ? summaries(forecast) : [],
    learned: found ? learnedFrom(found.fit) : [],
    dial,
    nextReadings: advice,
    diagnosis,
    rule,
    ruleBasis: basisOf(input.ruleSettings ?? []),
    ruleSettings: input.ruleSettings ?? [],
    roomFrom: found?.roomFrom ?? 'none',
    roomReadC: roomReadOf(log),
    lagH,
    seed,
  });
}

/** The forecast nearest to even chances; null when nothing is in doubt. */
function mostDoubted(needs: readonly ForecastNeed[]): ForecastNeed | null {
  const open = needs.filter((n) => n.verdict === 'not-known');
  return open.sort((a, b) => Math.abs(a.shareHolding - 0.5) - Math.abs(b.shareHolding - 0.5))[0] ?? null;
}

function summaries(forecast: Forecast): MomentSummary[] {
  return Object.values(forecast.moments).map((m) => ({
    id: m.moment.id,
    roomC: m.moment.roomC,
    spreadC: m.spreadC,
    coolRhPct: spreadOf(m.coolRhPct),
    powerW: spreadOf(m.powerW),
    flatOutShare: m.flatOutShare,
  }));
}

const noReadings: Fault = {
  code: 'PROOF_NO_READINGS',
  field: 'log',
  got: 'no temperature at a known place inside',
  allowed: 'at least one temperature channel with its place',
  say: 'Nothing in these readings says where in the home it was measured.',
  fix: 'Say where each sensor lay: basking surface, warm end, warm hide, cool end or room.',
};
