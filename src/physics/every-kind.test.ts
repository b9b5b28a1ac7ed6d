// Every kind of enclosure that a desk meets, as a file: it passes the door, settles, runs a day with closed books, and does
// what that kind is known for. The table in docs/theory/README.md names this test beside each of them.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import type { Base, Enclosure, Heater, Panel, RoomDay } from './enclosure.ts';
import { roomAt } from './room-day.ts';
import { buildModel, simulateDay, solveSteady } from './simulate.ts';
import { enclosureFrom } from './validate-enclosure.ts';

const { materials } = loadFacts(new URL('../../data', import.meta.url).pathname).facts;

type Draft = { -readonly [K in keyof Enclosure]: Enclosure[K] };

function file(example: string, change: (draft: Draft) => void = () => {}): Enclosure {
  const draft = JSON.parse(
    readFileSync(new URL(`../../data/examples/${example}.json`, import.meta.url), 'utf8'),
  ) as Draft;
  change(draft);
  const read = enclosureFrom(JSON.parse(JSON.stringify(draft)), materials);
  if (!read.ok) throw new Error(read.faults.map((f) => `${f.field}: ${f.say}`).join('\n'));
  return read.value;
}

const rest = (e: Enclosure, sunWPerM2 = 0) =>
  solveSteady(buildModel(e, materials), { roomC: 20, roomRhPct: 50, sunWPerM2, isDay: true });
const day = (e: Enclosure, room: RoomDay = e.room.winter) =>
  simulateDay(buildModel(e, materials), room, { stepS: 60, leadH: 2 });
/** Without thermostats, so that watts are equal. */
const alwaysOn = (d: Draft) => {
  d.heaters = d.heaters.map((h) => ({ ...h, thermostatId: null }));
  d.thermostats = [];
};
const panel = (d: Draft, name: keyof Enclosure['box']['panels'], part: Partial<Panel>) => {
  d.box = { ...d.box, panels: { ...d.box.panels, [name]: { ...d.box.panels[name], ...part } } };
};
const onBase = (base: Base) => (d: Draft) => {
  alwaysOn(d);
  d.box = { ...d.box, base };
};
const heaters = (d: Draft, ...list: readonly Partial<Heater>[]) => {
  d.heaters = list.map((part, i) => ({ ...d.heaters[0]!, id: `h${i}`, ...part }));
};
const ofKind = (kind: Heater['kind'], part: Partial<Heater>) => (d: Draft) => {
  alwaysOn(d);
  heaters(d, { kind, powerW: 60, ...part });
};

const kinds: Readonly<Record<string, Enclosure>> = {
  wood: file('wood-1200'),
  'large wood': file('large-wood-1800'),
  PVC: file('pvc-1200'),
  'glass with a mesh lid': file('glass-mesh-900'),
  'plastic tub': file('tub-mat-600'),
  'tall with a perch': file('tall-wood'),
  'mesh in half the lid': file('wood-1200', (d) => panel(d, 'top', { meshShareFrac: 0.5 })),
  'mesh in the front': file('wood-1200', (d) => panel(d, 'front', { meshShareFrac: 0.3, meshOpenFrac: 0.6 })),
  'mesh in a side': file('wood-1200', (d) => panel(d, 'left', { meshShareFrac: 0.2, meshWireM: 0.001 })),
  'on legs': file('wood-1200', onBase({ kind: 'legs' })),
  'on the floor': file('wood-1200', onBase({ kind: 'floor' })),
  stacked: file('wood-1200', onBase({ kind: 'stacked', belowC: 28 })),
  'emitter above mesh': file('glass-mesh-900', (d) => heaters(d, { kind: 'ceramic-emitter', powerW: 60 })),
  'infrared projector': file('wood-1200', ofKind('infrared-projector', {})),
  'basking lamp': file('wood-1200', ofKind('basking-lamp', {})),
  'halogen lamp': file('wood-1200', ofKind('halogen-lamp', { powerW: 50 })),
  'mat inside': file(
    'wood-1200',
    ofKind('heat-mat', { powerW: 15, mount: 'on-floor', zM: 0, lengthM: 0.4, depthM: 0.4 }),
  ),
  'mat under the bottom': file(
    'wood-1200',
    ofKind('heat-mat', { powerW: 15, mount: 'under-floor', zM: 0, lengthM: 0.4, depthM: 0.4 }),
  ),
};

describe.each(Object.entries(kinds))('%s', (_, e) => {
  it('closes its books at rest and through a day, every place a number', () => {
    const still = rest(e);
    expect(still.balance.relative).toBeLessThan(1e-9);
    expect(still.balance.waterRelative).toBeLessThan(1e-6);
    const moving = day(e);
    expect(moving.balance.relative).toBeLessThan(1e-9);
    expect(moving.balance.waterRelative).toBeLessThan(1e-6);
    for (const c of moving.floorC.flat()) expect(c).toBeGreaterThan(Math.min(e.room.winter.lowC, 28) - 3);
    expect(still.places['basking-surface']).toBeGreaterThan(still.places['cool-floor']!);
  });
});

