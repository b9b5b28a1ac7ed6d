// From coverage, needs, forecast and diagnosis to one verdict, its reason and the next thing to do. The order is our
// choice: what is surely wrong first, then what nobody has answered, then too little reading, then doubt.
import type { ProvenDial } from '../calibration/dial.ts';
import type { NextReading } from '../calibration/next-reading.ts';
import type { Diagnosis } from '../diagnosis/cause.ts';
import type { LogQuestion } from '../files/understood.ts';
import type { ReadingLog } from '../reading-log.ts';
import type { Coverage } from './coverage.ts';
import type { ForecastNeed } from './forecast-needs.ts';
import type { Ground, How } from './ground.ts';
import type { NextAction, ProofVerdict } from './proof-answer.ts';
import type { ReadNeed } from './read-needs.ts';
import type { ProofRule } from './rule.ts';
import { causeWords, forecastSentence, needSentence, needWords, placeWord } from './words.ts';

export interface Grounds {
  readonly log: ReadingLog;
  readonly rule: ProofRule;
  readonly coverage: Coverage;
  readonly needs: readonly ReadNeed[];
  readonly forecastNeeds: readonly ForecastNeed[];
  readonly diagnosis: Diagnosis;
  readonly questions: readonly LogQuestion[];
  readonly dial: ProvenDial | null;
  readonly nextReadings: readonly NextReading[];
}

export interface Decision {
  readonly verdict: ProofVerdict;
  readonly reason: string;
  readonly reasons: readonly string[];
  readonly ground: Ground;
  /** One for each of the reasons. */
  readonly grounds: readonly Ground[];
  readonly next: NextAction;
}

interface Point {
  readonly verdict: Exclude<ProofVerdict, 'proven'>;
  readonly reason: string;
  readonly ground: Ground;
  readonly next: NextAction;
}

export function decide(g: Grounds): Decision {
  const points = [...failures(g), ...faults(g), ...openQuestions(g), ...tooLittle(g), ...doubts(g)];
  const first = points.find((p) => p.verdict === 'failed') ?? points[0];
  if (first === undefined) {
    const reason = `Proven: ${g.coverage.nights} nights, every need held with its instrument error${g.rule.forecast ? ', and forecast to hold through the year' : ''}.`;
    const held = g.needs.filter((n) => n.state === 'held');
    return {
      verdict: 'proven',
      reason,
      reasons: held.map(needSentence),
      ground: { about: 'proven' },
      grounds: held.map((n) => about(n.id)),
      next: act('release', 'The home is ready. Go on to the examination.', { by: 'ready' }),
    };
  }
  return {
    verdict: first.verdict,
    reason: first.reason,
    reasons: points.filter((p) => p !== first).map((p) => p.reason),
    ground: first.ground,
    grounds: points.filter((p) => p !== first).map((p) => p.ground),
    next: first.next,
  };
}

const act = (id: NextAction['id'], say: string, how: How): NextAction => ({ id, say, how });
const about = (id: ReadNeed['id']): Ground => ({ about: 'need', id });
const coming = (id: ForecastNeed['id']): Ground => ({ about: 'forecast', id });
const wanted = (g: Grounds) => g.needs.filter((n) => n.id !== 'humidity' || g.rule.humidity);

function failures(g: Grounds): Point[] {
  const read = wanted(g).filter((n) => n.state === 'failed');
  const ahead = g.rule.forecast ? g.forecastNeeds.filter((n) => n.verdict === 'fails') : [];
  return [
    ...read.map((n): Point => ({ verdict: 'failed', reason: needSentence(n), ground: about(n.id), next: mend(g, n) })),
    ...ahead.map(
      (n): Point => ({
        verdict: 'failed',
        reason: forecastSentence(n),
        ground: coming(n.id),
        next: mendForecast(g, n),
      }),
    ),
  ];
}

function mend(g: Grounds, n: ReadNeed): NextAction {
  const suspect = g.diagnosis.suspects[0];
  if (suspect)
    return act('mend-fault', `Look first whether ${causeWords[suspect.cause]}.`, { by: 'look', cause: suspect.cause });
  if (n.id === 'basking-surface' || n.id === 'hottest-surface') return dialAction(g);
  if (n.id === 'night-warmth')
    return act(
      'stronger-heater',
      'Raise the night set point; if the heater already runs flat out, a stronger one or insulation.',
      { by: 'night-set-point' },
    );
  if (n.id === 'humidity')
    return act('read-more', 'Change bowl, substrate or vents, then read another day.', { by: 'moisture' });
  return n.side === 'high'
    ? act('cooler-place', 'More vents at the cool end, the heater nearer to its end, or a longer box.', {
        by: 'vents-at-cool-end',
      })
    : act('stronger-heater', 'Cover part of the vents away from the heater, or insulate the cool end.', {
        by: 'cover-vents',
      });
}

function dialAction(g: Grounds): NextAction {
  const d = g.dial;
  if (d === null)
    return act('turn-dial', 'Move the heater or change its power: there is no dial to turn.', { by: 'no-dial' });
  if (d.tooWeakShare > 0.5)
    return act(
      'stronger-heater',
      `No dial setting reaches ${d.aimC.toFixed(1)} °C on the coldest day: a stronger heater or insulation.`,
      { by: 'dial-too-weak' },
    );
  const { low, median, high } = d.adviceC;
  return act(
    'turn-dial',
    `Set the dial from ${d.nowC} °C to ${median.toFixed(1)} °C (likely ${low.toFixed(1)} to ${high.toFixed(1)} °C), then read another night.`,
    { by: 'dial' },
  );
}

