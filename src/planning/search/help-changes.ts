// What may be changed about a home in which no kit holds: another box or foam or a cover from the shelf, a damper or drier
// floor, shade, another room. Each says what it buys, or that the shelf has no price for it. Sizes are our choice.
// Leaves out: whether it helps (what-helps.ts), and words (they are made where they are read).
import { judgeEnclosure } from '../../husbandry/judge-enclosure.ts';
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { type BoxChange, boxChanges, variantsOf } from '../kit/box-variant.ts';
import { type Dials, type KitHeart, kitEnclosure, restDialC } from '../kit/kit-enclosure.ts';
import type { KitPart } from '../kit/kit-part.ts';
import { kitRefusal } from '../kit/kit-safety.ts';
import { ownedFrom } from '../kit/owned.ts';
import { placedHeater } from '../kit/place-heater.ts';
import { enclosureInBox } from '../kit/shelf-box.ts';
import { itemsOf, type ShelfEnclosure } from '../shelf/shelf.ts';
import type { KitChoice } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';

export type HelpInput = SearchInput & {
  /** The nearest kit, in its home. */
  readonly choice: KitChoice;
};

export type HelpStep =
  | { readonly id: 'box'; readonly name: string }
  /** A box of the shelf in which the nearest kit does not hold or may not be used, and the kit that fares best in it. */
  | { readonly id: 'box-and-kit'; readonly name: string; readonly kit: string; readonly heart: KitHeart }
  | { readonly id: BoxChange }
  | { readonly id: 'damp-floor'; readonly shareFrac: number }
  | { readonly id: 'dry-floor' }
  | { readonly id: 'dry-floor-small-bowl' }
  | { readonly id: 'shade' }
  | {
      readonly id: 'warmer-winter' | 'cooler-summer';
      readonly byK: number;
      readonly lowC: number;
      readonly highC: number;
    };

export interface Home {
  readonly enclosure: Enclosure;
  /** The kit in it. */
  readonly heart: KitHeart;
  readonly parts: readonly KitPart[];
  /** false once something was changed that the shelf has no price for. */
  readonly priced: boolean;
}

export interface Change {
  readonly step: HelpStep;
  /** The box that it buys, in which other kits may be tried. */
  readonly box?: ShelfEnclosure;
  /** Changes of one family are not joined. */
  readonly family: string;
  /** Its family goes from mild to strong: none stronger is tried once one is enough. */
  readonly graded: boolean;
  readonly apply: (home: Home) => Home | null;
}

const dampShares = [0.15, 0.35] as const;
const warmerByK = [3, 6, 10] as const;
const coolerByK = [4, 8, 12] as const;
/** Nobody cools a room in summer to less than this at its warmest [degC]. */
const coolestSummerC = 18;
const smallBowlFrac = 0.7;

/** Boxes first: what is done to a box is done to the new one. */
export function changesFor(input: HelpInput): Change[] {
  const { enclosure: e } = input.choice;
  const { winter, summer } = e.room;
  const wet = e.substrate?.wetFrac ?? 0;
  const sunny = winter.sunPeakWPerM2 > 0 || summer.sunPeakWPerM2 > 0;
  const changes: Change[] = [
    ...itemsOf(input.shelf, 'enclosure')
      .filter((item) => item.inStock && !isBox(input.choice, item))
      .sort((a, b) => priceOf(a, input) - priceOf(b, input))
      .map((item) => otherBox(item, input)),
    ...boxChanges.filter((c) => !alreadyDone(input.choice.changes, c)).map((c) => boxChange(c, input)),
    ...(e.substrate ? dampShares.filter((share) => share > wet).map(damper) : []),
    ...(wet > 0 || e.bowl ? [drier(e.bowl !== null)] : []),
    ...(sunny ? [shade] : []),
    ...warmerByK.map((k) => warmer(winter, k)),
    ...coolerByK
      .filter((k) => summer.highC - k >= Math.max(coolestSummerC, winter.highC))
      .map((k) => cooler(summer, k, winter)),
  ];
  return changes.map((change) => ({ ...change, apply: (home) => keeping(home, change.apply(home), input) }));
}

/** A home in which nothing that holds now is lost, as a bowl wide enough to soak in. */
const keeping = (from: Home, to: Home | null, input: InHome): Home | null =>
  to && lost(from.enclosure, to.enclosure, input).length === 0 ? to : null;

const isBox = (choice: KitChoice, item: ShelfEnclosure): boolean =>
  choice.boxId === item.id || choice.boxId.startsWith(`${item.id}+`);

const alreadyDone = (done: readonly BoxChange[], change: BoxChange): boolean =>
  done.includes(change) || (change.startsWith('vents') && done.some((d) => d.startsWith('vents')));

/** What it costs the customer. */
export const priceOf = (item: ShelfEnclosure, { ownedIds }: Pick<SearchInput, 'ownedIds'>): number =>
  ownedIds.includes(item.id) ? 0 : item.price;

/** The nearest kit in another box. */
function otherBox(item: ShelfEnclosure, input: HelpInput): Change {
  return {
    step: { id: 'box', name: item.name },
    box: item,
    family: 'box',
    graded: false,
    apply: (home) => homeInBox(home, item, input.choice, input),
  };
}

type InHome = Pick<HelpInput, 'climate' | 'species' | 'standard' | 'facts' | 'ownedIds'>;