describe('what each kind is known for', () => {
  it('mesh: the more of it, the cooler and the drier', () => {
    const lid = (share: number) =>
      rest(
        file('wood-1200', (d) => {
          alwaysOn(d);
          panel(d, 'top', { meshShareFrac: share });
        }),
      );
    const [closed, half, open] = [lid(0), lid(0.5), lid(1)];
    expect(half.places['cool-air']).toBeLessThan(closed.places['cool-air']!);
    expect(open.places['cool-air']).toBeLessThan(half.places['cool-air']!);
    expect(open.airChangePerH).toBeGreaterThan(half.airChangePerH);
  });

  it('mesh: covering part of it, or finer wires in place of coarse, keeps warmth in', () => {
    const lid = (part: Partial<Panel>) =>
      rest(
        file('glass-mesh-900', (d) => {
          alwaysOn(d);
          heaters(d, { kind: 'ceramic-emitter', powerW: 60, mount: 'inside', zM: 0.3 });
          panel(d, 'top', part);
        }),
      ).places['cool-air']!;
    expect(lid({ meshCoveredFrac: 0.8 })).toBeGreaterThan(lid({ meshCoveredFrac: 0 }));
    expect(lid({ meshWireM: 0.0002 })).toBeGreaterThan(lid({ meshWireM: 0.001 }));
  });

  it('vents: a second one lets more air through', () => {
    const more = file('wood-1200', (d) => {
      const vent = { panel: 'back' as const, alongM: 1, heightM: 0.5, areaM2: 0.004, openFrac: 0.7 };
      d.box = { ...d.box, vents: [...d.box.vents, vent] };
    });
    expect(rest(more).airChangePerH).toBeGreaterThan(rest(kinds.wood!).airChangePerH);
  });

  it('base: legs below shelf, a warm box below above both', () => {
    const floor = (base: Base) => rest(file('wood-1200', onBase(base))).places['cool-floor']!;
    expect(floor({ kind: 'legs' })).toBeLessThan(floor({ kind: 'shelf' }));
    expect(floor({ kind: 'stacked', belowC: 30 })).toBeGreaterThan(floor({ kind: 'shelf' }));
  });

  it('tall: the perch is warmer than the floor below it', () => {
    const { places } = rest(kinds['tall with a perch']!);
    expect(places.perch).toBeGreaterThan(places['cool-air']!);
  });

  it('two heaters: on thermostats of their own each keeps its end; on one they share its duty', () => {
    const two = (shared: boolean) =>
      file('large-wood-1800', (d) => {
        const dimming = 'dimming' as const;
        const [first] = d.thermostats;
        const L = d.box.lengthM;
        const at = (xM: number) => ({ ...first!.probe, at: 'air' as const, xM, yM: d.box.depthM / 2, zM: 0.1 });
        d.thermostats = [
          { ...first!, id: 'a', control: dimming, bandK: 1, setDayC: 27, setNightC: 27, probe: at(0.4) },
          { ...first!, id: 'b', control: dimming, bandK: 1, setDayC: 24.5, setNightC: 24.5, probe: at(L - 0.4) },
        ].slice(0, shared ? 1 : 2);
        heaters(
          d,
          { xM: 0.4, powerW: 150, thermostatId: 'a' },
          { xM: L - 0.4, powerW: 75, thermostatId: shared ? 'a' : 'b' },
        );
      });
    const own = rest(two(false));
    expect(own.heaterW[0]! / 150).toBeGreaterThan(0.05);
    expect(Math.abs(own.heaterW[0]! / 150 - own.heaterW[1]! / 75)).toBeGreaterThan(0.02);
    const shared = rest(two(true));
    expect(shared.heaterW[0]! / 150).toBeCloseTo(shared.heaterW[1]! / 75, 6);
  });

  it('mats: substrate over one keeps its warmth in, and bare floor gives more of it to the animal', () => {
    const over = (depthM: number | null, mount: Heater['mount']) =>
      rest(
        file('tub-mat-600', (d) => {
          alwaysOn(d);
          heaters(d, { mount, powerW: 10 });
          d.substrate = depthM === null ? null : { materialId: 'aspen-chips', depthM, wetFrac: 0 };
        }),
      ).places;
    for (const mount of ['under-floor', 'on-floor'] as const) {
      expect(over(0.04, mount)['basking-surface']).toBeLessThan(over(null, mount)['basking-surface']!);
      expect(over(0.04, mount)['heater-surface']).toBeGreaterThan(over(null, mount)['heater-surface']!);
    }
    expect(over(null, 'on-floor')['basking-surface']).toBeGreaterThan(over(null, 'under-floor')['basking-surface']!);
  });

  it('sun on the glass warms, at rest and through a day; a wooden front keeps it out', () => {
    const glazed = file('wood-1200', alwaysOn);
    const boarded = file('wood-1200', (d) => {
      alwaysOn(d);
      panel(d, 'front', { layers: d.box.panels.back.layers });
    });
    const gain = (e: Enclosure) => rest(e, 400).places['cool-air']! - rest(e).places['cool-air']!;
    expect(gain(glazed)).toBeGreaterThan(3);
    expect(gain(boarded)).toBeCloseTo(0, 6);
    const { winter } = glazed.room;
    const noon = (peak: number) => Math.max(...day(glazed, { ...winter, sunPeakWPerM2: peak }).airC.flat());
    expect(noon(400)).toBeGreaterThan(noon(0) + 2);
  });

  it('room: hour by hour is the same as the low and high it was read from', () => {
    const room = { ...kinds.wood!.room.winter, lowC: 14, highC: 21 };
    const hourlyC = Array.from({ length: 24 }, (_, h) => roomAt(room, h));
    const [smooth, hourly] = [day(kinds.wood!, room), day(kinds.wood!, { ...room, hourlyC })];
    smooth.airC.forEach((row, i) => {
      row.forEach((c, k) => {
        expect(Math.abs(c - hourly.airC[i]![k]!)).toBeLessThan(0.1);
      });
    });
  });

  it('outside the range of the law of screens the answer says so', () => {
    const coarse = file('glass-mesh-900', (d) => panel(d, 'top', { meshWireM: 0.002 }));
    expect(rest(coarse).notes.map((n) => `${n.code} ${n.field}`)).toContain('PHYS_FORMULA_RANGE wireMm');
    expect(rest(kinds['glass with a mesh lid']!).notes.map((n) => n.field)).not.toContain('wireMm');
  });
});