function mendForecast(g: Grounds, n: ForecastNeed): NextAction {
  if (n.id === 'hottest-day-cool-end')
    return act('cooler-place', 'Out of the sun, a cooler room, or more vents at the cool end: no heater can cool.', {
      by: 'cooler-room',
    });
  if (n.id === 'coldest-night-warmth') {
    return n.flatOutShare > 0.5
      ? act(
          'stronger-heater',
          'The heater runs flat out on the coldest night: a stronger one without light, insulation, or a warmer room.',
          { by: 'flat-out' },
        )
      : act('turn-dial', 'Raise the night set point.', { by: 'raise-night' });
  }
  return dialAction(g);
}

/** A suspected mistake keeps the door shut even while every reading still holds. */
function faults(g: Grounds): Point[] {
  return g.diagnosis.suspects.slice(0, 2).map(
    (s): Point => ({
      verdict: 'not-proven',
      reason: `The readings look as if ${causeWords[s.cause]}.`,
      ground: { about: 'cause', cause: s.cause },
      next: act('mend-fault', `Look whether ${causeWords[s.cause]}; mend it and read again.`, {
        by: 'look',
        cause: s.cause,
      }),
    }),
  );
}

function openQuestions(g: Grounds): Point[] {
  return g.questions
    .filter((q) => q.id !== 'place' || needsPlace(g))
    .map(
      (q): Point => ({
        verdict: 'not-proven',
        reason: q.say,
        ground: { about: 'question', id: q.id },
        next: act('answer-question', q.say, { by: 'question', id: q.id }),
      }),
    );
}

const needsPlace = (g: Grounds): boolean => wanted(g).some((n) => n.state === 'not-read');

function tooLittle(g: Grounds): Point[] {
  const { coverage: c, rule } = g;
  const out: Point[] = [];
  const point = (reason: string, ground: Ground, next: NextAction) =>
    out.push({ verdict: 'not-proven', reason, ground, next });
  for (const n of wanted(g))
    if (n.state === 'not-read')
      point(
        needSentence(n),
        about(n.id),
        act('read-place', `Put a sensor at the ${needWords[n.id]}.`, { by: 'sensor', need: n.id }),
      );
  if (g.log.kind === 'logger' && c.intervalS > rule.longestIntervalS + 1)
    point(
      `The readings stand ${(c.intervalS / 60).toFixed(0)} minutes apart; at most ${rule.longestIntervalS / 60} are allowed, or a swing is missed.`,
      { about: 'interval' },
      act('read-closer', `Set the logger to ${rule.longestIntervalS / 60} minutes or closer.`, { by: 'step' }),
    );
  for (const hole of c.holes.slice(0, 3)) {
    const hours = ((hole.toS - hole.fromS) / 3600).toFixed(1);
    point(
      `No reading for ${hours} h within the run.`,
      { about: 'hole', hours: Number(hours) },
      act('fill-gap', 'Run it again without a hole.', { by: 'without-hole' }),
    );
  }
  if (c.nights < rule.nights) {
    const more = rule.nights - c.nights;
    point(
      `${c.nights} of ${rule.nights} ${g.log.kind === 'hand' ? 'days' : 'nights'} are covered.`,
      { about: 'nights' },
      act('keep-reading', `Read ${more} more ${more === 1 ? 'night' : 'nights'} without changing anything.`, {
        by: 'nights',
      }),
    );
  }
  return out;
}

function doubts(g: Grounds): Point[] {
  const read = wanted(g).filter((n) => n.state === 'open');
  const ahead = g.rule.forecast ? g.forecastNeeds.filter((n) => n.verdict === 'not-known') : [];
  return [
    ...read.map(
      (n): Point => ({
        verdict: 'not-proven',
        reason: needSentence(n),
        ground: about(n.id),
        next: n.checked
          ? n.id === 'basking-surface'
            ? dialAction(g)
            : mend(g, n)
          : act(
              'check-instrument',
              `Check the instrument at the ${placeWord(n.place)} ${n.quantity === 'rhPct' ? 'above wet salt' : 'in melting ice'}: its error halves.`,
              { by: n.quantity === 'rhPct' ? 'salt' : 'ice', place: n.place ?? 'probe' },
            ),
      }),
    ),
    ...ahead.map(
      (n): Point => ({
        verdict: 'not-proven',
        reason: forecastSentence(n),
        ground: coming(n.id),
        next: moreReading(g, n),
      }),
    ),
  ];
}

function moreReading(g: Grounds, n: ForecastNeed): NextAction {
  const best = g.nextReadings[0];
  if (best === undefined) return mendForecast(g, n);
  const lessPct = Math.round(100 * (1 - best.widthLeftFrac));
  const left = `${lessPct} % less doubt`;
  if (best.kind === 'power' || best.place === null)
    return act('read-more', `Put a plug meter on the heater for a night (${left}).`, { by: 'plug-less', lessPct });
  if (best.kind === 'check')
    return act('check-instrument', `Check the instrument at the ${placeWord(best.place)} in melting ice (${left}).`, {
      by: 'ice-less',
      place: best.place,
      lessPct,
    });
  return act('read-place', `Read the ${placeWord(best.place)} for a ${best.isDay ? 'day' : 'night'} (${left}).`, {
    by: 'read-less',
    place: best.place,
    lessPct,
  });
}
