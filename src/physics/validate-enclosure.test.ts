// What enclosureFrom accepts and how it says no. The six ready enclosures are the valid inputs.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import materialRows from '../../data/materials.json' with { type: 'json' };
import type { Fault } from '../shared/fault.ts';
import type { MaterialTable } from './material.ts';
import { enclosureFrom } from './validate-enclosure.ts';

const materials: MaterialTable = Object.fromEntries(
  materialRows.map((row) => [
    row.id,
    {
      id: row.id,
      name: row.name,
      conductivityWPerMK: row.conductivityWPerMK.value,
      densityKgPerM3: row.densityKgPerM3.value,
      heatCapacityJPerKgK: row.heatCapacityJPerKgK.value,
      emissivity: row.emissivity.value,
      shortWaveThroughFrac: row.shortWaveThroughFrac.value,
    },
  ]),
);
const folder = new URL('../../data/examples/', import.meta.url);
const exampleNames = readdirSync(folder).filter((name) => name.endsWith('.json'));
// biome-ignore lint/suspicious/noExplicitAny: tests break parts of a parsed file on purpose
const example = (name = 'wood-1200.json'): any => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

function faultsOf(raw: unknown): readonly Fault[] {
  const result = enclosureFrom(raw, materials);
  return result.ok ? [] : result.faults;
}

/** The faults of the wooden example after a change, as "CODE field". */
// biome-ignore lint/suspicious/noExplicitAny: see above
function after(change: (e: any) => void, name?: string): string[] {
  const raw = example(name);
  change(raw);
  return faultsOf(raw).map((f) => `${f.code} ${f.field}`);
}

describe('a sound file', () => {
  it('has six ready examples', () => expect(exampleNames).toHaveLength(6));
  it.each(exampleNames)('%s is accepted and comes back unchanged', (name) => {
    const result = enclosureFrom(example(name), materials);
    expect(result).toEqual({ ok: true, value: example(name) });
  });
});

describe('single fields', () => {
  // biome-ignore lint/suspicious/noExplicitAny: see above
  const cases: [string, (e: any) => void, string[]][] = [
    ['too long', (e) => (e.box.lengthM = 5), ['ENC_RANGE box.lengthM']],
    ['negative', (e) => (e.heaters[0].powerW = -100), ['ENC_RANGE heaters[0].powerW']],
    ['infinite', (e) => (e.heaters[0].powerW = Number.POSITIVE_INFINITY), ['ENC_RANGE heaters[0].powerW']],
    ['not a number', (e) => (e.heaters[0].powerW = Number.NaN), ['ENC_TYPE heaters[0].powerW']],
    ['text for a number', (e) => (e.heaters[0].powerW = '100'), ['ENC_TYPE heaters[0].powerW']],
    ['null for a number', (e) => (e.coverFrac = null), ['ENC_TYPE coverFrac']],
    ['unknown word', (e) => (e.heaters[0].kind = 'hot rock'), ['ENC_WORD heaters[0].kind']],
    ['left out', (e) => delete e.box.gapAreaM2, ['ENC_MISSING box.gapAreaM2']],
    ['unknown key', (e) => (e.box.length = 1.2), ['ENC_UNKNOWN_KEY box.length']],
    ['no layers', (e) => (e.box.panels.top.layers = []), ['ENC_LENGTH box.panels.top.layers']],
    ['23 hours', (e) => (e.room.winter.hourlyC = Array(23).fill(20)), ['ENC_LENGTH room.winter.hourlyC']],
    ['empty name', (e) => (e.name = ''), ['ENC_TEXT name']],
    ['name with a control character', (e) => (e.name = 'a\u001b[2Jb'), ['ENC_TEXT name']],
    ['flag as text', (e) => (e.heaters[0].guarded = 'yes'), ['ENC_TYPE heaters[0].guarded']],
    ['list for an object', (e) => (e.day = [8, 20]), ['ENC_TYPE day']],
    ['object for a list', (e) => (e.hides = { a: 1 }), ['ENC_TYPE hides']],
    ['other version', (e) => (e.version = 2), ['ENC_VERSION version']],
    ['version as text', (e) => (e.version = '1'), ['ENC_WORD version']],
    ['other format', (e) => (e.format = 'something'), ['ENC_WORD format']],
  ];
  it.each(cases)('%s', (_name, change, expected) => expect(after(change)).toEqual(expected));

  it('names every fault at once', () => {
    const found = after((e) => {
      e.box.lengthM = 120;
      e.heaters[0].thermostatId = 'nobody';
      e.room.winter.lowC = 'cold';
      delete e.lock;
      e.colour = 'green';
    });
    for (const wanted of [
      'ENC_RANGE box.lengthM',
      'ENC_REFERENCE heaters[0].thermostatId',
      'ENC_TYPE room.winter.lowC',
    ]) {
      expect(found).toContain(wanted);
    }
    expect(found).toContain('ENC_MISSING lock');
    expect(found).toContain('ENC_UNKNOWN_KEY colour');
  });

  it('says what is allowed with its unit, and guesses the unit that was meant', () => {
    const raw = example();
    raw.box.lengthM = 120;
    raw.thermostats[0].setDayC = 86;
    raw.coverFrac = 40;
    const byField = new Map(faultsOf(raw).map((f) => [f.field, f]));
    expect(byField.get('box.lengthM')).toMatchObject({ got: '120', allowed: '0.2 to 4 m' });
    expect(byField.get('box.lengthM')?.fix).toContain('120 cm, write 1.2');
    expect(byField.get('thermostats[0].setDayC')?.fix).toContain('86 °F, write 30');
    expect(byField.get('coverFrac')?.fix).toContain('40 %, write 0.4');
  });

  it('points from an unknown key or word to the nearest known one', () => {
    const raw = example();
    raw.box.lenghtM = 1.2;
    raw.heaters[0].kind = 'ceramic-emiter';
    raw.box.panels.front.layers[0].materialId = 'glas';
    const fixes = faultsOf(raw).map((f) => f.fix);
    expect(fixes.join('\n')).toMatch(/"lengthM"[\s\S]*"glass"|"glass"[\s\S]*"lengthM"/);
    expect(fixes.join('\n')).toContain('"ceramic-emitter"');
  });

  it('lists the known materials when one is unknown', () => {
    const raw = example();
    raw.substrate.materialId = 'constructor';
    const [fault] = faultsOf(raw);
    expect(fault).toMatchObject({ code: 'ENC_MATERIAL', field: 'substrate.materialId' });
    for (const id of Object.keys(materials)) expect(fault?.allowed).toContain(id);
  });
});

