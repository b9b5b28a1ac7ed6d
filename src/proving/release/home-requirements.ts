// What the home has to be before an animal goes to it: drawn for it, proven, and safe by its drawing.
// Leaves out the climate over the year, which the proof and the plan judge.
import type { Facts, Species } from '../../husbandry/fact.ts';
import { judgeEnclosure } from '../../husbandry/judge-enclosure.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { worstVerdict } from '../../shared/verdict.ts';
import type { ProofVerdict } from '../verdict/proof-answer.ts';
import type { Evidence, ReleaseReason, RequirementAnswer, RequirementId } from './requirement.ts';

export interface Answered {
  readonly answer: RequirementAnswer;
  readonly reasons: readonly ReleaseReason[];
  readonly evidence: Evidence;
}

export interface HomeInput {
  /** The home with this very animal in it; null when none is drawn or it cannot be judged. */
  readonly enclosure: Enclosure | null;
  /** The species that the enquiry was made for. */
  readonly plannedSpeciesId: string | null;
  readonly species: Species;
  readonly facts: Facts;
  readonly enquiry: { readonly on: string; readonly by: string };
  readonly proof: {
    readonly verdict: ProofVerdict;
    /** Home and readings are still those it was made of. */
    readonly current: boolean;
    readonly on: string;
    readonly by: string;
  } | null;
}

export type HomeRequirementId = Extract<
  RequirementId,
  'home-fits' | 'home-proven' | 'thermostat' | 'guard' | 'two-hides' | 'lock' | 'thermometer' | 'heater-safe'
>;

const answerOf = { holds: 'met', fails: 'not-met', 'not-known': 'not-known' } as const;

export function homeRequirements(input: HomeInput): Readonly<Record<HomeRequirementId, Answered>> {
  const { enclosure, species, facts } = input;
  const evidence: Evidence = { at: 'plan', ...input.enquiry };
  const open = (): Answered => ({ answer: 'not-known', reasons: [{ key: 'home.none' }], evidence });
  const fits = homeFits(input, evidence);
  const proven = homeProven(input);
  if (enclosure === null)
    return {
      'home-fits': fits,
      'home-proven': proven,
      thermostat: open(),
      guard: open(),
      'two-hides': open(),
      lock: open(),
      thermometer: open(),
      'heater-safe': open(),
    };
  const needs = judgeEnclosure(enclosure, species, null, facts);
  const from = (reasons: readonly ReleaseReason[], found: readonly NeedVerdict[]): Answered => ({
    answer: answerOf[worstVerdict(found.map((need) => need.verdict))],
    reasons,
    evidence,
  });
  return {
    'home-fits': fits,
    'home-proven': proven,
    thermostat: thermostats(enclosure, needs, evidence),
    guard: guards(enclosure, needs, evidence),
    'two-hides': from([simple('two-hides', needs)], one(needs, 'two-hides')),
    lock: from(lockReasons(needs), [...one(needs, 'lock'), ...one(needs, 'gap')]),
    thermometer: from(thermometers(needs), starting(needs, 'thermometer-')),
    'heater-safe': heaterSafe(needs, evidence),
  };
}

const one = (needs: readonly NeedVerdict[], id: string) => needs.filter((need) => need.id === id);
const starting = (needs: readonly NeedVerdict[], start: string) => needs.filter((need) => need.id.startsWith(start));

function homeFits({ enclosure, plannedSpeciesId, species }: HomeInput, evidence: Evidence): Answered {
  const found = { at: 'enquiry', on: evidence.on, by: evidence.by } as const;
  if (plannedSpeciesId !== null && plannedSpeciesId !== species.id)
    return {
      answer: 'not-met',
      reasons: [{ key: 'home-fits.other', blanks: { planned: `#species.${plannedSpeciesId}` } }],
      evidence: found,
    };
  if (enclosure === null) return { answer: 'not-known', reasons: [{ key: 'home.none' }], evidence: found };
  if (plannedSpeciesId === null)
    return { answer: 'not-known', reasons: [{ key: 'home-fits.noSpecies' }], evidence: found };
  return { answer: 'met', reasons: [{ key: 'home-fits.met' }], evidence: found };
}

function homeProven({ proof }: HomeInput): Answered {
  if (proof === null)
    return {
      answer: 'not-known',
      reasons: [{ key: 'home-proven.none' }],
      evidence: { at: 'proof', on: null, by: null },
    };
  const evidence: Evidence = { at: 'proof', on: proof.on, by: proof.by };
  if (!proof.current) return { answer: 'not-known', reasons: [{ key: 'home-proven.old' }], evidence };
  if (proof.verdict === 'failed') return { answer: 'not-met', reasons: [{ key: 'home-proven.failed' }], evidence };
  if (proof.verdict === 'not-proven')
    return { answer: 'not-known', reasons: [{ key: 'home-proven.not-proven' }], evidence };
  return { answer: 'met', reasons: [{ key: 'home-proven.met' }], evidence };
}

