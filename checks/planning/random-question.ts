// Random questions to the kit search: any box that the program takes, any room, every species and stage, any shelf and
// things owned. Leaves out: what must be true of the answer (choice-laws.ts).
import fc from 'fast-check';
import { searchInputOf } from '../../bench/search.ts';
import { climateNeeds } from '../../src/husbandry/climate-needs.ts';
import { rangeOf } from '../../src/husbandry/species-facts.ts';
import type { Enclosure, Heater, Hide, LifeStage, Panel } from '../../src/physics/enclosure.ts';
import { enclosureFrom } from '../../src/physics/validate-enclosure.ts';
import type { SearchInput } from '../../src/planning/search/search-input.ts';
import type { ShelfItem } from '../../src/planning/shelf/shelf.ts';

const like = searchInputOf('wood-1200');
const { facts } = like;

/** Evenly over the range; doubles of their own would crowd at its small end. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((n) => min + (n / 1000) * (max - min));
const oneOf = <const T extends readonly unknown[]>(...values: T): fc.Arbitrary<T[number]> => fc.constantFrom(...values);
const shareOf = between(0, 1);

const walls = ['plywood-700', 'mdf-600', 'pvc-foam-board', 'glass', 'polypropylene', 'particleboard-600'] as const;
const floors = ['aspen-chips', 'bark-chips', 'coir-dry', 'loam-sand', 'paper', 'sand-dry'] as const;
const lamps = ['ceramic-emitter', 'infrared-projector', 'basking-lamp', 'halogen-lamp'] as const;

const roomDay = (lowC: fc.Arbitrary<number>) =>
  fc.record({
    lowC,
    spanK: between(0, 12),
    rhPct: between(10, 95),
    sun: oneOf(0, 0, 0, 150, 500),
    hourly: oneOf(false, false, true),
  });

/** Rooms and boxes of every kind make homes in which next to nothing holds; every other question is asked of a kinder one:
 *  a mild room about as damp as the animal wants it, a closed box of some height, a full shelf. */
function kinder(q: SearchInput): SearchInput {
  const { enclosure, climate } = q;
  const { box } = enclosure;
  const rhPct = Math.min(80, (climate.rhPct.low + climate.rhPct.high) / 2 + 15);
  const lowC = climate.coolAirC.low;
  const day = (from: number) => ({ lowC: from, highC: from + 4, rhPct, sunPeakWPerM2: 0 });
  return {
    ...q,
    enclosure: {
      ...enclosure,
      box: {
        ...box,
        lengthM: Math.max(0.8, box.lengthM),
        depthM: Math.max(0.45, box.depthM),
        heightM: Math.max(0.45, box.heightM),
        panels: { ...box.panels, top: box.panels.back },
      },
      heaters: [],
      thermostats: [],
      substrate: enclosure.substrate && { ...enclosure.substrate, depthM: Math.min(0.05, enclosure.substrate.depthM) },
      room: { winter: day(lowC - 5), summer: day(lowC - 1) },
    },
    shelf: { ...q.shelf, items: like.shelf.items.map((item) => ({ ...item, inStock: true })) },
    ownedIds: q.ownedIds.filter((id) => like.shelf.items.some((item) => item.id === id)),
    boxIds: [],
    drawnIsOwned: false,
  };
}

const boxParts = fc.record({
  lengthM: between(0.3, 2),
  depthM: between(0.22, 0.9),
  heightM: oneOf(0.18, 0.3, 0.45, 0.6, 0.75, 1.3),
  wall: oneOf(...walls),
  wallM: between(0.002, 0.02),
  foam: oneOf(false, false, true),
  front: oneOf('glass', 'glass', 'polypropylene', 'acrylic'),
  mesh: oneOf(0, 0, 0, 0.2, 0.5, 0.9, 1),
  covered: oneOf(0, 0, 0.4, 0.9),
  meshOpen: between(0.3, 0.8),
  vents: fc.array(
    fc.record({
      panel: oneOf('back', 'left', 'right', 'front'),
      along: between(0.05, 0.95),
      up: between(0.05, 0.95),
      areaM2: between(0.0002, 0.006),
      openFrac: between(0.3, 1),
    }),
    { maxLength: 4 },
  ),
  gapAreaM2: between(0, 0.003),
  widestGapM: oneOf(null, 0.002, 0.01),
  base: oneOf('shelf', 'legs', 'floor', 'stacked'),
});

const furniture = fc.record({
  substrate: oneOf(null, ...floors),
  depthShare: oneOf(0.03, 0.06, 0.1, 0.3),
  wetFrac: oneOf(0, 0, 0, 0.2, 0.6),
  hides: fc.array(
    fc.record({ x: shareOf, y: shareOf, l: between(0.08, 0.4), d: between(0.06, 0.3), h: between(0.04, 0.15) }),
    {
      maxLength: 3,
    },
  ),
  bowl: oneOf(null, 0.08, 0.15, 0.3),
  bowlX: shareOf,
  perch: oneOf(false, false, true),
  mist: oneOf(0, 0, 60),
  coverFrac: shareOf,
  lock: oneOf('lock', 'catch', 'none'),
  thermometers: fc.subarray([
    { place: 'basking', kind: 'digital-probe' },
    { place: 'cool-end', kind: 'digital-probe' },
    { place: 'basking', kind: 'stick-on-dial' },
  ] as const),
});