describe('parts that must fit each other', () => {
  // biome-ignore lint/suspicious/noExplicitAny: see above
  const cases: [string, (e: any) => void, string[], string?][] = [
    ['heater beyond the wall', (e) => (e.heaters[0].xM = 1.3), ['ENC_PLACE heaters[0].xM']],
    ['heater in the substrate', (e) => (e.heaters[0].zM = 0.02), ['ENC_PLACE heaters[0].zM']],
    ['probe behind the back wall', (e) => (e.thermostats[0].probe.yM = 0.7), ['ENC_PLACE thermostats[0].probe.yM']],
    [
      'probe on a mat that is not there',
      (e) => (e.thermostats[0].probe.at = 'mat'),
      ['ENC_BELONGS thermostats[0].probe.at'],
    ],
    ['vent beyond its panel', (e) => (e.box.vents[0].alongM = 1.25), ['ENC_PLACE box.vents[0].alongM']],
    [
      'vent larger than its panel',
      (e) => (e.box.vents[0].areaM2 = 0.9),
      ['ENC_FIT box.vents[0].areaM2', 'ENC_FIT box.vents[1].areaM2'],
    ],
    ['hide larger than the box', (e) => (e.hides[0].lengthM = 1.5), ['ENC_FIT hides[0].xM']],
    ['hide through the wall', (e) => (e.hides[0].xM = 0.05), ['ENC_PLACE hides[0].xM']],
    ['bowl through the glass', (e) => (e.bowl.yM = 0.01), ['ENC_PLACE bowl.yM']],
    ['perch above the lid', (e) => (e.perch.zM = 0.9), ['ENC_PLACE perch.zM']],
    ['day backwards', (e) => (e.day = { startH: 20, endH: 8 }), ['ENC_ORDER day']],
    ['room upside down', (e) => (e.room.summer.lowC = 40), ['ENC_ORDER room.summer']],
    ['half a sunny spell', (e) => (e.room.summer.sunFromH = 12), ['ENC_ORDER room.summer.sunToH']],
    ['stacked on an unknown box', (e) => (e.box.base = { kind: 'stacked' }), ['ENC_BELONGS box.base.belowC']],
    ['shelf with a box below', (e) => (e.box.base.belowC = 25), ['ENC_BELONGS box.base.belowC']],
    ['two heaters of one name', (e) => e.heaters.push({ ...e.heaters[0] }), ['ENC_DUPLICATE heaters[1].id']],
    ['no such thermostat', (e) => (e.heaters[0].thermostatId = 'puls'), ['ENC_REFERENCE heaters[0].thermostatId']],
    ['emitter under the floor', (e) => (e.heaters[0].mount = 'under-floor'), ['ENC_MOUNT heaters[0].mount']],
    [
      'above a lid without mesh',
      (e) => Object.assign(e.heaters[0], { mount: 'above-mesh', zM: 0.62 }),
      ['ENC_MOUNT heaters[0].mount'],
    ],
    [
      'mat without its size',
      (e) => delete e.heaters[0].lengthM,
      ['ENC_MISSING heaters[0].lengthM'],
      'tub-mat-600.json',
    ],
    ['mat larger than the tub', (e) => (e.heaters[0].depthM = 0.5), ['ENC_FIT heaters[0].depthM'], 'tub-mat-600.json'],
  ];
  it.each(cases)('%s', (_name, change, expected, file) => expect(after(change, file)).toEqual(expected));

  it('still finds faults between parts when a number is broken', () => {
    const found = after((e) => {
      e.box.depthM = 'deep';
      e.heaters[0].xM = 2;
    });
    expect(found).toEqual(['ENC_TYPE box.depthM', 'ENC_PLACE heaters[0].xM']);
  });
});

