// Every kit that can be put together from shelf and customer's own things for one box, the unsafe ones told apart with
// the rule that forbids them. Leaves out: whether a kit is warm enough (search/) and what it costs to run (cost/).
import type { Saying } from '../../husbandry/coded.ts';
import type { Facts, Species } from '../../husbandry/fact.ts';
import type { Enclosure, Heater, HeaterKind, Thermostat } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { itemsOf, type Shelf, type ShelfHeater, type ShelfItem, type ShelfThermostat } from '../shelf/shelf.ts';
import { type BoxVariant, variantsOf } from './box-variant.ts';
import { type HeaterSpot, heaterSpots } from './heater-spot.ts';
import type { Arrangement, Kit } from './kit.ts';
import { type KitHeart, kitEnclosure } from './kit-enclosure.ts';
import { type CommonParts, commonParts, kitParts } from './kit-parts.ts';
import { type Fit, type KindStanding, kindStanding, loadRefusal } from './kit-safety.ts';
import { canBeBought, type Owned, piecesOf } from './owned.ts';
import { otherProbes, placedHeater } from './place-heater.ts';
import { ownRefusal, type RefusalSays, refusals as say } from './refusal.ts';

/** Several kits share one reason. */
export interface Refusal extends RefusalSays {
  readonly kits: number;
  readonly example: string;
}

export interface Candidates {
  readonly arrangements: readonly Arrangement[];
  /** Kits of each arrangement, same order. */
  readonly kits: readonly (readonly Kit[])[];
  readonly refusals: readonly Refusal[];
  readonly refused: number;
}

export interface CandidateInput {
  readonly enclosure: Enclosure;
  readonly species: Species;
  readonly facts: Facts;
  readonly shelf: Shelf;
  /** The customer's own things, at no price: how many pieces of each. */
  readonly owned: Owned;
  /** Boxes to try besides or instead of the one drawn. */
  readonly boxes?: readonly BoxVariant[];
}

/** Night heaters that go with a lamp: the first kind that fits the box. */
const nightKinds: readonly HeaterKind[] = ['ceramic-emitter', 'radiant-panel', 'heat-mat'];

export function kitCandidates(input: CandidateInput): Candidates {
  const { enclosure, shelf } = input;
  const boxes = input.boxes ?? variantsOf(enclosure, shelf, input.owned);
  const there = (item: ShelfItem) => item.inStock || input.owned.has(item.id);
  const heaters = itemsOf(shelf, 'heater').filter(there);
  const thermostats = itemsOf(shelf, 'thermostat').filter(there);
  const arrangements: Arrangement[] = [];
  const kits: (readonly Kit[])[] = [];
  const refusals = new Map<string, Refusal>();
  const refuse = (says: RefusalSays, example: string, count = 1) => {
    const old = refusals.get(says.why);
    refusals.set(says.why, { ...says, kits: (old?.kits ?? 0) + count, example: old?.example ?? example });
  };
  if (heaters.length === 0) refuse(ownRefusal(say.noHeater), '', 0);
  if (thermostats.length === 0) refuse(ownRefusal(say.noThermostat), '', 0);
  const judged: Judged = { kinds: new Map(), loads: new Map() };
  const common = commonParts(shelf, input.owned);
  for (const box of boxes) {
    for (const group of arrangementGroups(box, heaters)) {
      if ('why' in group) {
        for (const item of group.items) refuse(ownRefusal(group.why), item.name, thermostats.length);
        continue;
      }
      // another place is told of only when it is allowed; the usual one says what is not
      const said = group.spot === 'usual' ? refuse : () => {};
      const made = kitsOf(group, box, thermostats, input, judged, common, said);
      if (made.length === 0) continue;
      arrangements.push(arrangementOf(group, box, made));
      kits.push(made);
    }
  }
  const list = [...refusals.values()].sort((a, b) => b.kits - a.kits);
  return { arrangements, kits, refusals: list, refused: list.reduce((sum, r) => sum + r.kits, 0) };
}

interface Group {
  readonly id: string;
  readonly likeId: string;
  readonly kind: HeaterKind;
  readonly spot: HeaterSpot;
  readonly nightKind: HeaterKind | null;
  readonly items: readonly ShelfHeater[];
  readonly nightItems: readonly ShelfHeater[];
}