const drawnKit = fc.array(
  fc.record({
    lamp: oneOf(...lamps),
    form: oneOf('lamp', 'lamp', 'panel', 'mat'),
    powerW: oneOf(7, 20, 40, 60, 100, 150, 250),
    x: between(0.1, 0.9),
    guarded: fc.boolean(),
    ceramic: fc.boolean(),
    control: oneOf('on-off', 'pulse', 'dimming'),
    bandK: between(0.3, 4),
    ratingW: oneOf(100, 300, 600),
    cutOut: fc.boolean(),
  }),
  { maxLength: 2 },
);

const animals = fc.constantFrom(
  ...Object.values(facts.species).flatMap((species) =>
    (['hatchling', 'young', 'adult'] as const).map((stage) => ({ species, stage })),
  ),
);

type Drawn<A> = A extends fc.Arbitrary<infer T> ? T : never;

const room = fc
  .record({ winter: roomDay(between(2, 24)), warmerK: between(0, 18), summer: roomDay(fc.constant(0)) })
  .map(({ winter, warmerK, summer }) => {
    const day = ({ lowC, spanK, rhPct, sun, hourly }: typeof winter) => {
      const highC = Math.min(48, lowC + spanK);
      const hourlyC = Array.from(
        { length: 24 },
        (_, h) => lowC + (highC - lowC) * (0.5 - 0.5 * Math.cos((h - 4) / 3.82)),
      );
      return { lowC, highC, rhPct, sunPeakWPerM2: sun, ...(hourly ? { hourlyC } : {}) };
    };
    return { winter: day(winter), summer: day({ ...summer, lowC: winter.lowC + warmerK }) };
  });

/** Any box that the program takes, with whatever kit is drawn in it. */
function boxOf(
  b: Drawn<typeof boxParts>,
  f: Drawn<typeof furniture>,
  kit: Drawn<typeof drawnKit>,
  r: Drawn<typeof room>,
  day: { readonly startH: number; readonly endH: number },
): Omit<Enclosure, 'animal'> {
  const { lengthM: L, depthM: D, heightM: H } = b;
  const wall: Panel = {
    layers: [{ materialId: b.wall, thicknessM: b.wallM }, ...(b.foam ? [{ materialId: 'xps', thicknessM: 0.02 }] : [])],
  };
  const inside = (at: number, size: number, span: number) => size / 2 + at * Math.max(0, span - size);
  const hides = f.hides.map((h): Hide => {
    const size = { lengthM: Math.min(h.l, L * 0.45), depthM: Math.min(h.d, D * 0.8), heightM: Math.min(h.h, H * 0.6) };
    return { xM: inside(h.x, size.lengthM, L), yM: inside(h.y, size.depthM, D), ...size };
  });
  const bowlM = f.bowl === null ? null : Math.min(f.bowl, D * 0.8, L * 0.5);
  const depthM = Math.min(0.25, H * f.depthShare);
  const heaters = kit.map((k, i): Heater => {
    const common = { id: `h${i}`, powerW: k.powerW, guarded: k.guarded, thermostatId: `t${i}` };
    const xM = k.x * L;
    const area = { lengthM: Math.min(0.28, L * 0.4), depthM: Math.min(0.28, D * 0.8) };
    const flat = { xM: inside(k.x, area.lengthM, L), yM: D / 2, ...area, holder: 'none' as const };
    if (k.form === 'mat') return { ...common, ...flat, kind: 'heat-mat', mount: 'under-floor', zM: 0, period: 'all' };
    if (k.form === 'panel' && b.mesh === 0)
      return { ...common, ...flat, kind: 'radiant-panel', mount: 'ceiling', zM: H, period: 'all' };
    const light = k.lamp === 'basking-lamp' || k.lamp === 'halogen-lamp';
    return {
      ...common,
      kind: k.lamp,
      mount: b.mesh > 0 ? 'above-mesh' : 'inside',
      xM,
      yM: D / 2,
      zM: b.mesh > 0 ? H + 0.03 : Math.max(depthM, H - 0.06),
      holder: k.ceramic ? 'ceramic' : 'plastic',
      period: light ? 'day' : 'all',
    };
  });
  return {
    format: 'warmstead-enclosure',
    version: 1,
    name: 'Any box',
    box: {
      lengthM: L,
      depthM: D,
      heightM: H,
      panels: {
        front: { layers: [{ materialId: b.front, thicknessM: 0.004 }] },
        back: wall,
        left: wall,
        right: wall,
        top:
          b.mesh > 0 ? { ...wall, meshShareFrac: b.mesh, meshOpenFrac: b.meshOpen, meshCoveredFrac: b.covered } : wall,
        bottom: wall,
      },
      vents: b.vents.map((v) => ({
        panel: v.panel,
        alongM: v.along * (v.panel === 'left' || v.panel === 'right' ? D : L),
        heightM: v.up * H,
        areaM2: v.areaM2,
        openFrac: v.openFrac,
      })),
      gapAreaM2: b.gapAreaM2,
      widestGapM: b.widestGapM,
      base: b.base === 'stacked' ? { kind: 'stacked', belowC: r.winter.lowC + 5 } : { kind: b.base },
    },
    heaters,
    thermostats: kit.map((k, i) => ({
      id: `t${i}`,
      control: k.control,
      probe: { xM: k.x * L, yM: D - 0.01, zM: Math.min(0.14, H / 2), at: 'wall' as const },
      setDayC: 28,
      setNightC: 23,
      bandK: k.bandK,
      ratingW: k.ratingW,
      cutOutC: k.cutOut ? 45 : null,
    })),
    day,
    substrate: f.substrate === null ? null : { materialId: f.substrate, depthM, wetFrac: f.wetFrac },
    hides,
    bowl: bowlM === null ? null : { diameterM: bowlM, xM: inside(f.bowlX, bowlM, L), yM: inside(0.7, bowlM, D) },
    perch: f.perch ? { xM: L * 0.3, yM: D / 2, zM: H * 0.7 } : null,
    misting: f.mist > 0 ? { waterGPerDay: f.mist, atHours: [9, 19] } : null,
    coverFrac: f.coverFrac,
    lock: f.lock,
    thermometers: f.thermometers,
    room: r,
  };
}

