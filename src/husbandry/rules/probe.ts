// Is each thermostat's probe where it tells the truth: on a side or back wall as high as data/ says, away from the basking
// site and the cool end; for a heat mat between mat and floor. Leaves out: what the dial should say (planning).

import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';
import { coded, type Saying } from '../coded.ts';
import { cm, mm } from '../display.ts';
import type { Facts } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { type Basis, basisOf, commonPractice, need, type Rule, warmEndOf } from '../rule.ts';
import { rangeOfFact } from '../species-facts.ts';

/** Height above the floor (bottom panel or top of the substrate) when data/ has no row of it, and how near a wall counts
 *  as on it [m]. 100 to 150 mm is common practice; 30 mm, the cool third and the perch are our choice. */
export const probePlace = { lowM: 0.1, highM: 0.15, onWallM: 0.03, coolShare: 1 / 3, nearPerchM: 0.15 } as const;

const say = coded('probe', {
  mat: 'Between the mat and the floor: the animal cannot shift it or lie on it.',
  matElsewhere: 'With a heat mat the probe belongs between the mat and the floor it heats.',
  matMove: 'Tape the probe flat between the mat and the tub.',
  matForOther: 'The probe lies between a mat and the floor, but a heater above is on the same thermostat.',
  onFloor: 'The probe lies on the floor, where the animal lies on it or pushes it aside and it misreads.',
  front: 'The probe is on the front, where the glass is cold and the door moves it.',
  loose: 'The probe hangs free in the box: it swings, and the animal moves it.',
  low: (z: string) => `At ${z} the animal can lie on it.`,
  high: (z: string) => `At ${z} it reads the warm air near the lid, not the air the animal lives in.`,
  coolEnd: 'The probe is at the cool end: the warm end overshoots before it notices.',
  well: (band: string) => `On a wall, ${band} up.`,
  atWarm: 'Away from the cool end.',
  perch: 'It hangs higher than usual, beside a high perch: right if the animal basks there, but not proven.',
  perchReading: 'a day of readings at the perch and at the floor below it',
  wantMat: 'between mat and floor',
  wantWall: (band: string) => `on a side or back wall, ${band} up`,
  wantEnd: 'outside the coolest third of the length',
  fromWarm: (length: string) => `${length} from the warm wall`,
  placed: (_at: string, at: string, x: string, z: string) => `${at}, ${x} from the left, ${z} up`,
  move: (band: string) =>
    `Fix it to a side or back wall, ${band} above the floor, at the warm end but not at the basking site.`,
});

interface Band {
  readonly lowM: number;
  readonly highM: number;
  readonly words: string;
  readonly basis: Basis;
}

/** How high up a wall the probe belongs. */
function bandOf(facts: Facts): Band {
  const fact = facts.care.thermostatProbeMm;
  const range = rangeOfFact(fact);
  const lowM = range ? range.low / 1000 : probePlace.lowM;
  const highM = range ? range.high / 1000 : probePlace.highM;
  return {
    lowM,
    highM,
    words: `${Math.round(lowM * 1000)} to ${mm(highM)}`,
    basis: range ? basisOf(range) : commonPractice,
  };
}

const drives = (enclosure: Enclosure, t: Thermostat): readonly Heater[] =>
  enclosure.heaters.filter((heater) => heater.thermostatId === t.id);

/** The place of one probe in words, or null when it is as it should be. */
function misplaced(enclosure: Enclosure, t: Thermostat, band: Band): Saying | null {
  const { box, substrate } = enclosure;
  const { xM, yM, zM, at } = t.probe;
  if (at === 'mat') return say.matForOther;
  if (at === 'floor') return say.onFloor;
  const side = xM <= probePlace.onWallM || xM >= box.lengthM - probePlace.onWallM;
  const back = yM >= box.depthM - probePlace.onWallM;
  if (!side && !back) return yM <= probePlace.onWallM ? say.front : say.loose;
  const above = zM - (substrate?.depthM ?? 0);
  const fits = [zM, above].some((z) => z >= band.lowM - 1e-9 && z <= band.highM + 1e-9);
  if (fits) return null;
  return above < band.lowM ? say.low(mm(above)) : say.high(mm(above));
}

/** High beside a perch where a climbing animal basks: neither the usual height nor plainly wrong. */
function besidePerch(enclosure: Enclosure, t: Thermostat, band: Band): boolean {
  const { perch, box } = enclosure;
  const onWall =
    t.probe.xM <= probePlace.onWallM ||
    t.probe.xM >= box.lengthM - probePlace.onWallM ||
    t.probe.yM >= box.depthM - probePlace.onWallM;
  const high = t.probe.zM > band.highM && t.probe.at !== 'floor' && t.probe.at !== 'mat';
  return perch !== null && onWall && high && Math.abs(t.probe.zM - perch.zM) <= probePlace.nearPerchM + 1e-9;
}

function place(enclosure: Enclosure, t: Thermostat, heaters: readonly Heater[], band: Band): NeedVerdict {
  const matOnly = heaters.every((heater) => heater.kind === 'heat-mat');
  const wrong = matOnly ? (t.probe.at === 'mat' ? null : say.matElsewhere) : misplaced(enclosure, t, band);
  const perched = wrong !== null && !matOnly && besidePerch(enclosure, t, band);
  return need(
    {
      id: `probe-place-${t.id}`,
      group: 'safety',
      title: 'The probe in the right place',
      verdict: perched ? 'not-known' : wrong ? 'fails' : 'holds',
      ...(perched ? { settledBy: say.perchReading } : {}),
      wanted: matOnly ? say.wantMat : say.wantWall(band.words),
      found: say.placed(t.probe.at, t.probe.at, cm(t.probe.xM), mm(t.probe.zM)),
      reasons: [perched ? say.perch : (wrong ?? (matOnly ? say.mat : say.well(band.words)))],
      fixes: [matOnly ? say.matMove : say.move(band.words)],
    },
    matOnly ? commonPractice : band.basis,
  );
}

function end(enclosure: Enclosure, t: Thermostat, heaters: readonly Heater[], band: Band): readonly NeedVerdict[] {
  const warm = warmEndOf(enclosure);
  if (!warm || heaters.every((heater) => heater.kind === 'heat-mat')) return [];
  const fromWarm = (warm === 'left' ? t.probe.xM : enclosure.box.lengthM - t.probe.xM) / enclosure.box.lengthM;
  const cool = fromWarm > 1 - probePlace.coolShare + 1e-9;
  return [
    need(
      {
        id: `probe-end-${t.id}`,
        group: 'safety',
        title: 'The probe not at the cool end',
        verdict: cool ? 'fails' : 'holds',
        wanted: say.wantEnd,
        found: say.fromWarm(cm(fromWarm * enclosure.box.lengthM)),
        reasons: [cool ? say.coolEnd : say.atWarm],
        fixes: [say.move(band.words)],
      },
      commonPractice,
    ),
  ];
}

export const probeRule: Rule = (enclosure, _species, _standard, facts) => {
  const band = bandOf(facts);
  return enclosure.thermostats.flatMap((t) => {
    const heaters = drives(enclosure, t);
    return heaters.length === 0 ? [] : [place(enclosure, t, heaters, band), ...end(enclosure, t, heaters, band)];
  });
};
