// The search itself, as a machine that hands out work and takes results in, so that one thread or several can drive it.
// Kits that share an arrangement share its solved versions. An arrangement is put aside as soon as none of its kits can
// come before the best one that is certain; this never changes the first choice (search.test.ts). The next best are then
// tried to the end too, so that there are several to choose from.
// Leaves out: threads and clocks (whoever drives it), and the wording of the answer (search-answer.ts).
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Parameters } from '../../physics/parameters.ts';
import { meanBandK } from '../dial/dial-setting.ts';
import { openLidFrac } from '../kit/box-variant.ts';
import type { Arrangement, Kit } from '../kit/kit.ts';
import type { Candidates } from '../kit/kit-candidates.ts';
import { type Moments, momentsOf } from '../member.ts';
import type { Margins } from './forecast.ts';
import { type Behaviour, type KitNeed, kitNeeds, kitPowers, needMargins } from './judge-kit.ts';
import { chooseDayDial, chooseNightDial } from './night-dial.ts';
import { compareKeys, type RankKey, rankKey } from './rank.ts';
import { type MemberSurface, onLine } from './surface.ts';
import {
  boundsOf,
  certainAfter,
  certainlyFails,
  count,
  emptyTally,
  estimateOf,
  judgedSpread,
  type Tally,
} from './tally.ts';

/** How many arrangements an answer is to offer, each tried to the end. */
export const wantedChoices = 3;
/** How many of the next best are tried to the end in search of those that hold like the first choice; our choice. */
const mostTried = 8;
/** Arrangements tried to the end that the others are compared with; more say little more (our choice). */
const mostLikes = 3;
/** Versions after which most of what is given up is given up (tally.ts). */
const decidesAfter: readonly number[] = [certainAfter.versions, certainAfter.spreadKnown];
/** Versions solved in one piece of work, fewer at first; small enough that a search can be stopped at once (our choice). */
const chunk = 4;
const firstChunk = 4;

export interface SearchTask {
  readonly arrangement: number;
  /** Versions from..to-1. */
  readonly from: number;
  readonly to: number;
}

/** Kits of one arrangement that behave alike, and how they have fared. */
export interface KitGroup {
  readonly behaviour: Behaviour;
  readonly kits: readonly Kit[];
  readonly tally: Tally;
}

export interface ArrangementState {
  readonly index: number;
  readonly arrangement: Arrangement;
  readonly moments: Moments;
  readonly kits: readonly Kit[];
  /** Empty until the best-estimate version is in: the night dial comes from it. */
  groups: readonly KitGroup[];
  readonly surfaces: MemberSurface[];
  /** Results that came before their turn, by their first version. */
  readonly early: Map<number, readonly MemberSurface[]>;
  /** Versions handed out so far. */
  asked: number;
  aside: boolean;
  /** Rank by the best-estimate version alone. */
  firstKey: RankKey | null;
  /** What was worked out when so many of its versions, and so many arrangements to compare with, were known. */
  known: Known | null;
  /** Not looked at: a change of vents where the air is neither dry nor damp, another place where the usual one will do. */
  needless: boolean;
  /** Cost over the years of each kit by id, by the best-estimate version. */
  readonly costs: Map<string, number>;
}

interface Offered {
  readonly list: readonly Ranked[];
  readonly open: ArrangementState | null;
}

interface Known {
  readonly tried: number;
  readonly likes: number;
  certain: boolean | null;
  best: Ranked | null;
  estimate: Ranked | null;
}

export interface SearchSetting {
  readonly climate: ClimateNeeds;
  readonly candidates: Candidates;
  readonly members: readonly Parameters[];
  /** Cost over the years of a kit by the best-estimate version. */
  readonly costOf: (kit: Kit, behaviour: Behaviour, surface: MemberSurface, arrangement: Arrangement) => number;
  /** false: try everything to the end, to compare with. */
  readonly pruning?: boolean;
}

export interface KitSearch {
  readonly states: readonly ArrangementState[];
  /** Versions in all. */
  readonly members: number;
  /** Next piece of work, or null when nothing more is needed or everything needed is being worked on. */
  readonly nextTask: () => SearchTask | null;
  readonly take: (task: SearchTask, surfaces: readonly MemberSurface[]) => void;
  /** Every arrangement of the box without changes, heater in its usual place, has had its best-estimate version: a first ranking can be shown. */
  readonly hasFirst: () => boolean;
  readonly isDone: () => boolean;
  /** Best kit of each arrangement by what is known so far, best first. */
  readonly ranking: () => readonly Ranked[];
  /** What is offered once all is done: the first choice and the next best, each tried to the end. */
  readonly offers: () => readonly Ranked[];
  readonly work: () => SearchWork;
}