/** A box of the starter shelf once more, open above: the same size, another lid. */
const meshTwin: ShelfItem = {
  ...like.shelf.items.find((item) => item.kind === 'enclosure' && item.lengthM === 0.9 && item.meshShareFrac === 0)!,
  id: 'box-twin-90',
  name: 'The same box with a mesh lid',
  meshShareFrac: 0.8,
} as ShelfItem;

const shelfItems: readonly ShelfItem[] = [...like.shelf.items, meshTwin];

const shelves = fc
  .array(fc.record({ keep: between(0, 1), stock: between(0, 1), times: oneOf(0, 0.4, 1, 1, 1.7, 4) }), {
    minLength: shelfItems.length,
    maxLength: shelfItems.length,
  })
  .chain((draws) => fc.record({ draws: fc.constant(draws), thin: oneOf(0, 0, 0.2, 0.6) }))
  .map(({ draws, thin }) =>
    shelfItems.flatMap((item, i): ShelfItem[] => {
      const { keep, stock, times } = draws[i]!;
      if (keep < thin) return [];
      return [{ ...item, price: Math.round(item.price * times * 100) / 100, inStock: stock >= thin / 2 }];
    }),
  );

/** Any question that the search may be asked. */
export const anyQuestion: fc.Arbitrary<SearchInput> = fc
  .record({
    box: boxParts,
    furniture,
    kit: drawnKit,
    room,
    day: oneOf({ startH: 8, endH: 20 }, { startH: 6, endH: 22 }, { startH: 9.5, endH: 17.5 }, { startH: 0, endH: 24 }),
    animal: animals,
    length: shareOf,
    items: shelves,
    owned: fc.array(fc.nat({ max: 200 }), { maxLength: 5 }),
    boxes: oneOf(0, 0, 0, 1, 3),
    firstBox: fc.nat({ max: 50 }),
    drawnIsOwned: fc.boolean(),
    standard: oneOf(null, ...Object.keys(facts.standards)),
    members: fc.integer({ min: 4, max: 16 }),
    seed: fc.nat({ max: 1000 }),
    kind: fc.boolean(),
    tariffPerKWh: between(0, 0.9),
    years: fc.integer({ min: 1, max: 30 }),
  })
  .map((q): SearchInput | null => {
    const { species, stage } = q.animal;
    const climate = climateNeeds(species, stage);
    if (!climate.ok) return null;
    const span = rangeOf(species, stage, 'totalLengthCm') ?? { low: 40, high: 120 };
    const totalLengthM = (span.low + q.length * (span.high - span.low)) / 100;
    const animal = { speciesId: species.id, stage: stage as LifeStage, totalLengthM, massG: null };
    const enclosure = { ...boxOf(q.box, q.furniture, q.kit, q.room, q.day), animal };
    if (!enclosureFrom(enclosure, facts.materials).ok) return null;
    const onShelf = q.items.filter((item) => item.kind === 'enclosure');
    const boxIds = Array.from(
      { length: Math.min(q.boxes, onShelf.length) },
      (_, i) => onShelf[(q.firstBox + i) % onShelf.length]!.id,
    );
    const made: SearchInput = {
      ...like,
      enclosure,
      climate: climate.value,
      species,
      standard: q.standard === null ? null : facts.standards[q.standard]!,
      shelf: { ...like.shelf, items: q.items },
      ownedIds: [...new Set(q.owned.flatMap((n) => q.items[n]?.id ?? []))],
      drawnIsOwned: q.drawnIsOwned,
      boxIds: [...new Set(boxIds)],
      members: q.members,
      seed: q.seed,
      tariffPerKWh: q.tariffPerKWh,
      years: q.years,
    };
    return q.kind ? kinder(made) : made;
  })
  .filter((q) => q !== null);
