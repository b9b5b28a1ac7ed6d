// Random valid enclosures for the laws that every box must obey: any size, panels, vents, mesh, heaters, thermostats.
import fc from 'fast-check';
import type { Enclosure, Heater, HeaterKind, Panel, Thermostat } from '../../src/physics/enclosure.ts';
import type { Material, MaterialTable } from '../../src/physics/material.ts';

const m = (
  id: string,
  conductivityWPerMK: number,
  densityKgPerM3: number,
  heatCapacityJPerKgK: number,
  emissivity = 0.9,
  shortWaveThroughFrac = 0,
): Material => ({
  id,
  name: id,
  conductivityWPerMK,
  densityKgPerM3,
  heatCapacityJPerKgK,
  emissivity,
  shortWaveThroughFrac,
});

/** A few materials with round values, so that the laws do not hang on data/. */
export const testMaterials: MaterialTable = Object.fromEntries(
  [
    m('wood', 0.13, 500, 1600),
    m('cfd-board', 0.12, 500, 1600),
    m('glass', 1, 2500, 750, 0.84, 0.83),
    m('glass-grey', 1, 2500, 750, 0.9),
    m('pvc', 0.06, 600, 1000),
    m('tub', 0.22, 910, 1800, 0.9, 0.7),
    m('eps', 0.035, 20, 1450),
    m('bark', 0.08, 250, 1600),
    m('sand', 0.3, 1600, 800),
  ].map((x) => [x.id, x]),
);

