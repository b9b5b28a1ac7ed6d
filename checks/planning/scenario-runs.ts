// What the program says of each scenario, by the names of scenarios.json: numbers, and 1 or 0 for yes and no.

import type { AnimalEvent, EventBodies } from '../../src/animal/event.ts';
import { treatmentState } from '../../src/animal/quarantine.ts';
import { judgeEnclosure } from '../../src/husbandry/judge-enclosure.ts';
import { lawChecks, type SaleFacts, saleAnswer } from '../../src/husbandry/law-checks.ts';
import type { Place } from '../../src/husbandry/law-rule.ts';
import { askedBy, measure, servesUpToM } from '../../src/husbandry/space.ts';
import type { SteadyAnswer } from '../../src/physics/answer.ts';
import type { Enclosure } from '../../src/physics/enclosure.ts';
import { buildModel, simulateDay, solveSteady } from '../../src/physics/simulate.ts';
import type { FaultRehearsal } from '../../src/planning/faults/fault-answer.ts';
import { rehearseFaults } from '../../src/planning/faults/rehearse.ts';
import { momentsOf } from '../../src/planning/member.ts';
import { planEnclosure } from '../../src/planning/plan.ts';
import { judgeHome } from '../../src/planning/search/judge-home.ts';
import type { SearchAnswer } from '../../src/planning/search/search-answer.ts';
import { searchKitsNow } from '../../src/planning/search/search-kits.ts';
import { settingOf } from '../../src/planning/search/solve-task.ts';
import { spreadHomes } from '../../src/planning/search/spread-homes.ts';
import { whatHelps } from '../../src/planning/search/what-helps.ts';
import { stageRoads } from '../../src/planning/stages/stage-road.ts';
import { understandLog } from '../../src/proving/files/understand-log.ts';
import { loadCareFacts } from '../../src/records/animal-facts.ts';
import {
  conservatory,
  facts,
  flat,
  foamed,
  growing,
  grown,
  loft,
  meshCovered,
  meshHouse,
  priors,
  searchIn,
  tub,
} from './homes.ts';
import { absoluteHumidity } from './moist-mass.ts';

export type Found = Readonly<Record<string, number>>;
const yes = (x: boolean): number => (x ? 1 : 0);
const today = '2026-11-24';

/** Mean of the air of the whole box [degC]. */
function meanAirC(a: SteadyAnswer): number {
  const all = a.columns.airC.flat();
  return all.reduce((s, v) => s + v, 0) / all.length;
}

function flatOut(e: Enclosure, powerW: number, roomC: number, rhPct: number): SteadyAnswer {
  const one = { ...e, heaters: e.heaters.slice(0, 1).map((h) => ({ ...h, powerW })) };
  return solveSteady(buildModel(one, facts.materials), {
    roomC,
    roomRhPct: rhPct,
    sunWPerM2: 0,
    isDay: true,
    fixedW: [powerW],
  });
}