/** Versions of the arrangements looked at, and why some were not solved. */
export interface SearchWork {
  readonly all: number;
  readonly solved: number;
  /** Every kit of theirs was certain to fail. */
  readonly lost: number;
  /** None of their kits could come first or be offered any more. */
  readonly behind: number;
  /** Not looked at, and not in `all`: vents where the air is right, other places where the usual one does. */
  readonly needless: number;
}

export interface Ranked {
  readonly state: ArrangementState;
  readonly group: KitGroup;
  readonly kit: Kit;
  readonly key: RankKey;
  /** Tried to the end, or certain to fail. */
  readonly certain: boolean;
}

export function createKitSearch(setting: SearchSetting): KitSearch {
  const { candidates, members } = setting;
  const of = members.length;
  const pruning = setting.pruning ?? true;
  const states = candidates.arrangements.map(
    (arrangement, index): ArrangementState => ({
      index,
      arrangement,
      moments: momentsOf(arrangement.enclosure),
      kits: candidates.kits[index] ?? [],
      groups: [],
      surfaces: [],
      early: new Map(),
      asked: 0,
      aside: false,
      firstKey: null,
      known: null,
      needless: false,
      costs: new Map(),
    }),
  );
  const plain = states.filter((s) => s.arrangement.variant.changes.length === 0 && s.arrangement.spot === 'usual');
  const hasFirst = () => plain.every((s) => s.surfaces.length > 0);
  const hasAll = () => states.every((s) => s.needless || s.surfaces.length > 0);
  const looked = () => states.filter((s) => !s.needless);
  const complete = (s: ArrangementState) => s.surfaces.length >= of;
  /** The best kits of the first arrangements tried to the end, to forecast the others by. */
  const likes: Margins[] = [];
  const knownOf = (s: ArrangementState): Known => {
    const tried = s.surfaces.length;
    if (s.known?.tried !== tried || s.known.likes !== likes.length)
      s.known = { tried, likes: likes.length, certain: null, best: null, estimate: null };
    return s.known;
  };
  const certain = (s: ArrangementState): boolean => {
    const known = knownOf(s);
    known.certain ??=
      complete(s) || (pruning && s.groups.length > 0 && s.groups.every((g) => certainlyFails(g.tally, of, likes)));
    return known.certain;
  };
  const bestOf = (s: ArrangementState, how: 'best' | 'estimate'): Ranked => {
    const known = knownOf(s);
    known[how] ??= bestKit(s, of, how, certain(s), likes);
    return known[how];
  };

  /** Sets aside what cannot come first any more. */
  const prune = (): void => {
    if (!pruning || !hasAll()) return;
    const sure = looked().filter(certain);
    const bar = sure.map((s) => bestOf(s, 'estimate').key).sort(compareKeys)[0];
    for (const s of looked()) {
      if (certain(s)) continue;
      s.aside = bar !== undefined && compareKeys(bestOf(s, 'best').key, bar) > 0;
    }
  };
  const decided = () => hasAll() && looked().every((s) => s.aside || certain(s));
  const alike = (a: ArrangementState, b: ArrangementState) => a.arrangement.likeId === b.arrangement.likeId;
  /** Where fewer may hold than are wanted, the nearest of those that fail stand behind them, tried to the end all the same,
   *  so that what is said of them is said of every version. */
  const filled = (list: readonly Ranked[], sure: readonly Ranked[]): Offered => {
    const whole = [...list];
    for (const next of sure) {
      if (whole.length >= wantedChoices) break;
      if (next.key.verdict === 'fails' && !whole.some((r) => alike(r.state, next.state))) whole.push(next);
    }
    return { list: whole, open: whole.find((r) => !complete(r.state))?.state ?? null };
  };
  /** The first choice, and the next best by the best-estimate version that, tried to the end, hold as it does; where
   *  fewer hold, those that do not fail, and then those that do. The order of threads has no say in it. `open` is the one that must be tried
   *  before the list is whole. */
  const offered = (): Offered => {
    const sure = looked()
      .filter(certain)
      .map((s) => bestOf(s, 'estimate'));
    const first = sure.sort((x, y) => compareKeys(x.key, y.key))[0];
    if (!first) return { list: [], open: null };
    if (first.key.verdict === 'fails') return filled([], sure);
    const tried: Ranked[] = [];
    /** Certain to hold less well than the first; tried to the end only where too few others hold. */
    const spare: ArrangementState[] = [];
    const holdsLess = (s: ArrangementState) =>
      first.key.verdict === 'holds' && bestOf(s, 'best').key.verdict !== 'holds';
    const byFirst = looked().sort((x, y) => compareKeys(x.firstKey!, y.firstKey!));
    for (const s of byFirst) {
      if (tried.length >= wantedChoices - 1 || tried.length + spare.length >= mostTried) break;
      if ([first.state, ...tried.map((r) => r.state), ...spare].some((other) => alike(other, s))) continue;
      if (holdsLess(s)) {
        if (!certain(s) || bestOf(s, 'estimate').key.verdict !== 'fails') spare.push(s);
        continue;
      }
      if (!certain(s)) return { list: [first, ...tried], open: s };
      const found = bestOf(s, 'estimate');
      if (found.key.verdict !== 'fails') tried.push(found);
    }
    for (const s of spare) {
      if (tried.length >= wantedChoices - 1) break;
      if (!certain(s)) return { list: [first, ...tried], open: s };
      const found = bestOf(s, 'estimate');
      if (found.key.verdict !== 'fails') tried.push(found);
    }
    const list = [first, ...tried].sort((x, y) => compareKeys(x.key, y.key));
    return filled(list.slice(0, wantedChoices), sure);
  };
  const isBeingDecided = (s: ArrangementState) => s.asked > s.surfaces.length && decidesAfter.includes(s.asked);
  const hasMore = (s: ArrangementState) =>
    s.asked < of && s.asked < s.surfaces.length + (s.surfaces.length < chunk ? 1 : 2 * chunk);

  return {
    states,
    members: of,
    hasFirst,
    isDone: () => decided() && offered().open === null,
    nextTask: () => {
      const fresh =
        plain.find((s) => s.asked === 0) ?? (hasFirst() ? states.find((s) => !s.needless && s.asked === 0) : undefined);
      if (fresh) {
        fresh.asked = 1;
        return { arrangement: fresh.index, from: 0, to: 1 };
      }
      if (!hasAll()) return null;
      const waiting = looked().filter((s) => !s.aside && !certain(s) && hasMore(s));
      // once the first choice is certain, the next best are tried to the end
      const second = decided() ? offered().open : null;
      if (second && hasMore(second)) waiting.push(second);
      if (waiting.length === 0) return null;
      // what may be given up as soon as the versions under way are in waits while there is other work
      const worth = waiting.filter((s) => !isBeingDecided(s));
      const list = (worth.length > 0 ? worth : waiting).map((s) => bestOf(s, 'estimate'));
      const next = list.reduce((a, b) => (compareKeys(a.key, b.key) <= 0 ? a : b));
      const { state } = next;
      const from = state.asked;
      state.asked = Math.min(of, from < firstChunk ? firstChunk : from < chunk ? chunk : from + chunk);
      return { arrangement: state.index, from, to: state.asked };
    },
    take: (task, surfaces) => {
      const s = states[task.arrangement]!;
      const wasFirst = hasFirst();
      s.early.set(task.from, surfaces);
      for (let next = s.early.get(s.surfaces.length); next; next = s.early.get(s.surfaces.length)) {
        s.early.delete(s.surfaces.length);
        if (s.surfaces.length === 0) start(s, next[0]!, setting);
        for (const surface of next) {
          s.surfaces.push(surface);
          for (const group of s.groups) count(group.tally, needMargins(surface, group.behaviour, setting.climate));
          s.firstKey ??= bestOf(s, 'estimate').key;
        }
      }
      if (pruning && complete(s) && likes.length < mostLikes) likes.push(bestOf(s, 'estimate').group.tally.margins);
      if (!wasFirst && hasFirst())
        dropNeedless(
          states,
          ventChangesNeeded(
            plain.map((p) => bestOf(p, 'estimate')),
            setting.climate,
          ),
          // where a usual place holds with room to spare nobody needs another
          !plain.some((s) => s.groups.some((g) => holdsComfortably(s.surfaces[0]!, g.behaviour, setting.climate))),
        );
      prune();
    },
    ranking: () =>
      looked()
        .filter((s) => s.groups.length > 0)
        .map((s) => bestOf(s, 'estimate'))
        .sort((a, b) => compareKeys(a.key, b.key)),
    offers: () => offered().list,
    work: () => {
      const left = (kept: (s: ArrangementState) => boolean) =>
        states.filter(kept).reduce((sum, s) => sum + of - s.surfaces.length, 0);
      return {
        all: looked().length * of,
        solved: states.reduce((sum, s) => sum + s.surfaces.length, 0),
        lost: left((s) => !s.needless && certain(s)),
        behind: left((s) => !s.needless && !certain(s)),
        needless: left((s) => s.needless),
      };
    },
  };
}