/** A kit in another box, where its heaters have a place, the rules allow it, and nothing that holds now is lost. */
export function homeInBox(
  home: Home,
  item: ShelfEnclosure,
  { heart, dial }: { readonly heart: KitHeart; readonly dial: Dials },
  input: InHome,
): Home | null {
  const { species, facts } = input;
  const base = enclosureInBox(home.enclosure, item);
  const { heater, nightHeater } = heart;
  const spots = [placedHeater(base, heater, 'main'), nightHeater && placedHeater(base, nightHeater, 'night')];
  if (spots.some((s) => s && 'why' in s)) return null;
  const enclosure = kitEnclosure(base, heart, { ...dial, restC: restDialC(input.climate) });
  if (typeof kitRefusal(enclosure, species, facts) !== 'string') return null;
  if (lost(home.enclosure, enclosure, input).length > 0) return null;
  const owned = input.ownedIds.includes(item.id);
  const part: KitPart = { itemId: item.id, name: item.name, role: 'box', count: 1, price: priceOf(item, input), owned };
  return { ...home, enclosure, heart, parts: [...home.parts, part] };
}

/** Needs judged without simulation that are worse in one home than in another. */
function lost(from: Enclosure, to: Enclosure, { species, standard, facts }: InHome) {
  const openIn = (e: Enclosure) =>
    judgeEnclosure(e, species, standard, facts).filter((n) => n.group !== 'comfort' && n.verdict !== 'holds');
  const open = new Map(openIn(from).map((n) => [n.id, n.verdict]));
  return openIn(to).filter((n) => !open.has(n.id) || (n.verdict === 'fails' && open.get(n.id) === 'not-known'));
}

/** Whether this box gives the animal too little room where the present one does not. */
export const spaceLost = (to: Enclosure, input: HelpInput): boolean =>
  lost(input.choice.enclosure, to, input).some((n) => n.group === 'space');

function boxChange(change: BoxChange, { shelf, ownedIds }: HelpInput): Change {
  return {
    step: { id: change },
    family: change.startsWith('vents') ? 'vents' : change,
    graded: false,
    apply: (home) => {
      const found = variantsOf(home.enclosure, shelf, ownedFrom(ownedIds)).find(
        (v) => v.changes.length === 1 && v.changes[0] === change,
      );
      if (!found) return null;
      const matted = home.heart.heater.heaterKind === 'heat-mat';
      const enclosure = matted ? found.withoutBottomFoam : found.enclosure;
      return { ...home, enclosure, parts: [...home.parts, ...found.parts] };
    },
  };
}

const damper = (shareFrac: number): Change => ({
  step: { id: 'damp-floor', shareFrac },
  family: 'damp',
  graded: true,
  apply: (home) => {
    const { substrate } = home.enclosure;
    return substrate && { ...home, enclosure: { ...home.enclosure, substrate: { ...substrate, wetFrac: shareFrac } } };
  },
});

/** Bowls stand on no shelf, so a smaller one has no price. */
const drier = (hasBowl: boolean): Change => ({
  step: { id: hasBowl ? 'dry-floor-small-bowl' : 'dry-floor' },
  family: 'damp',
  graded: false,
  apply: ({ enclosure: e, heart, parts, priced }) => ({
    heart,
    parts,
    priced: priced && !hasBowl,
    enclosure: {
      ...e,
      substrate: e.substrate && { ...e.substrate, wetFrac: 0 },
      bowl: e.bowl && { ...e.bowl, diameterM: e.bowl.diameterM * smallBowlFrac },
    },
  }),
});

type Room = Enclosure['room'];
const inRoom = (home: Home, change: (room: Room) => Room): Home => ({
  ...home,
  priced: false,
  enclosure: { ...home.enclosure, room: change(home.enclosure.room) },
});

const shade: Change = {
  step: { id: 'shade' },
  family: 'shade',
  graded: false,
  apply: (home) =>
    inRoom(home, ({ winter, summer }) => ({
      winter: { ...winter, sunPeakWPerM2: 0 },
      summer: { ...summer, sunPeakWPerM2: 0 },
    })),
};

const roomBy = (day: RoomDay, kelvin: number): RoomDay => ({
  ...day,
  lowC: day.lowC + kelvin,
  highC: day.highC + kelvin,
  ...(day.hourlyC ? { hourlyC: day.hourlyC.map((c) => c + kelvin) } : {}),
});

/** Summer is no colder than winter: a room that is heated in winter is at least as warm then, and nobody cools it below. */
const noColderThan = (summer: RoomDay, winter: RoomDay): RoomDay => ({
  ...summer,
  lowC: Math.max(summer.lowC, winter.lowC),
  highC: Math.max(summer.highC, winter.highC),
  ...(summer.hourlyC ? { hourlyC: summer.hourlyC.map((c) => Math.max(c, winter.lowC)) } : {}),
});

const warmer = (winter: RoomDay, byK: number): Change => ({
  step: { id: 'warmer-winter', byK, lowC: winter.lowC + byK, highC: winter.highC + byK },
  family: 'winter',
  graded: true,
  apply: (home) =>
    inRoom(home, (room) => {
      const heated = roomBy(room.winter, byK);
      return { winter: heated, summer: noColderThan(room.summer, heated) };
    }),
});

const cooler = (summer: RoomDay, byK: number, winter: RoomDay): Change => ({
  step: {
    id: 'cooler-summer',
    byK,
    lowC: Math.max(winter.lowC, summer.lowC - byK),
    highC: summer.highC - byK,
  },
  family: 'summer',
  graded: true,
  apply: (home) => inRoom(home, (room) => ({ ...room, summer: noColderThan(roomBy(room.summer, -byK), room.winter) })),
});
