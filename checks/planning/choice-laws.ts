// What must be true of every answer of the kit search, found out by other ways than the search's own: the home planned as
// it stands, the day run through time, the bill added up by hand. Each law gives what breaks it, in words; none = kept.
import { judgeEnclosure } from '../../src/husbandry/judge-enclosure.ts';
import type { Enclosure, RoomDay } from '../../src/physics/enclosure.ts';
import { boxGeometry, modelFrom, simulateDay } from '../../src/physics/simulate.ts';
import { enclosureFrom } from '../../src/physics/validate-enclosure.ts';
import { midAllowanceK, summerAllowanceK } from '../../src/planning/climate-verdicts.ts';
import { drawMembers } from '../../src/planning/ensemble.ts';
import { type MemberAnswer, memberAnswer, momentsOf } from '../../src/planning/member.ts';
import { planEnclosure } from '../../src/planning/plan.ts';
import { kitNeeds } from '../../src/planning/search/judge-kit.ts';
import type { KitChoice, SearchAnswer } from '../../src/planning/search/search-answer.ts';
import type { SearchInput } from '../../src/planning/search/search-input.ts';

/** Kits are read off lines, plans are solved: a line is off by a third of a kelvin at most, or three points of humidity
 *  (search.test.ts); dials are told in halves of a degree. */
export const lineK = 0.33;
export const linePct = 3;
const halfDialK = 0.25;

const short = (n: number): string => n.toFixed(3);

/** Every home that is offered can be opened as a plan. */
export function opensAsPlan(enclosure: Enclosure, { facts }: SearchInput, what: string): string[] {
  const read = enclosureFrom(JSON.parse(JSON.stringify(enclosure)), facts.materials);
  return read.ok ? [] : read.faults.map((f) => `${what}: ${f.code} ${f.field} ${f.got}, allowed ${f.allowed}`);
}

/** How far each need of a planned version is from its limit, by the plan's own words for what is wanted;
 *  in the order of kitNeeds. */
function plannedMargins(m: MemberAnswer, { climate }: SearchInput): number[] {
  const within = (v: number, low: number, high: number) => Math.min(v - low, high - v);
  const { baskingSurfaceC: b, coolAirC: c, rhPct: rh } = climate;
  const night = m.winterNight.places['warm-hide'] ?? m.winterNight.places['warm-air']!;
  const reach = [m.winterDay, m.untrimmedDay, m.winterNight, m.summerDay, m.summerNight, m.midDay, m.midNight]
    .concat([m.turnDay, m.turnNight].filter((t) => t !== null))
    .map((a) => a.places['hottest-reachable']!);
  return [
    within(m.winterDay.places['basking-surface']!, b.low - 0.05, b.high + 0.05),
    night - climate.nightMinC.low,
    within(m.winterDay.places['cool-air']!, c.low, c.high),
    within(m.midDay.places['cool-air']!, c.low, c.high + midAllowanceK),
    c.high + summerAllowanceK - m.summerDay.places['cool-air']!,
    climate.reachableMaxC.alarm - Math.max(...reach),
    within(m.winterDay.coolRhPct, rh.low, rh.high),
    within(m.summerDay.coolRhPct, rh.low, rh.high),
    m.winterNight.glassDewMarginK,
  ];
}

export interface PlanCompared {
  readonly breaches: readonly string[];
  readonly needs: number;
  /** Needs on which search and plan say another word, each within what a line may be off. */
  readonly otherWord: number;
}