type Placeable = Group | { readonly why: Saying; readonly items: readonly ShelfHeater[] };

/** Heaters by kind; mats and panels also by size, since each size warms another patch. */
function arrangementGroups(box: BoxVariant, heaters: readonly ShelfHeater[]): Placeable[] {
  const byPlace = new Map<string, ShelfHeater[]>();
  for (const item of heaters) {
    const key = item.lengthM === null ? item.heaterKind : `${item.heaterKind} ${item.lengthM}x${item.depthM}`;
    byPlace.set(key, [...(byPlace.get(key) ?? []), item]);
  }
  const fitting = (item: ShelfHeater, role: 'main' | 'night') => 'heater' in placedHeater(box.enclosure, item, role);
  const night =
    nightKinds
      .map((kind) => heaters.filter((item) => item.heaterKind === kind && fitting(item, 'night')))
      .find((items) => items.length > 0) ?? [];
  return [...byPlace].flatMap(([key, items]): Placeable[] => {
    const first = items[0]!;
    const place = placedHeater(box.enclosure, first, 'main');
    if ('why' in place) return [{ why: place.why, items }];
    const kind = first.heaterKind;
    const light = heaterBodies[kind].emitsLight;
    if (light && night.length === 0) return [{ why: say.noNightHeater, items }];
    const nightKind = light ? night[0]!.heaterKind : null;
    const nightItems = light ? night : [];
    const fits = (spot: HeaterSpot) =>
      'heater' in placedHeater(box.enclosure, first, 'main', spot) &&
      nightItems.every((item) => 'heater' in placedHeater(box.enclosure, item, 'night', spot));
    const spots =
      box.changes.length === 0 ? heaterSpots.filter((spot) => spot === 'usual' || fits(spot)) : ['usual' as const];
    const likeId = `${box.id} | ${key}${nightKind ? ` + ${nightKind}` : ''}`;
    return spots.map((spot) => ({
      id: spot === 'usual' ? likeId : `${likeId} @ ${spot}`,
      likeId,
      kind,
      spot,
      nightKind,
      items,
      nightItems,
    }));
  });
}

function kitsOf(
  group: Group,
  box: BoxVariant,
  thermostats: readonly ShelfThermostat[],
  input: CandidateInput,
  judged: Judged,
  common: CommonParts,
  refuse: (says: RefusalSays, example: string) => void,
): Kit[] {
  const kits: Kit[] = [];
  const nights: readonly (ShelfHeater | null)[] = group.nightKind ? group.nightItems : [null];
  for (const thermostat of thermostats) {
    const nightThermostats = nights.map((n) => n && cheapestFor(n, thermostats, thermostat, input));
    for (const heater of group.items)
      for (const [n, nightHeater] of nights.entries()) {
        const nightThermostat = nightThermostats[n] ?? null;
        const id = [heater, thermostat, nightHeater, nightThermostat].map((x) => x?.id ?? '-').join(' ');
        const name = `${heater.name} on ${thermostat.name}`;
        const fit = fitOf({ heater, nightHeater, thermostat, nightThermostat }, (one, t, role) =>
          verdictOnPair(one, t, role, box, group.spot, input, judged),
        );
        if (typeof fit !== 'string') {
          refuse(fit, name);
          continue;
        }
        const kit = { heater, nightHeater, thermostat, nightThermostat, box, enclosure: box.enclosure };
        const parts = kitParts(kit, common, input.owned);
        if (parts === null) {
          refuse(ownRefusal(say.lacksParts), name);
          continue;
        }
        kits.push({
          id: `${group.id} | ${id}`,
          arrangementId: group.id,
          heater,
          nightHeater,
          thermostat,
          nightThermostat,
          parts,
          price: parts.reduce((sum, part) => sum + part.price, 0),
          fit,
        });
      }
  }
  return kits;
}

type PairVerdict = (heater: ShelfHeater, thermostat: ShelfThermostat, role: 'main' | 'night') => Fit | RefusalSays;

/** A kit is as good as the worse of its two pairs; pairs do not share a thermostat, so each is judged alone. */
function fitOf(kit: KitHeart, verdict: PairVerdict): Fit | RefusalSays {
  if (kit.nightHeater && kit.nightHeater.powerW > kit.heater.powerW) return ownRefusal(say.tooStrongNight);
  const main = verdict(kit.heater, kit.thermostat, 'main');
  if (typeof main !== 'string') return main;
  if (!kit.nightHeater) return main;
  if (!kit.nightThermostat) return ownRefusal(say.noNightThermostat);
  const night = verdict(kit.nightHeater, kit.nightThermostat, 'night');
  return night === 'good' ? main : night;
}

