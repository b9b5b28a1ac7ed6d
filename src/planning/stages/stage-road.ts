// Box by box as the animal grows, or the adult box at once with more cover: which boxes, which kit in each, when to move,
// what is used again, what each road costs. Kits are found by the search, with what the customer then owns at no price.
// Leaves out: selling on what is left over, and illness or feeding that changes growth.

import type { CareFacts } from '../../animal/care-facts.ts';
import type { GrowthBand } from '../../animal/growth.ts';
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import type { Species } from '../../husbandry/fact.ts';
import { bareLimits } from '../../husbandry/rules/beginnings.ts';
import { covers, servesUpToM } from '../../husbandry/space.ts';
import { rangeOf, wordOf } from '../../husbandry/species-facts.ts';
import type { Standard } from '../../husbandry/standard.ts';
import type { Enclosure, LifeStage, PlannedAnimal } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import type { KitPart } from '../kit/kit-part.ts';
import type { Interval } from '../plan-answer.ts';
import type { KitChoice } from '../search/search-answer.ts';
import type { SearchInput } from '../search/search-input.ts';
import { searchKits } from '../search/search-kits.ts';
import { itemsOf, type ShelfEnclosure } from '../shelf/shelf.ts';
import { bandOf, type GrowthForecast, growthForecast, lengthIn, neverYears, yearsUntil } from './growth-forecast.ts';

export interface RoadStage {
  readonly box: ShelfEnclosure;
  readonly fromYear: number;
  /** Years until the box is outgrown: fast, middle, slow growth; null when even fast growth does not outgrow it. */
  readonly outgrown: Interval | null;
  readonly toYear: number;
  readonly stage: LifeStage;
  readonly lengthM: { readonly from: number; readonly to: number };
  readonly verdict: Verdict;
  readonly kit: KitChoice | null;
  readonly bought: readonly string[];
  readonly usedAgain: readonly string[];
  readonly coverPrice: number;
  readonly cost: { readonly things: number; readonly energy: number; readonly lamps: number };
}

export interface Road {
  readonly stages: readonly RoadStage[];
  readonly total: number;
}

export interface StageRoads {
  /** Null when the species record has no lengths: then there is no road either. */
  readonly growth: GrowthForecast | null;
  readonly standardId: string;
  readonly years: number;
  readonly stepwise: Road;
  readonly atOnce: Road | null;
  /** Why there is no road to the adult box, when there is none. */
  readonly note: string | null;
  /** The same without words. */
  readonly why: {
    readonly id: 'no-lengths' | 'not-covered' | 'no-box' | 'no-adult-box';
    readonly standardName: string;
    readonly adultLengthM: number | null;
  } | null;
  readonly currency: string;
  readonly pricesInvented: boolean;
}

export interface RoadInput extends Omit<SearchInput, 'boxIds' | 'years' | 'climate' | 'standard'> {
  readonly standard: Standard;
  readonly animal: PlannedAnimal;
  readonly care: CareFacts;
  /** How far ahead is planned and paid for, whole years. */
  readonly years: number;
}

/** A smaller box must serve at least this long to be worth buying [years]; our choice. */
export const leastServiceYears = 1;
/** Cover for a young animal in a large box: this share of the floor (husbandry/rules/beginnings.ts). */
const coverShare = bareLimits.coverFrac;