/** Vents are only touched where the air by best estimate is this near its limits or beyond [points of humidity]; our choice. */
export const ventMarginPct = 5;

/** Which way the air of the box as it stands errs with its best kit. */
function ventChangesNeeded(
  best: readonly Ranked[],
  climate: ClimateNeeds,
): { readonly dry: boolean; readonly damp: boolean } {
  const first = [...best].sort((a, b) => compareKeys(a.key, b.key))[0];
  const surface = first?.state.surfaces[0];
  if (!first || !surface) return { dry: false, damp: false };
  const powers = kitPowers(surface, first.group.behaviour);
  const rh = [onLine(surface.day, 'coolRhPct', powers.dayW), onLine(surface.summer, 'coolRhPct', powers.summerW)];
  return {
    dry: Math.min(...rh) < climate.rhPct.low + ventMarginPct,
    damp: Math.max(...rh) > climate.rhPct.high - ventMarginPct,
  };
}

/** Needs that another place of the heater would change; damp is a matter of vents and water. */
const placeNeeds: readonly KitNeed[] = [
  'night-warmth',
  'cool-end-winter',
  'cool-end-mid',
  'cool-end-summer',
  'hottest-reachable',
];
/** Kept by so many judged spreads in the best-estimate version, a need holds in nine versions of ten; so does a basking
 *  surface that is held with a quarter of the power in hand. Our choice. */
