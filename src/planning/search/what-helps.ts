// Nothing holds: what about the home, its room or its water would have to change so that the nearest kit does?
// Each change is tried on that kit in a few versions of the box; two together where one is not enough.
// Leaves out: kits (the search has tried them) and what a change of room costs.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import { boxGeometry, modelFrom, type SettledBox } from '../../physics/simulate.ts';
import { type Verdict, worstVerdict } from '../../shared/verdict.ts';
import { climateVerdicts } from '../climate-verdicts.ts';
import { drawMembers, type Priors } from '../ensemble.ts';
import { memberAnswer, momentsOf } from '../member.ts';

export interface HelpingChange {
  readonly ids: readonly string[];
  readonly say: string;
  readonly verdict: Verdict;
  /** Share of the versions tried in which every need of climate holds. */
  readonly chanceFrac: number;
  /** Needs that still do not hold. */
  readonly stillOpen: readonly string[];
  readonly enclosure: Enclosure;
}

export interface WhatHelpsInput {
  /** The home with the nearest kit in it. */
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  readonly seed: number;
}

/** Versions tried for each change; enough to tell holds from fails, not for a verdict to rely on. */
export const helpVersions = 10;

interface Change {
  readonly id: string;
  readonly say: string;
  readonly apply: (e: Enclosure) => Enclosure;
}

const roomBy = (day: RoomDay, kelvin: number): RoomDay => ({
  ...day,
  lowC: day.lowC + kelvin,
  highC: day.highC + kelvin,
  ...(day.hourlyC ? { hourlyC: day.hourlyC.map((c) => c + kelvin) } : {}),
});

function changesFor(e: Enclosure): Change[] {
  const { winter, summer } = e.room;
  const wet = e.substrate?.wetFrac ?? 0;
  const wetter = (share: number): Change => ({
    id: `damp-${share}`,
    say: `Keep about ${Math.round(share * 100)} % of the floor damp, away from the heater.`,
    apply: (x) => ({ ...x, substrate: x.substrate && { ...x.substrate, wetFrac: Math.max(share, wet) } }),
  });
  const warmer = (k: number): Change => ({
    id: `winter+${k}`,
    say: `A room ${k} K warmer in winter (${(winter.lowC + k).toFixed(0)} to ${(winter.highC + k).toFixed(0)} °C).`,
    apply: (x) => ({ ...x, room: { ...x.room, winter: roomBy(winter, k) } }),
  });
  const cooler = (k: number): Change => ({
    id: `summer-${k}`,
    say: `Another room, or a cooled one: ${k} K cooler in summer (${(summer.lowC - k).toFixed(0)} to ${(summer.highC - k).toFixed(0)} °C).`,
    apply: (x) => ({ ...x, room: { ...x.room, summer: roomBy(x.room.summer, -k) } }),
  });
  const shade: Change = {
    id: 'shade',
    say: 'Out of the sun, or the glass shaded from outside.',
    apply: (x) => ({
      ...x,
      room: {
        winter: { ...x.room.winter, sunPeakWPerM2: 0 },
        summer: { ...x.room.summer, sunPeakWPerM2: 0 },
      },
    }),
  };
  const dry: Change = {
    id: 'dry-floor',
    say: 'Let the floor dry out, and keep the water in a smaller bowl.',
    apply: (x) => ({
      ...x,
      substrate: x.substrate && { ...x.substrate, wetFrac: 0 },
      bowl: x.bowl && { ...x.bowl, diameterM: x.bowl.diameterM * 0.7 },
    }),
  };
  const sunny = winter.sunPeakWPerM2 > 0 || summer.sunPeakWPerM2 > 0;
  return [
    ...(e.substrate ? [wetter(0.15), wetter(0.35)] : []),
    ...(wet > 0 || e.bowl ? [dry] : []),
    ...(sunny ? [shade] : []),
    warmer(3),
    warmer(6),
    warmer(10),
    cooler(4),
    cooler(8),
    cooler(12),
  ].filter((c) => c.apply(e) !== e);
}

/** Changes that bring the nearest kit further, best first: those after which it holds, then those that raise its chance. */
export function* whatHelps(input: WhatHelpsInput): Generator<HelpingChange, readonly HelpingChange[]> {
  const before = judged(input.enclosure, input);
  const single: HelpingChange[] = [];
  for (const change of changesFor(input.enclosure)) {
    const found = tried([change], input);
    single.push(found);
    yield found;
  }
  const better = single.filter(
    (c) =>
      c.verdict === 'holds' || c.stillOpen.length < before.stillOpen.length || c.chanceFrac > before.chanceFrac + 0.05,
  );
  const enough = better.some((c) => c.verdict === 'holds');
  const pairs: HelpingChange[] = [];
  if (!enough) {
    for (const [a, b] of pairsOf(better, input.enclosure)) {
      const found = tried([a, b], input);
      pairs.push(found);
      yield found;
      if (found.verdict === 'holds') break;
    }
  }
  return [
    ...better,
    ...pairs.filter((p) => better.every((c) => p.stillOpen.length < c.stillOpen.length || p.verdict === 'holds')),
  ].sort(
    (a, b) =>
      order[a.verdict] - order[b.verdict] || a.stillOpen.length - b.stillOpen.length || b.chanceFrac - a.chanceFrac,
  );
}

const order: Readonly<Record<Verdict, number>> = { holds: 0, 'not-known': 1, fails: 2 };
const familyOf = (id: string): string => id.replace(/[-+.\d]+$/, '');

/** The strongest change of each family with that of every other family. */
function pairsOf(better: readonly HelpingChange[], e: Enclosure): (readonly [Change, Change])[] {
  const all = changesFor(e);
  const best = new Map<string, Change>();
  for (const found of better) {
    const change = all.find((c) => c.id === found.ids[0]);
    if (change) best.set(familyOf(change.id), change);
  }
  const list = [...best.values()];
  return list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b] as const));
}

function tried(changes: readonly Change[], input: WhatHelpsInput): HelpingChange {
  const enclosure = changes.reduce((e, c) => c.apply(e), input.enclosure);
  return {
    ids: changes.map((c) => c.id),
    say: changes.map((c) => c.say).join(' And: '),
    ...judged(enclosure, input),
    enclosure,
  };
}

function judged(
  enclosure: Enclosure,
  input: WhatHelpsInput,
): Pick<HelpingChange, 'verdict' | 'chanceFrac' | 'stillOpen'> {
  const geometry = boxGeometry(enclosure, input.materials);
  const moments = momentsOf(enclosure);
  let warm: SettledBox | undefined;
  const members = drawMembers(input.priors, helpVersions, input.seed).map((parameters) => {
    const answer = memberAnswer(modelFrom(geometry, parameters), moments, input.climate, warm);
    warm ??= answer.settled;
    return answer;
  });
  const needs = climateVerdicts(enclosure, input.climate, members, moments);
  return {
    verdict: worstVerdict(needs.map((n) => n.verdict)),
    chanceFrac: Math.min(...needs.map((n) => n.shareHolding ?? 0)),
    stillOpen: needs.filter((n) => n.verdict !== 'holds').map((n) => n.title),
  };
}