/** Yields what it is working on; returns both roads. */
export function* stageRoads(input: RoadInput): Generator<string, StageRoads> {
  const { species, animal, standard, years } = input;
  const band = bandOf(species, input.care);
  const head = { standardId: standard.id, years, currency: input.shelf.currency, pricesInvented: input.shelf.invented };
  const nowhere = { stages: [], total: 0 };
  if (!band)
    return {
      ...head,
      growth: null,
      stepwise: nowhere,
      atOnce: null,
      note: 'The usual lengths of this species are not known.',
      why: { id: 'no-lengths', standardName: standard.name, adultLengthM: null },
    };
  const growth = growthForecast(band, animal, years);
  const boxes = servingBoxes(input);
  const adultM = growth.adultLengthM.median;
  const adultBox = boxes.find((b) => b.servesM >= adultM - 1e-9) ?? null;
  const steps = pickSteps(boxes, band, animal.totalLengthM, years);
  const stepwise = steps.length > 0 ? yield* drive(input, steps, band, false) : nowhere;
  const atOnce =
    adultBox && steps[0]?.item.id !== adultBox.item.id ? yield* drive(input, [adultBox], band, true) : null;
  const none = `No box of the shelf serves this animal now under "${standard.name}".`;
  const noAdult = `No box of the shelf serves the usual adult (${Math.round(adultM * 100)} cm) under "${standard.name}".`;
  const about = { standardName: standard.name, adultLengthM: adultM };
  const told = { ...head, growth, stepwise, atOnce };
  if (!isCovered(input))
    return { ...told, note: `“${standard.name}” says nothing of this animal.`, why: { id: 'not-covered', ...about } };
  if (boxes.length === 0) return { ...told, note: none, why: { id: 'no-box', ...about } };
  return adultBox
    ? { ...told, note: null, why: null }
    : { ...told, note: noAdult, why: { id: 'no-adult-box', ...about } };
}

const drawnId = 'drawn';

/** The box that the customer has, as a box of the shelf at no price; what it is made of is read from the drawing. */
function drawnBox({ name, box }: Enclosure): ShelfEnclosure {
  const wall = box.panels.back.layers[0]!;
  const front = box.panels.front.layers[0]!;
  return {
    id: drawnId,
    kind: 'enclosure',
    name,
    price: 0,
    inStock: true,
    lengthM: box.lengthM,
    depthM: box.depthM,
    heightM: box.heightM,
    wallMaterialId: wall.materialId,
    wallThicknessM: wall.thicknessM,
    frontMaterialId: front.materialId,
    frontThicknessM: front.thicknessM,
    meshShareFrac: box.panels.top.meshShareFrac ?? 0,
    lowVentM2: 0,
    highVentM2: 0,
    widestGapM: box.widestGapM ?? 0,
  };
}

interface ServingBox {
  readonly item: ShelfEnclosure;
  readonly servesM: number;
}

/** Whether the standard speaks of such an animal at all. */
const isCovered = ({ standard, animal, species }: RoadInput): boolean =>
  covers(standard, species.id, wordOf(species, 'adult', 'climbs') === 'yes', animal.totalLengthM);

/** Boxes of the shelf that serve the animal today, by the length they serve up to and then by price. */
function servingBoxes(input: RoadInput): ServingBox[] {
  const { shelf, standard, animal } = input;
  if (!isCovered(input)) return [];
  const own = input.drawnIsOwned ? [drawnBox(input.enclosure)] : [];
  return [...own, ...itemsOf(shelf, 'enclosure').filter((item) => item.inStock)]
    .map((item) => ({ item, servesM: servesUpToM(standard, item) }))
    .filter((b) => b.servesM >= animal.totalLengthM - 1e-9)
    .sort((a, b) => a.servesM - b.servesM || a.item.price - b.item.price);
}

/** Each time the cheapest box that serves at least a year more; the last one serves to the end of what is planned. */
function pickSteps(boxes: readonly ServingBox[], band: GrowthBand, nowM: number, years: number): ServingBox[] {
  const middle = (m: number) => yearsUntil(band, nowM, m).median;
  const steps: ServingBox[] = [];
  let from = 0;
  while (from < years) {
    const fitting = boxes.filter((b) => middle(b.servesM) >= Math.min(years, from + leastServiceYears));
    const next =
      fitting.reduce<ServingBox | null>((a, b) => (a && a.item.price <= b.item.price ? a : b), null) ?? boxes.at(-1);
    if (!next || steps.some((s) => s.item.id === next.item.id)) break;
    steps.push(next);
    from = middle(next.servesM);
  }
  return steps;
}