/** What has been judged already: foam and vents change nothing in it, and only the load looks at watts and rating. */
interface Judged {
  readonly kinds: Map<string, KindStanding>;
  readonly loads: Map<string, RefusalSays | null>;
}

function verdictOnPair(
  heater: ShelfHeater,
  thermostat: ShelfThermostat,
  role: 'main' | 'night',
  box: BoxVariant,
  spot: HeaterSpot,
  input: CandidateInput,
  judged: Judged,
): Fit | RefusalSays {
  const { species, facts } = input;
  const alone = { heater, thermostat, nightHeater: null, nightThermostat: null };
  const home = () => kitEnclosure(box.enclosure, alone, undefined, spot);
  const { lengthM, depthM, heightM } = box.enclosure.box;
  const size = [heater.heaterKind, heater.lengthM, heater.depthM];
  // boxes of one size may differ in lid and floor, and with them in where a heater sits
  const lid = box.id.split('+')[0];
  const kind = once(judged.kinds, [...size, thermostat.control, role, lengthM, depthM, heightM, lid, spot], () =>
    kindStanding(home(), species, facts),
  );
  const load = once(judged.loads, [heater.powerW, thermostat.ratingW], () => loadRefusal(home(), species, facts));
  return kind.before ?? load ?? kind.after ?? kind.fit;
}

function once<T>(known: Map<string, T>, parts: readonly unknown[], work: () => T): T {
  const key = parts.join(' ');
  if (!known.has(key)) known.set(key, work());
  return known.get(key) as T;
}

/** The thermostat for the night heater: the cheapest of those that suit it well and bear its load.
 *  @param main drives the other heater: one that the customer has once is in use there */
function cheapestFor(
  heater: ShelfHeater,
  thermostats: readonly ShelfThermostat[],
  main: ShelfThermostat,
  { owned, facts }: CandidateInput,
): ShelfThermostat | null {
  const isFree = (t: ShelfThermostat) => piecesOf(owned, t.id) > (t.id === main.id ? 1 : 0);
  const price = (t: ShelfThermostat) => (isFree(t) ? 0 : t.price);
  const fitting = thermostats.filter((t) => {
    if (!isFree(t) && !canBeBought(t)) return false;
    const drive = facts.thermostats[t.control]?.drives[heater.heaterKind];
    return drive?.fit === 'good' && heater.powerW <= 0.8 * t.ratingW;
  });
  return fitting.reduce<ShelfThermostat | null>((a, b) => (a && price(a) <= price(b) ? a : b), null);
}

function arrangementOf(group: Group, box: BoxVariant, kits: readonly Kit[]): Arrangement {
  const strongest = (pick: (kit: Kit) => ShelfHeater | null) =>
    kits.reduce<ShelfHeater | null>((best, kit) => {
      const item = pick(kit);
      return item && (!best || item.powerW > best.powerW) ? item : best;
    }, null);
  const main = strongest((kit) => kit.heater)!;
  const night = strongest((kit) => kit.nightHeater);
  const base = group.kind === 'heat-mat' ? box.withoutBottomFoam : box.enclosure;
  const example = kits[0]!;
  const enclosure = kitEnclosure(base, { ...example, heater: main, nightHeater: night }, undefined, group.spot);
  return {
    id: group.id,
    variant: box,
    heaterKind: group.kind,
    likeId: group.likeId,
    spot: group.spot,
    nightKind: group.nightKind,
    enclosure: { ...enclosure, thermostats: [...enclosure.thermostats, ...spareProbes(enclosure)] },
    mostW: main.powerW,
    mostNightW: night?.powerW ?? main.powerW,
  };
}

/** Thermostats that drive nothing: their readings tell what a probe elsewhere would feel. */
function spareProbes(enclosure: Enclosure): Thermostat[] {
  const main: Heater | undefined = enclosure.heaters[0];
  const like = enclosure.thermostats[0];
  if (!main || !like) return [];
  return otherProbes(enclosure, main).map((probe, i) => ({ ...like, id: `spare-${i}`, probe }));
}