export const panelOf = (materialId: string, thicknessM: number): Panel => ({ layers: [{ materialId, thicknessM }] });

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A valid enclosure of any kind; heaters on shared, own or no thermostats. */
export const anyEnclosure: fc.Arbitrary<Enclosure> = fc
  .record({
    lengthM: between(0.4, 2.2),
    depthM: between(0.3, 0.9),
    heightM: between(0.2, 1.6),
    wall: fc.constantFrom('wood', 'glass', 'pvc', 'tub', 'eps'),
    wallM: between(0.003, 0.03),
    front: fc.constantFrom('glass', 'tub', 'wood'),
    mesh: fc.constantFrom(0, 0, 0.3, 1),
    meshOpen: between(0.3, 0.8),
    vents: fc.array(fc.record({ x: between(0.1, 0.9), z: between(0.1, 0.9), areaM2: between(0.0005, 0.01) }), {
      maxLength: 4,
    }),
    gapAreaM2: between(0, 0.002),
    base: fc.constantFrom('shelf' as const, 'legs' as const, 'floor' as const, 'stacked' as const),
    substrate: fc.constantFrom(null, 'bark', 'sand'),
    substrateM: between(0.01, 0.1),
    wetFrac: fc.constantFrom(0, 0, 0.3, 1),
    heaters: fc.array(
      fc.record({
        kind: fc.constantFrom<HeaterKind[]>(
          'ceramic-emitter',
          'infrared-projector',
          'basking-lamp',
          'halogen-lamp',
          'radiant-panel',
          'heat-mat',
        ),
        powerW: between(5, 200),
        x: between(0.15, 0.85),
        y: between(0.3, 0.7),
        z: between(0.55, 0.9),
        statted: fc.boolean(),
        day: fc.boolean(),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    control: fc.constantFrom('on-off' as const, 'pulse' as const, 'dimming' as const),
    probeX: between(0.05, 0.95),
    probeZ: between(0.05, 0.9),
    setC: between(18, 36),
    bowl: fc.boolean(),
    mist: fc.constantFrom(0, 0, 100),
    lowC: between(2, 24),
    span: between(0, 12),
    rhPct: between(15, 90),
    sun: fc.constantFrom(0, 0, 300),
  })
  .map((r) => build(r));

// biome-ignore lint/suspicious/noExplicitAny: the record above is the type; naming it twice would only repeat it
function build(r: any): Enclosure {
  const wall = panelOf(r.wall, r.wallM);
  const L = r.lengthM;
  const heaters: Heater[] = r.heaters.map(
    (
      h: { kind: HeaterKind; powerW: number; x: number; y: number; z: number; statted: boolean; day: boolean },
      i: number,
    ): Heater => ({
      id: `h${i}`,
      kind: h.kind,
      powerW: h.powerW,
      mount:
        h.kind === 'heat-mat'
          ? i % 2
            ? 'on-floor'
            : 'under-floor'
          : h.kind === 'radiant-panel'
            ? 'ceiling'
            : 'inside',
      xM: h.x * L,
      yM: h.y * r.depthM,
      zM: h.z * r.heightM,
      ...(h.kind === 'heat-mat' || h.kind === 'radiant-panel'
        ? { lengthM: Math.min(0.3, L / 4), depthM: Math.min(0.3, r.depthM / 2) }
        : {}),
      guarded: true,
      thermostatId: h.statted ? 't' : null,
      period: h.day ? 'day' : 'all',
    }),
  );
  const thermostats: Thermostat[] = [
    {
      id: 't',
      control: r.control,
      probe: { xM: r.probeX * L, yM: r.depthM - 0.01, zM: r.probeZ * r.heightM, at: 'wall' },
      setDayC: r.setC,
      setNightC: r.setC - 3,
      bandK: 1,
      ratingW: 600,
      cutOutC: null,
    },
  ];
  const day = { lowC: r.lowC, highC: r.lowC + r.span, rhPct: r.rhPct, sunPeakWPerM2: r.sun };
  return {
    format: 'warmstead-enclosure',
    version: 1,
    name: 'random',
    box: {
      lengthM: L,
      depthM: r.depthM,
      heightM: r.heightM,
      panels: {
        front: panelOf(r.front, 0.004),
        back: wall,
        left: wall,
        right: wall,
        top: r.mesh > 0 ? { ...wall, meshShareFrac: r.mesh, meshOpenFrac: r.meshOpen } : wall,
        bottom: wall,
      },
      vents: r.vents.map((v: { x: number; z: number; areaM2: number }) => ({
        panel: 'back' as const,
        alongM: v.x * L,
        heightM: v.z * r.heightM,
        areaM2: v.areaM2,
        openFrac: 0.7,
      })),
      gapAreaM2: r.gapAreaM2,
      widestGapM: null,
      base: r.base === 'stacked' ? { kind: 'stacked', belowC: r.lowC + 6 } : { kind: r.base },
    },
    heaters,
    thermostats,
    day: { startH: 8, endH: 20 },
    substrate: r.substrate ? { materialId: r.substrate, depthM: r.substrateM, wetFrac: r.wetFrac } : null,
    hides: [
      { xM: L * 0.2, yM: r.depthM / 2, lengthM: 0.15, depthM: 0.15, heightM: 0.08 },
      { xM: L * 0.8, yM: r.depthM / 2, lengthM: 0.15, depthM: 0.15, heightM: 0.08 },
    ],
    bowl: r.bowl ? { xM: L * 0.7, yM: r.depthM / 2, diameterM: 0.15 } : null,
    perch: null,
    misting: r.mist > 0 ? { waterGPerDay: r.mist, atHours: [8, 20] } : null,
    coverFrac: 0.3,
    lock: 'lock',
    thermometers: [],
    room: { winter: day, summer: day },
    animal: null,
  };
}

/** The same box seen in a mirror: left and right exchanged. */
export function mirrored(e: Enclosure): Enclosure {
  const L = e.box.lengthM;
  const { left, right } = e.box.panels;
  const flip = <T extends { readonly xM: number }>(x: T): T => ({ ...x, xM: L - x.xM });
  return {
    ...e,
    box: {
      ...e.box,
      panels: { ...e.box.panels, left: right, right: left },
      vents: e.box.vents.map((v) => ({
        ...v,
        alongM: v.panel === 'left' || v.panel === 'right' ? v.alongM : L - v.alongM,
      })),
    },
    heaters: e.heaters.map(flip),
    thermostats: e.thermostats.map((t) => ({ ...t, probe: flip(t.probe) })),
    hides: e.hides.map(flip),
    bowl: e.bowl ? flip(e.bowl) : null,
  };
}