const heaterWord = (heater: Enclosure['heaters'][number]) => ({
  heater: `#heater.${heater.kind}`,
  powerW: heater.powerW,
});

/** Each heater has one, of a kind that suits it; a heater whose pair is not in the facts is not known. */
function thermostats(enclosure: Enclosure, needs: readonly NeedVerdict[], evidence: Evidence): Answered {
  if (enclosure.heaters.length === 0) return { answer: 'met', reasons: [{ key: 'thermostat.noHeater' }], evidence };
  const each = enclosure.heaters.map((heater): { readonly answer: RequirementAnswer; readonly why: ReleaseReason } => {
    const has = one(needs, `thermostat-${heater.id}`)[0];
    const suits = one(needs, `thermostat-kind-${heater.id}`)[0];
    const control = enclosure.thermostats.find((t) => t.id === heater.thermostatId)?.control;
    const blanks = { ...heaterWord(heater), control: `#control.${control ?? 'none'}` };
    if (has?.verdict === 'fails') return { answer: 'not-met', why: { key: 'thermostat.none', blanks } };
    if (suits?.verdict === 'fails') return { answer: 'not-met', why: { key: 'thermostat.wrong', blanks } };
    if (!has || !suits) return { answer: 'not-known', why: { key: 'thermostat.unknown', blanks } };
    return { answer: 'met', why: { key: 'thermostat.suits', blanks } };
  });
  return { ...worstOf(each), evidence };
}

function guards(enclosure: Enclosure, needs: readonly NeedVerdict[], evidence: Evidence): Answered {
  if (enclosure.heaters.length === 0) return { answer: 'met', reasons: [{ key: 'thermostat.noHeater' }], evidence };
  const each = enclosure.heaters.map((heater): { readonly answer: RequirementAnswer; readonly why: ReleaseReason } => {
    const verdict = one(needs, `guard-${heater.id}`)[0]?.verdict ?? 'not-known';
    const blanks = heaterWord(heater);
    if (verdict === 'fails') return { answer: 'not-met', why: { key: 'guard.bare', blanks } };
    if (verdict === 'not-known') return { answer: 'not-known', why: { key: 'guard.unknown', blanks } };
    return { answer: 'met', why: { key: 'guard.met', blanks } };
  });
  return { ...worstOf(each), evidence };
}

/** The worst answer with the reasons that speak for it. */
function worstOf(each: readonly { readonly answer: RequirementAnswer; readonly why: ReleaseReason }[]) {
  const answers = each.map(({ answer }) => answer);
  const answer: RequirementAnswer = answers.includes('not-met')
    ? 'not-met'
    : answers.includes('not-known')
      ? 'not-known'
      : 'met';
  return { answer, reasons: each.filter((found) => found.answer === answer).map(({ why }) => why) };
}

function simple(id: 'two-hides' | 'lock', needs: readonly NeedVerdict[]): ReleaseReason {
  const verdict = one(needs, id)[0]?.verdict ?? 'not-known';
  return { key: `${id}.${answerOf[verdict]}` };
}

function lockReasons(needs: readonly NeedVerdict[]): readonly ReleaseReason[] {
  const gap = one(needs, 'gap')[0]?.verdict ?? 'holds';
  const bad: readonly ReleaseReason[] = gap === 'holds' ? [] : [{ key: `gap.${answerOf[gap]}` }];
  const locked = one(needs, 'lock')[0]?.verdict === 'holds';
  return locked && bad.length > 0 ? bad : [simple('lock', needs), ...bad];
}

function thermometers(needs: readonly NeedVerdict[]): readonly ReleaseReason[] {
  const missing = starting(needs, 'thermometer-').filter((need) => need.verdict !== 'holds');
  if (missing.length === 0) return [{ key: 'thermometer.met' }];
  return missing.map((need) => ({ key: 'thermometer.missing', blanks: { where: `#at.${need.id.slice(12)}` } }));
}

/** What else of heat and mains can hurt: the holder, the load, light at night, the place of the probe. */
const otherSafety = ['night-light-', 'holder-', 'load-', 'probe-place-', 'probe-end-'] as const;

function heaterSafe(needs: readonly NeedVerdict[], evidence: Evidence): Answered {
  const each = otherSafety.flatMap((start) => {
    const verdict = starting(needs, start).map((need) => need.verdict);
    if (verdict.length === 0) return [];
    const answer = answerOf[worstVerdict(verdict)];
    const key = start.slice(0, -1) as 'night-light' | 'holder' | 'load' | 'probe-place' | 'probe-end';
    const why: ReleaseReason = answer === 'met' ? { key: 'heater-safe.met' } : { key: `${key}.${answer}` };
    return [{ answer, why }];
  });
  if (each.length === 0) return { answer: 'met', reasons: [{ key: 'thermostat.noHeater' }], evidence };
  const worst = worstOf(each);
  return { ...worst, reasons: worst.answer === 'met' ? [{ key: 'heater-safe.met' }] : worst.reasons, evidence };
}