describe('hostile input', () => {
  it('never throws, whatever comes', () => {
    const anything = fc.anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withNullPrototype: true,
      withSparseArray: true,
    });
    fc.assert(
      fc.property(anything, (raw) => {
        expect(enclosureFrom(raw, materials).ok).toBe(false);
      }),
      { numRuns: 500 },
    );
  });

  it('never throws when any part of a sound file is replaced', () => {
    const spots = pathsOf(example('glass-mesh-900.json'));
    fc.assert(
      fc.property(fc.constantFrom(...spots), fc.anything(), (spot, value) => {
        const raw = example('glass-mesh-900.json');
        put(raw, spot, value);
        const result = enclosureFrom(raw, materials);
        if (!result.ok) for (const fault of result.faults) expect(fault.say.length).toBeLessThan(400);
      }),
      { numRuns: 1500 },
    );
  });

  it('does not walk into deep nesting', () => {
    const deep = JSON.parse(`${'{"a":'.repeat(4000)}1${'}'.repeat(4000)}`);
    expect(faultsOf({ ...example(), box: deep }).some((f) => f.field === 'box.a')).toBe(true);
  });

  it('repeats only the start of a text of ten million characters', () => {
    const raw = example();
    raw.name = 'x'.repeat(10_000_000);
    raw.lock = raw.name;
    raw[raw.name] = 1;
    const faults = faultsOf(raw);
    expect(faults.map((f) => f.code).sort()).toEqual(['ENC_TEXT', 'ENC_UNKNOWN_KEY', 'ENC_WORD']);
    expect(JSON.stringify(faults).length).toBeLessThan(5000);
  });

  it('takes "__proto__" for the unknown key it is', () => {
    const raw = JSON.parse(JSON.stringify(example()).replace('"name"', '"__proto__": { "ok": true }, "name"'));
    expect(faultsOf(raw).map((f) => f.field)).toEqual(['__proto__']);
    expect(({} as { ok?: boolean }).ok).toBeUndefined();
  });

  it('counts unknown keys beyond the first twelve', () => {
    const many = Object.fromEntries(Array.from({ length: 50_000 }, (_, i) => [`k${i}`, i]));
    const faults = faultsOf({ ...example(), ...many });
    expect(faults).toHaveLength(13);
    expect(faults.at(-1)?.got).toBe('49988 more unknown keys');
  });
});

/** Every path into a parsed file. */
function pathsOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, part]) => [[...path, key], ...pathsOf(part, [...path, key])]);
}

// biome-ignore lint/suspicious/noExplicitAny: see above
function put(raw: any, path: readonly (string | number)[], value: unknown): void {
  const last = path.at(-1) ?? '';
  const holder = path.slice(0, -1).reduce((at, step) => at[step], raw);
  holder[last] = value;
}