const comfortable = { spreads: 1.3, dutyFrac: 0.75 } as const;

function holdsComfortably(best: MemberSurface, b: Behaviour, climate: ClimateNeeds): boolean {
  const margins = needMargins(best, b, climate);
  const inHand = kitPowers(best, b).dayW <= comfortable.dutyFrac * b.powerW * best.heaterPower;
  return (
    inHand &&
    margins[0]! >= 0 &&
    placeNeeds.every((need) => {
      const i = kitNeeds.indexOf(need);
      return margins[i]! >= comfortable.spreads * (judgedSpread[i] ?? 1);
    })
  );
}

/** Another place than the usual one must save this share of the cost to come first; our choice. */
const placeSaves = 0.02;

function dropNeedless(
  states: readonly ArrangementState[],
  needed: { readonly dry: boolean; readonly damp: boolean },
  placesNeeded: boolean,
): void {
  for (const s of states) {
    const { changes } = s.arrangement.variant;
    s.needless =
      (changes.includes('vents-halved') && !needed.dry) ||
      (changes.includes('vents-doubled') && !needed.damp) ||
      (s.arrangement.spot !== 'usual' && !placesNeeded);
  }
}

/** Groups the kits by behaviour and works out what each costs, from the best-estimate version. */
function start(s: ArrangementState, best: MemberSurface, setting: SearchSetting): void {
  const groups = new Map<string, { behaviour: Behaviour; kits: Kit[] }>();
  for (const kit of s.kits) {
    const behaviour = behaviourOf(kit, best, setting.climate);
    const key = Object.values(behaviour).join(' ');
    const group = groups.get(key) ?? { behaviour, kits: [] };
    group.kits.push(kit);
    groups.set(key, group);
    s.costs.set(kit.id, setting.costOf(kit, behaviour, best, s.arrangement));
  }
  const open = (s.arrangement.enclosure.box.panels.top.meshShareFrac ?? 0) > openLidFrac;
  s.groups = [...groups.values()].map((g) => ({ ...g, tally: emptyTally(open ? 2 : 1) }));
}

/** @param best the best-estimate version, which the dials come from */
export function behaviourOf(kit: Kit, best: MemberSurface, climate: ClimateNeeds): Behaviour {
  const bandK = meanBandK(kit.thermostat);
  const b = {
    powerW: kit.heater.powerW,
    bandK,
    nightPowerW: (kit.nightHeater ?? kit.heater).powerW,
    nightBandK: kit.nightThermostat ? meanBandK(kit.nightThermostat) : bandK,
    twoHeaters: kit.nightHeater !== null,
  };
  const dialled = { ...b, setDayC: chooseDayDial(best, b) };
  return { ...dialled, setNightC: chooseNightDial(best, climate, dialled) };
}

function bestKit(
  s: ArrangementState,
  of: number,
  how: 'best' | 'estimate',
  certain: boolean,
  likes: readonly Margins[],
): Ranked {
  let found: Ranked | null = null;
  const aside = s.arrangement.spot === 'usual' ? 1 : 1 + placeSaves;
  for (const group of s.groups) {
    const bounds = boundsOf(group.tally, of, likes);
    const done = group.tally.tried >= of;
    const lost = bounds.best.verdict === 'fails';
    const looks = estimateOf(group.tally);
    const certainly = lost ? { ...looks, verdict: 'fails' as const } : looks;
    const view = how === 'best' || done ? bounds.best : certainly;
    for (const kit of group.kits) {
      const key = rankKey(
        { id: kit.id, fit: kit.fit, cost: (s.costs.get(kit.id) ?? 0) * aside },
        view,
        group.tally.shortfall,
      );
      if (!found || compareKeys(key, found.key) < 0) found = { state: s, group, kit, key, certain };
    }
  }
  if (!found) throw new Error(`arrangement ${s.arrangement.id} has no kits`);
  return found;
}
