// The sentences of a proof in the language and units of the reader, made from what its reasons are about.
// An answer kept before reasons said what they are about keeps its English sentence.
import type { Measure } from '../../shared/measure.ts';
import type { Blanks } from '../../shared/pattern.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import type { Ground, How } from '../verdict/ground.ts';
import type { ProofAnswer } from '../verdict/proof-answer.ts';
import type { ProofSaidKey } from './proof-en.ts';

export type SayProof = (key: ProofSaidKey, blanks?: Blanks) => string;

export interface Sentence {
  readonly text: string;
  /** Set when the sentence stayed as the proof wrote it. */
  readonly lang: 'en' | undefined;
}

export interface Speech {
  readonly t: SayProof;
  readonly measure: Measure;
  readonly answer: ProofAnswer;
}

type Of = 'percent' | 'temperature';

export function wantedWords(
  { t, measure }: Pick<Speech, 't' | 'measure'>,
  low: number | null,
  high: number | null,
  of: Of,
): string {
  if (low !== null && high !== null) return measure.span(of, low, high, of === 'percent' ? 0 : 1);
  return low !== null
    ? t('proof.atLeast', { value: measure.text(of, low) })
    : t('proof.atMost', { value: measure.text(of, high ?? 0) });
}

const kept = (say: string, measure: Measure): Sentence => ({ text: proseInUnits(say, measure), lang: 'en' });

export function reasonWords(speech: Speech, ground: Ground | undefined, say: string): Sentence {
  const text = ground === undefined ? null : groundText(speech, ground);
  return text === null ? kept(say, speech.measure) : { text, lang: undefined };
}

export function nextWords(speech: Speech): Sentence {
  const { how, say } = speech.answer.next;
  const text = how === undefined ? null : howText(speech, how);
  return text === null ? kept(say, speech.measure) : { text, lang: undefined };
}

function groundText(speech: Speech, ground: Ground): string | null {
  const { t, measure, answer } = speech;
  const { coverage, rule } = answer;
  if (ground.about === 'proven') return t('proof.ground.proven', { nights: coverage.nights });
  if (ground.about === 'nights') return t('proof.ground.nights', { nights: coverage.nights, of: rule.nights });
  if (ground.about === 'interval')
    return t('proof.ground.interval', {
      minutes: measure.number(coverage.intervalS / 60, 0),
      most: measure.number(rule.longestIntervalS / 60, 0),
    });
  if (ground.about === 'hole') return t('proof.ground.hole', { hours: measure.number(ground.hours, 1) });
  if (ground.about === 'cause') return t('proof.ground.cause', { cause: t(`proof.cause.${ground.cause}`) });
  if (ground.about === 'question') return t(`proof.ground.question.${ground.id}`);
  if (ground.about === 'need') return needText(speech, ground.id);
  const n = answer.forecastNeeds.find((one) => one.id === ground.id);
  if (n === undefined) return null;
  const found = t('proof.found', {
    value: measure.text('temperature', n.foundC.median),
    low: measure.text('temperature', n.foundC.low),
    high: measure.text('temperature', n.foundC.high),
    room: measure.text('temperature', n.roomC),
    share: Math.round(100 * n.shareHolding),
  });
  const wanted = t('proof.wanted', { wanted: wantedWords(speech, n.low, n.high, 'temperature') });
  return t('proof.ground.forecast', { name: t(`proof.coming.${n.id}`), found, wanted });
}

function needText(speech: Speech, id: ProofAnswer['needs'][number]['id']): string | null {
  const { t, measure, answer } = speech;
  const n = answer.needs.find((one) => one.id === id);
  if (n === undefined) return null;
  const of: Of = n.quantity === 'rhPct' ? 'percent' : 'temperature';
  const wanted = wantedWords(speech, n.low, n.high, of);
  const name = t(`proof.need.${n.id}`);
  if (n.worst === null || n.margin === null || n.place === null) return t('proof.ground.not-read', { name, wanted });
  const apart = (v: number) => (of === 'percent' ? measure.number(v, 1) : measure.text('difference', v));
  return t(`proof.ground.${n.state === 'open' ? (n.margin >= 0 ? 'inside' : 'outside') : n.state}`, {
    name,
    wanted,
    worst: measure.text(of, n.worst, 1),
    place: t(`proof.place.${n.place}`),
    error: apart(n.error),
    by: apart(Math.abs(n.margin)),
  });
}

function howText({ t, measure, answer }: Speech, how: How): string | null {
  const { dial, rule, coverage } = answer;
  const c = (v: number) => measure.text('temperature', v);
  if (how.by === 'dial' || how.by === 'dial-too-weak') {
    if (dial === null) return null;
    return t(`proof.how.${how.by}`, {
      aim: c(dial.aimC),
      now: c(dial.nowC),
      value: c(dial.adviceC.median),
      low: c(dial.adviceC.low),
      high: c(dial.adviceC.high),
    });
  }
  if (how.by === 'look') return t('proof.how.look', { cause: t(`proof.cause.${how.cause}`) });
  if (how.by === 'question') return t(`proof.ground.question.${how.id}`);
  if (how.by === 'sensor') return t('proof.how.sensor', { need: t(`proof.need.${how.need}`) });
  if (how.by === 'step') return t('proof.how.step', { most: measure.number(rule.longestIntervalS / 60, 0) });
  if (how.by === 'nights') return t('proof.how.nights', { count: rule.nights - coverage.nights });
  if (how.by === 'ice' || how.by === 'salt') return t(`proof.how.${how.by}`, { place: t(`proof.place.${how.place}`) });
  if (how.by === 'plug-less') return t('proof.morePower', { percent: measure.text('percent', how.lessPct) });
  if (how.by === 'ice-less' || how.by === 'read-less')
    return t(how.by === 'ice-less' ? 'proof.moreCheck' : 'proof.morePlace', {
      place: t(`proof.place.${how.place}`),
      percent: measure.text('percent', how.lessPct),
    });
  return t(`proof.how.${how.by}`);
}