/** The kit put into the plan gets the verdicts that the search gave it. */
export function plannedAlike(choice: KitChoice, input: SearchInput): PlanCompared {
  const { climate, facts, priors, members, seed } = input;
  const { enclosure } = choice;
  const plan = planEnclosure({ enclosure, climate, materials: facts.materials, priors, members, seed });
  const geometry = boxGeometry(enclosure, facts.materials);
  const moments = momentsOf(enclosure);
  const planned = drawMembers(priors, members, seed).map((p) =>
    plannedMargins(memberAnswer(modelFrom(geometry, p), moments, climate), input),
  );
  const breaches: string[] = [];
  let otherWord = 0;
  kitNeeds.forEach((id, i) => {
    const ours = choice.needs.find((n) => n.id === id)!;
    const theirs = plan.needs.find((n) => n.id === id)!;
    const tol = id.startsWith('humidity') ? linePct : lineK + halfDialK;
    const share = (by: number) => planned.filter((m) => m[i]! >= by).length / planned.length;
    // certain to fail before all versions were tried: its share is that of those tried
    const whole = choice.versions >= members;
    // a heater that misses the basking surface by kelvins says nothing of the air (search.test.ts)
    if (id.startsWith('humidity') && choice.heart.heater.powerW < 0.75 * choice.neededW.median) return;
    const fits = whole
      ? ours.shareHolding! >= share(tol) - 1e-9 && ours.shareHolding! <= share(-tol) + 1e-9
      : ours.verdict !== 'fails' || choice.verdict === 'fails';
    if (ours.verdict !== theirs.verdict && whole) otherWord++;
    if (!fits)
      breaches.push(
        `${id}: search ${ours.verdict} ${short(ours.shareHolding!)} "${ours.found}", plan ${theirs.verdict} ${short(theirs.shareHolding!)} "${theirs.found}" wanted ${ours.wanted}`,
      );
  });
  const verdict = plan.needs.map((n) => n.verdict);
  if (choice.verdict === 'fails' && choice.versions < members && !verdict.includes('fails'))
    breaches.push(`called certain to fail after ${choice.versions}, the plan says ${verdict.join(' ')}`);
  return { breaches, needs: kitNeeds.length, otherWord };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Mean over a day of each place with every dial at one setting, in a room that stays as it is. */
function rested(
  home: Enclosure,
  input: SearchInput,
  setC: number,
  roomC: number,
  day: boolean,
): Record<string, number> {
  const alive = home.heaters.filter((h) => day || h.period === 'all');
  const enclosure: Enclosure = {
    ...home,
    heaters: alive.map((h) => ({ ...h, period: 'all' })),
    thermostats: home.thermostats.map((t) => {
      const dial = !day || t.id === 'main' ? setC : t.setDayC;
      return { ...t, setDayC: dial, setNightC: dial, cutOutC: null };
    }),
  };
  const { hourlyC: _, ...like } = home.room.winter;
  const room: RoomDay = { ...like, lowC: roomC, highC: roomC, sunPeakWPerM2: 0 };
  const best = drawMembers(input.priors, 1, input.seed)[0]!;
  const run = simulateDay(modelFrom(boxGeometry(enclosure, input.facts.materials), best), room, { leadH: 72 });
  return Object.fromEntries(Object.entries(run.places).flatMap(([k, v]) => (v ? [[k, mean(v)]] : [])));
}

/** A day is the simulation's own; at rest the settled solver lets the conductances move by less than this; a thermostat that
 *  switches swings about its dial besides (dial-setting.test.ts) [K]. */
const restK = 0.35;
const swingK = 0.6;

/** "Dial X, expect Y here, Z there": the day run with the dials at what is told. */
export function dialsWork(choice: KitChoice, input: SearchInput): string[] {
  const { dial, enclosure } = choice;
  const moments = momentsOf(enclosure);
  const told = (when: string, e: KitChoice['dial']['day'], ran: Record<string, number>, onOff: boolean, band: number) =>
    (
      [
        ['basking-surface', e.baskingC],
        ['warm-hide', e.warmHideC],
        ['warm-air', e.warmAirC],
        ['cool-air', e.coolAirC],
      ] as const
    ).flatMap(([place, i]) => {
      const got = ran[place];
      if (!i || got === undefined) return [];
      const slack = lineK + (onOff ? swingK + band / 2 : restK);
      return got >= i.low - slack && got <= i.high + slack
        ? []
        : [
            `${when} dial ${e.setC} room ${short(e.roomC)}: ${place} ran ${short(got)}, told ${short(i.low)} ${short(i.median)} ${short(i.high)}`,
          ];
    });
  const out: string[] = [];
  const [main, night] = enclosure.thermostats;
  if (!main) return ['no thermostat'];
  const sunny = (m: { readonly sunWPerM2: number }) => m.sunWPerM2 > 0;
  if (!sunny(moments.winterDay))
    out.push(
      ...told(
        'day',
        dial.day,
        rested(enclosure, input, dial.setDayC, moments.winterDay.roomC, true),
        main.control === 'on-off',
        main.bandK,
      ),
    );
  const works = night ?? main;
  out.push(
    ...told(
      'night',
      dial.night,
      rested(enclosure, input, dial.setNightC, moments.winterNight.roomC, false),
      works.control === 'on-off',
      works.bandK,
    ),
  );
  return out;
}

/** The bill, added up by hand. */
export function billAdds(choice: KitChoice, input: SearchInput): string[] {
  const { cost, parts } = choice;
  const out: string[] = [];
  const near = (what: string, got: number, wanted: number) => {
    if (Math.abs(got - wanted) > 0.005 + 1e-6 * Math.abs(wanted))
      out.push(`${what}: ${short(got)}, by hand ${short(wanted)}`);
  };
  const sum = parts.reduce((s, p) => s + p.price, 0);
  near('kit', cost.kit, sum);
  for (const part of parts) if (part.owned && part.price !== 0) out.push(`owned ${part.itemId} costs ${part.price}`);
  const pieces = new Map<string, number>();
  for (const part of parts.filter((p) => p.owned && !p.itemId.startsWith('own-')))
    pieces.set(part.itemId, (pieces.get(part.itemId) ?? 0) + 1);
  for (const [id, n] of pieces) if (n > 1) out.push(`${id} is owned once and counted ${n} times`);
  const drawn = parts.filter((p) => p.owned && /^own-(t|h)\d$/.test(p.itemId)).map((p) => p.itemId);
  if (new Set(drawn).size < drawn.length) out.push(`drawn ${drawn.join(' ')} counted twice`);
  for (const part of parts) {
    const item = input.shelf.items.find((i) => i.id === part.itemId);
    if (part.owned || !item) continue;
    near(`part ${part.itemId}`, part.price, item.price * part.count);
    if (!item.inStock) out.push(`part ${part.itemId} is not in stock`);
    if (input.ownedIds.includes(item.id) && pieces.get(item.id) !== 1) out.push(`part ${item.id} is owned and charged`);
  }
  near('energy', cost.energy, choice.kWhPerYearBest * input.tariffPerKWh * input.years);
  near('total', cost.total, cost.kit + cost.lamps + cost.energy);
  const { enclosure, heart } = choice;
  const dayH = enclosure.day.endH - enclosure.day.startH;
  const kinds = [heart.heater, ...(heart.nightHeater ? [heart.nightHeater] : [])];
  const life = (kind: string) =>
    (input.facts.heaters[kind as never] as { facts: { lifeHours: { value: number } } }).facts.lifeHours.value;
  for (const heater of kinds) {
    const item = input.shelf.items.find((i) => i.id === heater.id);
    const named = cost.byYear.flatMap((y) => y.replaced).filter((name) => name === heater.name).length;
    // dimmed all the hours of its period at most, of the whole day where it heats at night too
    const hours = heart.nightHeater ? (heater === heart.heater ? dayH : 24 - dayH) : 24;
    const most = Math.ceil((365 * hours * input.years) / life(heater.heaterKind));
    if (named > most) out.push(`${heater.name} replaced ${named} times, at most ${most}`);
    if (item && item.price > 0 && named > 0 && cost.lamps === 0) out.push(`${heater.name} replaced for nothing`);
    if (
      !item &&
      named > 0 &&
      cost.lamps === 0 &&
      input.shelf.items.some((i) => i.kind === 'heater' && i.heaterKind === heater.heaterKind && i.price > 0)
    )
      out.push(`drawn ${heater.name} replaced for nothing`);
  }
  near(
    'years',
    cost.byYear.reduce((s, y) => s + y.kit + y.lamps + y.energy, 0),
    cost.total,
  );
  return out;
}

/** Needs of the home judged without simulating that one home loses against another. */
export function losesNeeds(from: Enclosure, to: Enclosure, { species, standard, facts }: SearchInput): string[] {
  const order = { holds: 0, 'not-known': 1, fails: 2 } as const;
  const before = new Map(judgeEnclosure(from, species, standard, facts).map((n) => [n.id, n]));
  return judgeEnclosure(to, species, standard, facts)
    .filter((n) => n.group !== 'comfort')
    .flatMap((n) => {
      const old = before.get(n.id);
      return old && order[n.verdict] > order[old.verdict]
        ? [`${n.id} ${old.verdict} -> ${n.verdict}: ${n.reasons[0] ?? ''}`]
        : [];
    });
}

/** What is said where no kit holds is so. */
export function noneIsSo(answer: SearchAnswer, input: SearchInput): string[] {
  const first = answer.choices[0];
  if (!first)
    return [
      ...(answer.none === null ? ['nothing is said'] : []),
      ...(answer.kitsTried > 0 ? ['kits were tried and none shown'] : []),
      ...(answer.refusals.length === 0 && /refused and why/.test(answer.none ?? '')
        ? ['told to read refusals, and there are none']
        : []),
    ];
  if (first.verdict === 'holds') return answer.none === null ? [] : [`holds, and says: ${answer.none}`];
  const out: string[] = [];
  if (answer.none === null) out.push('does not hold and nothing is said');
  const need = answer.noneNeed;
  if (!need) return [...out, 'no need is named'];
  if (need.verdict === 'holds') out.push(`names ${need.id}, which holds`);
  if (!answer.none?.includes(need.title)) out.push(`says "${answer.none}", the open need is "${need.title}"`);
  if (/No heater can cool/.test(answer.none ?? '')) {
    const limit = input.climate.coolAirC.high + (need.id === 'cool-end-mid' ? midAllowanceK : summerAllowanceK);
    const m = momentsOf(first.enclosure);
    const room = need.id === 'cool-end-mid' ? m.midDay.roomC : m.summerDay.roomC;
    if (room <= limit) out.push(`no heater can cool, yet the room of ${room} is below ${limit}`);
  }
  return out;
}