function* drive(
  input: RoadInput,
  boxes: readonly ServingBox[],
  band: GrowthBand,
  coverYoung: boolean,
): Generator<string, Road> {
  const stages: RoadStage[] = [];
  let owned: readonly string[] = input.ownedIds;
  let from = 0;
  for (const [i, box] of boxes.entries()) {
    yield box.item.name;
    const until = yearsUntil(band, input.animal.totalLengthM, box.servesM);
    const last = i === boxes.length - 1;
    const to = last ? input.years : Math.min(input.years, until.median);
    const stage = yield* stageOf(input, box.item, owned, band, from, to, coverYoung);
    stages.push({ ...stage, outgrown: until.low >= neverYears ? null : until });
    owned = [...owned, ...(stage.kit?.parts ?? []).flatMap(pieces)];
    from = to;
  }
  const total = stages.reduce((sum, s) => sum + s.cost.things + s.cost.energy + s.cost.lamps, 0);
  return { stages, total };
}

/** What was bought is there from now on, each piece once; what was there already stays as many as it was. Foam and covers
 *  are cut for one box and are bought anew for the next. */
const pieces = ({ itemId, count, owned, role }: KitPart): string[] =>
  owned || role === 'insulation' || role === 'cover' ? [] : Array.from({ length: count }, () => itemId);

function* stageOf(
  input: RoadInput,
  box: ShelfEnclosure,
  owned: readonly string[],
  band: GrowthBand,
  from: number,
  to: number,
  coverYoung: boolean,
): Generator<string, Omit<RoadStage, 'outgrown'>> {
  const lengthAt = (t: number) => lengthIn(band, input.animal.totalLengthM, t).median;
  const lengthM = { from: lengthAt(from), to: lengthAt(to) };
  const stage = stageByLength(input.species, lengthM.from);
  const climate = climateNeeds(input.species, stage);
  // the kit must do for the animal as it will be when it leaves the box
  const inBox = { ...input.enclosure, animal: { ...input.animal, stage, totalLengthM: lengthM.to } };
  const bare = coverYoung && box.lengthM * box.depthM > bareLimits.floorPerLengthSquared * lengthM.from ** 2;
  const coverItem = itemsOf(input.shelf, 'cover').find((c) => c.covers === 'floor' && c.inStock);
  const missing = bare ? Math.max(0, coverShare - input.enclosure.coverFrac) : 0;
  const coverPrice = coverItem ? missing * box.lengthM * box.depthM * coverItem.price : 0;
  const none = { box, fromYear: from, toYear: to, stage, lengthM, coverPrice, kit: null, bought: [], usedAgain: [] };
  const nothing = { ...none, verdict: 'fails' as const, cost: { things: box.price + coverPrice, energy: 0, lamps: 0 } };
  if (!climate.ok) return nothing;
  const years = Math.max(1, Math.ceil(to - from));
  const run = searchKits({
    ...input,
    enclosure: inBox,
    climate: climate.value,
    ownedIds: owned,
    boxIds: box.id === drawnId ? [] : [box.id],
    years,
  });
  let step = run.next();
  while (!step.done) {
    yield box.name;
    step = run.next();
  }
  const kit = step.value.choices[0] ?? null;
  if (!kit) return nothing;
  const share = (to - from) / years;
  return {
    ...none,
    verdict: kit.verdict,
    kit,
    bought: kit.parts.filter((p) => !p.owned).map((p) => p.name),
    usedAgain: kit.parts.filter((p) => p.owned).map((p) => p.name),
    cost: { things: kit.cost.kit + coverPrice, energy: kit.cost.energy * share, lamps: kit.cost.lamps },
  };
}

/** Life stage by length: young from the shortest usual young one on, adult from the shortest usual adult. */
export function stageByLength(species: Species, lengthM: number): LifeStage {
  const from = (stage: LifeStage) => (rangeOf(species, stage, 'totalLengthCm')?.low ?? Number.POSITIVE_INFINITY) / 100;
  if (lengthM >= from('adult')) return 'adult';
  return lengthM >= from('young') ? 'young' : 'hatchling';
}