/** Watts at which the mean air is this warm, by halving. */
function wattsForMeanAir(e: Enclosure, roomC: number, airC: number): number {
  let low = 0;
  let high = 600;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (meanAirC(flatOut(e, middle, roomC, 50)) < airC) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function rehearsed(e: Enclosure, only: readonly string[], versions = 3): FaultRehearsal {
  const { climate } = searchIn(e);
  const run = rehearseFaults({
    enclosure: e,
    climate,
    materials: facts.materials,
    priors,
    cases: facts.faultCases,
    versions,
    seed: 1,
    only,
  });
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

const planOf = (e: Enclosure, members = 16) => {
  const { climate } = searchIn(e);
  return planEnclosure({ enclosure: e, climate, materials: facts.materials, priors, members, seed: 1 });
};
const share = (e: Enclosure, need: string): number =>
  planOf(e).needs.find((n) => n.id === need)?.shareHolding ?? Number.NaN;
const withWatts = (e: Enclosure, powerW: number): Enclosure => ({
  ...e,
  heaters: e.heaters.map((h, i) => (i === 0 ? { ...h, powerW } : h)),
});
const holding = (a: SearchAnswer): number => a.choices.filter((c) => c.verdict === 'holds').length;

function easyFlat(): Found {
  const answer = searchKitsNow(searchIn(flat));
  const moments = momentsOf(flat);
  const night = (w: number) => {
    const day = solveSteady(buildModel(withWatts(flat, w), facts.materials), moments.winterDay);
    return day.heaterW[0]! / w;
  };
  const awc = measure(askedBy(facts.standards['awc-aim']!.rule, 0.95), flat.box);
  const faults = rehearsed(flat, ['H2', 'H4', 'H5', 'H19', 'H20']);
  const harm = (id: string) => yes((faults.findings.find((f) => f.id === id)?.first ?? null) !== null);
  const frost: Enclosure = { ...flat, room: { ...flat.room, winter: { ...flat.room.winter, lowC: 13, highC: 16 } } };
  return {
    kitsThatHold: holding(answer),
    sixtyWattShare: share(withWatts(flat, 60), 'basking-surface'),
    dutyOf100: night(100),
    dutyOf150: night(150),
    awcDepthShortCm: (awc.short.find((s) => s.side === 'width')!.asked - flat.box.depthM) * 100,
    awcLengthShort: yes(awc.short.some((s) => s.side === 'length')),
    stuckOnHarms: harm('H2'),
    lampDeadHarms: harm('H4'),
    probeOutHarms: harm('H5'),
    heatWaveHarms: harm('H19'),
    sixHoursWithoutPowerWarmestC: faults.powerCut.after.find((a) => a.hours === 6)!.warmestC,
    frostNightShare150: share(frost, 'night-warmth'),
  };
}

async function coldLoft(): Promise<Found> {
  const plan = planOf(withWatts(loft, 100));
  const day = simulateDay(buildModel(withWatts(loft, 100), facts.materials), loft.room.winter);
  const wanted = searchIn(loft).climate.nightMinC.low;
  const cold = day.places['warm-hide']!.filter((c) => c! < wanted).length / (day.hours.length / 24);
  const search = searchIn(loft);
  const answer = searchKitsNow(search);
  const cut = rehearsed(loft, ['H20']);
  const rows = cut.findings[0]!.rows;
  // half of the box's warmth above the room gone: its middle, for the air by the heater loses its first heat at once
  const rise = (r: (typeof rows)[number]) => (r.warmestC + r.coolestC) / 2 - r.roomC;
  const at = rows.findIndex((r) => rise(r) <= rise(rows[0]!) / 2);
  const [before, after] = [rows[at - 1]!, rows[at]!];
  const part = (rise(before) - rise(rows[0]!) / 2) / (rise(before) - rise(after));
  const halfGoneH = before.hour + part * (after.hour - before.hour);
  const helps = await whatHelps(
    { ...search, choice: { ...answer.choices[0]!, enclosure: withWatts(loft, 100), boxId: 'drawn', changes: [] } },
    spreadHomes([async (home) => judgeHome(home, settingOf(search))], async () => {}),
  );
  return {
    nightShareWith100: plan.needs.find((n) => n.id === 'night-warmth')!.shareHolding!,
    hoursBelowTarget: cold,
    meanAirWith100C: meanAirC(flatOut(loft, 100, 8, 55)),
    wattsForMean24: wattsForMeanAir(loft, 8, 24),
    wattsForMean24Foamed: wattsForMeanAir(foamed(loft), 8, 24),
    lossWPerKFoamedOverBare: wattsForMeanAir(foamed(loft), 8, 24) / 16 / (wattsForMeanAir(loft, 8, 24) / 16),
    foamHelpsNightC:
      flatOut(foamed(loft), 100, 8, 55).places['warm-hide']! - flatOut(loft, 100, 8, 55).places['warm-hide']!,
    bestKitIsInsulated: yes(answer.choices[0]?.changes.includes('insulated') ?? false),
    halfWarmthGoneH: halfGoneH,
    warmerRoomIsAmongFixes: yes(helps!.some((c) => c.steps.some((s) => s.id === 'warmer-winter'))),
  };
}

function hotConservatory(): Found {
  const answer = searchKitsNow(searchIn(conservatory));
  const first = answer.choices[0]!;
  const noon = momentsOf(conservatory).summerDay;
  const model = buildModel(conservatory, facts.materials);
  const lit = solveSteady(model, { ...noon, sunWPerM2: 400, fixedW: [0] });
  return {
    kitsThatHold: holding(answer),
    coolEndShare: first.needs.find((n) => n.id === 'cool-end-summer')!.shareHolding!,
    saysNoHeaterCanCool: yes(first.needs.some((n) => n.reasons.some((r) => r.includes('No heater can cool')))),
    noneIsSaid: yes(answer.none?.startsWith('No kit of this shelf holds.') ?? false),
    sunThroughGlassW: lit.balance.heatIn,
  };
}

function starterTub(): Found {
  const steady = flatOut(tub, 12, 19, 45);
  const judged = judgeEnclosure(tub, facts.species['california-kingsnake']!, facts.standards['home-third']!, facts);
  const bare = judgeEnclosure({ ...tub, thermometers: [] }, facts.species['california-kingsnake']!, null, facts);
  const held = (list: typeof judged, id: string) => list.find((n) => n.id === id)?.verdict;
  const road = stageRoads({
    ...searchIn(tub, 2),
    standard: facts.standards['home-third']!,
    animal: tub.animal!,
    care: loadCareFacts().facts,
    years: 4,
  });
  let step = road.next();
  while (!step.done) step = road.next();
  return {
    airRiseK: meanAirC(steady) - 19,
    patchRiseK: steady.places['basking-surface']! - 19,
    probeBetweenMatAndFloor: yes(judged.some((n) => n.id.startsWith('probe-place') && n.verdict === 'holds')),
    surfaceThermometerRequired: yes(held(bare, 'thermometer-basking') === 'fails'),
    gapVerdictHolds: yes(held(judged, 'gap') === 'holds'),
    moveUpYear: step.value.stepwise.stages[0]!.outgrown!.median,
    tubServesToCm: servesUpToM(facts.standards['home-third']!, tub.box) * 100,
    soldToSeventeenInEngland: yes(sale('england', 'california-kingsnake', { buyerAgeYears: 17 }).answer !== 'blocked'),
    blockedInGermany: yes(sale('germany', 'california-kingsnake', { buyerAgeYears: 30 }).answer === 'blocked'),
  };
}

function sale(place: Place, speciesId: string, part: Partial<SaleFacts>) {
  const rules = facts.law;
  const all: SaleFacts = {
    place,
    speciesId,
    annex: 'none',
    buyerAgeYears: 30,
    guardianConsents: null,
    underTreatment: false,
    vetSaysFit: null,
    papersThere: true,
    bothLicensed: true,
    ...part,
  };
  const findings = lawChecks(rules, all, today);
  return {
    findings,
    answer: saleAnswer(findings.filter((f) => f.answer === 'blocked' || f.ruleId.includes('treatment'))),
  };
}

function openMesh(): Found {
  const of = (e: Enclosure) => {
    const moments = momentsOf(e);
    return solveSteady(buildModel(e, facts.materials), { ...moments.winterDay, holdBaskingC: 30 });
  };
  const open = of(meshHouse);
  const covered = of(meshCovered);
  const box = meshHouse.box;
  const volumeM3 = box.lengthM * box.depthM * box.heightM;
  const neededGPerH = (a: SteadyAnswer) =>
    a.airChangePerH * volumeM3 * (absoluteHumidity(27, 75) - absoluteHumidity(20, 35));
  const plan = planOf(meshHouse);
  const damp = plan.needs.find((n) => n.id === 'humidity-winter')!;
  return {
    humidityShare: damp.shareHolding!,
    saysGramsPerDay: yes(damp.reasons.some((r) => /g of water a day/.test(r))),
    neededGPerHPerAirChange: neededGPerH(open) / open.airChangePerH,
    neededKgPerDay: (neededGPerH(open) * 24) / 1000,
    airChangePerH: open.airChangePerH,
    coveringRaisesRhPct: covered.coolRhPct - open.coolRhPct,
    coveringRaisesCoolAirK:
      meanAirC(solveSteady(buildModel(meshCovered, facts.materials), sameWatts(open))) - meanAirC(open),
    lidRuleFails: yes(
      judgeEnclosure(meshHouse, facts.species.rainbow!, null, facts).some(
        (n) => n.id === 'lid-humidity' && n.verdict === 'fails',
      ),
    ),
  };
}

const sameWatts = (a: SteadyAnswer) => ({
  roomC: a.roomC,
  roomRhPct: meshHouse.room.winter.rhPct,
  sunWPerM2: 0,
  isDay: true,
  fixedW: a.heaterW,
});

function growingPython(): Found {
  const now = askedBy(facts.standards['awc-aim']!.rule, 1.4);
  const later = askedBy(facts.standards['awc-aim']!.rule, 2.0);
  const full = askedBy(facts.standards['vet-full-length']!.rule, 1.4);
  const old = share(
    withWatts({ ...grown, heaters: grown.heaters.slice(0, 1), thermostats: grown.thermostats }, 100),
    'night-warmth',
  );
  const cold = { ...grown, room: growing.room };
  return {
    oneLengthFailsNow: yes(measure(full, growing.box).short.length > 0),
    aimNowLengthCm: now.lengthM! * 100,
    aimNowWidthCm: now.widthM! * 100,
    aimNowHeightCm: now.heightM! * 100,
    aimAdultLengthCm: later.lengthM! * 100,
    aimAdultWidthCm: later.widthM! * 100,
    aimAdultHeightCm: later.heightM! * 100,
    old100WNightShare: old,
    wattsForMeanAir8AboveInLarge: wattsForMeanAir(cold, 18, 26),
  };
}

/** A written entry of the animal's book. */
const entry = <K extends keyof EventBodies>(kind: K, on: string, body: EventBodies[K]): AnimalEvent =>
  ({ id: `${kind}-${on}`, kind, on, at: `${on}T09:00:00Z`, body, by: 'scenario' }) as unknown as AnimalEvent;

function rescue(): Found {
  const start = '2026-11-12';
  const events = [entry('treatment', start, { step: 'start', what: 'as the vet wrote', amount: '', vet: 'vet' })];
  const running = treatmentState(events, today).running.length > 0;
  const from = (place: Place, vetSaysFit: boolean | null) =>
    sale(place, 'corn', { underTreatment: running, vetSaysFit }).findings.find((f) => f.ruleId.endsWith('-treatment'))!
      .answer;
  return {
    treatmentRuns: yes(running),
    englandBlocked: yes(from('england', true) === 'blocked'),
    scotlandBlockedWithoutVet: yes(from('scotland', null) === 'blocked'),
    scotlandAllowedWithVet: yes(from('scotland', true) === 'allowed'),
  };
}

function threeShops(): Found {
  const cells = (text: string, delimiter: string) =>
    text
      .trim()
      .split('\n')
      .map((line) => line.split(delimiter));
  const read = (text: string, delimiter: ',' | ';') =>
    understandLog(cells(text, delimiter), { encoding: 'utf-8', delimiter });
  const rows = (make: (hour: number) => string) => Array.from({ length: 30 }, (_, h) => make(h)).join('\n');
  const pad = (n: number) => String(n).padStart(2, '0');
  const comma = read(
    `Date,Temp (°C)\n${rows((h) => `${pad(13 + Math.floor(h / 24))}/11/2026 ${pad(h % 24)}:00,${(24 + (h % 5) / 10).toFixed(1)}`)}`,
    ',',
  );
  const ampm = read(
    `Date,Temp (°F)\n${rows((h) => `11/${13 + Math.floor(h / 24)}/2026 ${((h + 11) % 12) + 1}:00 ${h % 24 < 12 ? 'AM' : 'PM'},${(75.2 + (h % 5) / 10).toFixed(1)}`)}`,
    ',',
  );
  const semicolon = read(
    `Datum;Temperatur °C\n${rows((h) => `${pad(13 + Math.floor(h / 24))}.11.2026 ${pad(h % 24)}:00;${(24 + (h % 5) / 10).toFixed(1).replace('.', ',')}`)}`,
    ';',
  );
  const mean = (r: typeof comma) => {
    if (!r.ok) return Number.NaN;
    const values = r.value.log.channels[0]!.values.filter((v): v is number => v !== null);
    return values.reduce((s, v) => s + v, 0) / values.length;
  };
  return {
    commaMeanC: mean(comma),
    ampmMeanC: mean(ampm),
    semicolonMeanC: mean(semicolon),
    semicolonDecimalComma: yes(semicolon.ok && semicolon.value.decimal === ','),
    ampmMonthFirst: yes(ampm.ok && ampm.value.dateOrder === 'mdy'),
    kingsnakeRefusedInGermany: yes(sale('germany', 'california-kingsnake', {}).answer === 'blocked'),
    kingsnakeAllowedInScotland: yes(sale('scotland', 'california-kingsnake', {}).answer !== 'blocked'),
    treatmentRuleDiffers: yes(
      facts.law.find((r) => r.id === 'england-treatment')!.effect.kind === 'under-treatment' &&
        JSON.stringify(facts.law.find((r) => r.id === 'england-treatment')!.effect) !==
          JSON.stringify(facts.law.find((r) => r.id === 'scotland-treatment')!.effect),
    ),
  };
}

export const scenarioRuns: Readonly<Record<string, () => Found | Promise<Found>>> = {
  SC1: easyFlat,
  SC2: coldLoft,
  SC3: hotConservatory,
  SC4: starterTub,
  SC5: openMesh,
  SC6: growingPython,
  SC7: rescue,
  SC8: threeShops,
};
