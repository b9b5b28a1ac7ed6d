import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';
import { loadFacts } from '../../records/facts.ts';
import type { Verdict } from '../../shared/verdict.ts';
import { judgeEnclosure } from '../judge-enclosure.ts';
import { sampleEnclosure } from '../testing/sample-enclosure.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../../data', import.meta.url)));
type Change = (e: Enclosure) => Enclosure;
const none: Change = (e) => e;

/** Every need of the sample box after a change, for a species and stage. */
const judged = (change: Change, speciesId = 'corn') =>
  judgeEnclosure(change(sampleEnclosure), facts.species[speciesId]!, facts.standards['home-third']!, facts);
const verdictOf = (id: string, change: Change, speciesId?: string): Verdict | 'absent' =>
  judged(change, speciesId).find((need) => need.id === id)?.verdict ?? 'absent';

const heater =
  (part: Partial<Heater>): Change =>
  (e) => ({ ...e, heaters: e.heaters.map((h) => ({ ...h, ...part })) });
const thermostat =
  (part: Partial<Thermostat>): Change =>
  (e) => ({ ...e, thermostats: e.thermostats.map((t) => ({ ...t, ...part })) });
const probe =
  (part: Partial<Thermostat['probe']>): Change =>
  (e) => ({ ...e, thermostats: e.thermostats.map((t) => ({ ...t, probe: { ...t.probe, ...part } })) });
const box =
  (part: Partial<Enclosure['box']>): Change =>
  (e) => ({ ...e, box: { ...e.box, ...part } });
const lid =
  (meshShareFrac: number, meshCoveredFrac = 0): Change =>
  (e) =>
    box({
      panels: { ...e.box.panels, top: { ...e.box.panels.top, meshShareFrac, meshOpenFrac: 0.6, meshCoveredFrac } },
    })(e);
const with_ =
  (part: Partial<Enclosure>): Change =>
  (e) => ({ ...e, ...part });
const animal = (
  speciesId: string,
  stage: 'hatchling' | 'young' | 'adult',
  totalLengthM: number,
  massG: number | null = null,
) => with_({ animal: { speciesId, stage, totalLengthM, massG } });
const both =
  (...changes: readonly Change[]): Change =>
  (e) =>
    changes.reduce((at, change) => change(at), e);
const hides = (...xM: readonly number[]) =>
  with_({ hides: xM.map((x) => ({ xM: x, yM: 0.3, lengthM: 0.25, depthM: 0.2, heightM: 0.1 })) });
const hideSize = (lengthM: number, depthM: number, heightM = 0.1) =>
  with_({ hides: [0.3, 1.2].map((xM) => ({ xM, yM: 0.3, lengthM, depthM, heightM })) });
const tubWalls: Change = (e) => {
  const wall = { layers: [{ materialId: 'polypropylene', thicknessM: 0.003 }] };
  return box({ panels: { front: wall, back: wall, left: wall, right: wall, top: wall, bottom: wall } })(e);
};
const mat: Change = both(heater({ kind: 'heat-mat', powerW: 12, mount: 'under-floor' }), probe({ at: 'mat' }));

const cases: readonly (readonly [
  title: string,
  id: string,
  change: Change,
  expected: Verdict | 'absent',
  speciesId?: string,
])[] = [
  ['a dark heater at night', 'night-light-emitter', none, 'holds'],
  ['a lamp by day', 'night-light-emitter', heater({ kind: 'halogen-lamp', period: 'day' }), 'holds'],
  ['a lamp day and night', 'night-light-emitter', heater({ kind: 'halogen-lamp', period: 'all' }), 'fails'],
  ['a spot lamp day and night', 'night-light-emitter', heater({ kind: 'basking-lamp' }), 'fails'],
  ['an infrared projector at night', 'night-light-emitter', heater({ kind: 'infrared-projector' }), 'holds'],

  ['a thermostat', 'thermostat-emitter', none, 'holds'],
  ['no thermostat', 'thermostat-emitter', heater({ thermostatId: null }), 'fails'],
  ['a thermostat that is not drawn', 'thermostat-emitter', heater({ thermostatId: 'ghost' }), 'fails'],
  ['an emitter on pulses', 'thermostat-kind-emitter', none, 'holds'],
  ['a lamp on pulses', 'thermostat-kind-emitter', heater({ kind: 'halogen-lamp', period: 'day' }), 'fails'],
  [
    'a lamp switched on and off',
    'thermostat-kind-emitter',
    both(heater({ kind: 'basking-lamp', period: 'day' }), thermostat({ control: 'on-off' })),
    'fails',
  ],
  [
    'a lamp dimmed',
    'thermostat-kind-emitter',
    both(heater({ kind: 'halogen-lamp', period: 'day' }), thermostat({ control: 'dimming' })),
    'holds',
  ],
  ['a mat switched on and off', 'thermostat-kind-emitter', both(mat, thermostat({ control: 'on-off' })), 'holds'],

  ['a ceramic holder', 'holder-emitter', none, 'holds'],
  ['a plastic holder', 'holder-emitter', heater({ holder: 'plastic' }), 'fails'],
  ['a holder nobody entered', 'holder-emitter', heater({ holder: 'none' }), 'not-known'],
  ['a mat has no holder', 'holder-emitter', mat, 'absent'],

  ['a guarded emitter', 'guard-emitter', none, 'holds'],
  ['a bare emitter inside', 'guard-emitter', heater({ guarded: false }), 'fails'],
  ['a bare emitter on the ceiling', 'guard-emitter', heater({ guarded: false, mount: 'ceiling' }), 'fails'],
  [
    'a bare lamp above the mesh',
    'guard-emitter',
    heater({ guarded: false, mount: 'above-mesh', kind: 'halogen-lamp' }),
    'holds',
  ],
  ['a mat under the floor', 'guard-emitter', both(mat, heater({ guarded: false })), 'holds'],
  ['a bare panel', 'guard-emitter', heater({ kind: 'radiant-panel', mount: 'ceiling', guarded: false }), 'not-known'],
  ['a guarded panel', 'guard-emitter', heater({ kind: 'radiant-panel', mount: 'ceiling', guarded: true }), 'holds'],

  ['load at 80 %', 'load-pulse', heater({ powerW: 240 }), 'holds'],
  ['load just over 80 %', 'load-pulse', heater({ powerW: 241 }), 'fails'],

  ['probe 99 mm up and 69 above the floor', 'probe-place-pulse', probe({ zM: 0.099 }), 'fails'],
  ['probe 100 mm up', 'probe-place-pulse', probe({ zM: 0.1 }), 'holds'],
  ['probe 150 mm above the substrate', 'probe-place-pulse', probe({ zM: 0.18 }), 'holds'],
  ['probe 151 mm above the substrate', 'probe-place-pulse', probe({ zM: 0.181 }), 'fails'],
  ['probe on the floor', 'probe-place-pulse', probe({ at: 'floor', zM: 0.03 }), 'fails'],
  ['probe hanging free', 'probe-place-pulse', probe({ at: 'air', yM: 0.3 }), 'fails'],
  ['probe on the front', 'probe-place-pulse', probe({ yM: 0.01 }), 'fails'],
  ['probe on a side wall', 'probe-place-pulse', probe({ xM: 0, yM: 0.3 }), 'holds'],
  ['probe 31 mm off the back wall', 'probe-place-pulse', probe({ yM: 0.569 }), 'fails'],
  ['probe under a mat for an emitter', 'probe-place-pulse', probe({ at: 'mat' }), 'fails'],
  ['probe between mat and floor', 'probe-place-pulse', mat, 'holds'],
  ['probe on the wall for a mat', 'probe-place-pulse', both(mat, probe({ at: 'wall' })), 'fails'],
  [
    'probe high beside a perch',
    'probe-place-pulse',
    both(probe({ zM: 0.45 }), with_({ perch: { xM: 0.4, yM: 0.5, zM: 0.4 } })),
    'not-known',
  ],
  [
    'probe high, the perch far below',
    'probe-place-pulse',
    both(probe({ zM: 0.45 }), with_({ perch: { xM: 0.4, yM: 0.5, zM: 0.29 } })),
    'fails',
  ],
  ['probe two thirds along', 'probe-end-pulse', probe({ xM: 1.0 }), 'holds'],
  ['probe in the cool third', 'probe-end-pulse', probe({ xM: 1.01 }), 'fails'],
  [
    'probe at the left with the heater on the right',
    'probe-end-pulse',
    both(heater({ xM: 1.2 }), probe({ xM: 0.2 })),
    'fails',
  ],

  ['a digital probe at the basking site', 'thermometer-basking', none, 'holds'],
  [
    'an infrared thermometer',
    'thermometer-basking',
    with_({ thermometers: [{ place: 'basking', kind: 'infrared-gun' }] }),
    'holds',
  ],
  [
    'a stick-on dial',
    'thermometer-basking',
    with_({ thermometers: [{ place: 'basking', kind: 'stick-on-dial' }] }),
    'fails',
  ],
  [
    'a thermometer at the cool end only',
    'thermometer-basking',
    with_({ thermometers: [{ place: 'cool-end', kind: 'digital-probe' }] }),
    'fails',
  ],
  [
    'none at the cool end',
    'thermometer-cool-end',
    with_({ thermometers: [{ place: 'basking', kind: 'digital-probe' }] }),
    'fails',
  ],

  ['a lock', 'lock', none, 'holds'],
  ['a catch', 'lock', with_({ lock: 'catch' }), 'fails'],
  ['nothing', 'lock', with_({ lock: 'none' }), 'fails'],
  ['a gap of half the head (8 of 16 mm)', 'gap', box({ widestGapM: 0.008 }), 'holds'],
  ['a gap a little over half', 'gap', box({ widestGapM: 0.0081 }), 'not-known'],
  ['a gap of three quarters', 'gap', box({ widestGapM: 0.012 }), 'fails'],
  ['a gap nobody measured', 'gap', box({ widestGapM: null }), 'not-known'],
  [
    'the same gap for a hatchling (7 mm head)',
    'gap',
    both(box({ widestGapM: 0.008 }), animal('corn', 'hatchling', 0.25)),
    'fails',
  ],

  ['as long as the snake', 'space-now', box({ lengthM: 1.2 }), 'holds'],
  ['a centimetre short', 'space-now', box({ lengthM: 1.19 }), 'fails'],
  ['a third as deep', 'space-now', box({ depthM: 0.4 }), 'holds'],
  ['less than a third as deep', 'space-now', box({ depthM: 0.39 }), 'fails'],
  ['a third as high', 'space-now', box({ heightM: 0.4 }), 'holds'],
  ['less than a third as high', 'space-now', box({ heightM: 0.39 }), 'fails'],

  ['two hides', 'two-hides', hides(0.3, 1.2), 'holds'],
  ['no hide', 'two-hides', hides(), 'fails'],
  ['one warm hide', 'two-hides', hides(0.3), 'fails'],
  ['one cool hide', 'two-hides', hides(1.2), 'fails'],
  ['two hides at the warm end', 'two-hides', hides(0.2, 0.7), 'fails'],
  ['a hide just past the middle counts as cool', 'two-hides', hides(0.2, 0.76), 'holds'],
  ['two hides without a heater', 'two-hides', both(hides(0.3, 1.2), with_({ heaters: [] })), 'not-known'],
  ['hides that fit', 'hide-fit', none, 'holds'],
  // Coil of 1.2 m and 600 g: 0.0339 m2; half is 0.0170, four times and 0.015 more is 0.1508.
  ['a hide of 171 cm²', 'hide-fit', hideSize(0.19, 0.09), 'holds'],
  ['a hide of 162 cm²', 'hide-fit', hideSize(0.18, 0.09), 'fails'],
  ['a hide of 1500 cm²', 'hide-fit', hideSize(0.5, 0.3), 'holds'],
  ['a hide of 1550 cm²', 'hide-fit', hideSize(0.5, 0.31), 'fails'],
  ['a hide 35 mm high', 'hide-fit', hideSize(0.25, 0.2, 0.035), 'holds'],
  ['a hide 33 mm high', 'hide-fit', hideSize(0.25, 0.2, 0.033), 'fails'],

  ['the bowl at the cool end', 'bowl-cool-end', none, 'holds'],
  ['the bowl at the warm end', 'bowl-cool-end', with_({ bowl: { xM: 0.3, yM: 0.2, diameterM: 0.25 } }), 'fails'],
  ['the bowl in the middle', 'bowl-cool-end', with_({ bowl: { xM: 0.75, yM: 0.2, diameterM: 0.25 } }), 'fails'],
  ['the bowl just past the middle', 'bowl-cool-end', with_({ bowl: { xM: 0.76, yM: 0.2, diameterM: 0.25 } }), 'holds'],
  ['no bowl', 'bowl-cool-end', with_({ bowl: null }), 'fails'],
  ['no heater', 'bowl-cool-end', with_({ heaters: [] }), 'not-known'],
  ['a bowl of 147 mm', 'bowl-size', with_({ bowl: { xM: 1.3, yM: 0.2, diameterM: 0.147 } }), 'holds'],
  ['a bowl of 146 mm', 'bowl-size', with_({ bowl: { xM: 1.3, yM: 0.2, diameterM: 0.146 } }), 'fails'],
  [
    'a small bowl for an animal of dry country',
    'bowl-size',
    both(animal('rosy', 'adult', 0.8), with_({ bowl: { xM: 1.3, yM: 0.2, diameterM: 0.08 } })),
    'holds',
    'rosy',
  ],

  ['aspen for a corn snake', 'substrate', none, 'holds'],
  [
    'coir for a corn snake',
    'substrate',
    with_({ substrate: { materialId: 'coir-dry', depthM: 0.03, wetFrac: 0 } }),
    'holds',
  ],
  [
    'coir for an animal of dry country',
    'substrate',
    both(animal('rosy', 'adult', 0.8), with_({ substrate: { materialId: 'coir-dry', depthM: 0.03, wetFrac: 0 } })),
    'fails',
    'rosy',
  ],
  ['aspen for a tropical boa', 'substrate', animal('boa', 'young', 1.0), 'fails', 'boa'],
  [
    'bark for a tropical boa',
    'substrate',
    both(animal('boa', 'young', 1.0), with_({ substrate: { materialId: 'bark-chips', depthM: 0.04, wetFrac: 0.2 } })),
    'holds',
    'boa',
  ],
  ['a bare floor', 'substrate', with_({ substrate: null }), 'fails'],
  [
    'something we know nothing about',
    'substrate',
    with_({ substrate: { materialId: 'glass', depthM: 0.03, wetFrac: 0 } }),
    'not-known',
  ],
  [
    '100 mm for a sand boa',
    'substrate-depth',
    both(animal('sand-boa', 'adult', 0.6), with_({ substrate: { materialId: 'loam-sand', depthM: 0.1, wetFrac: 0 } })),
    'holds',
    'sand-boa',
  ],
  [
    '99 mm for a sand boa',
    'substrate-depth',
    both(
      animal('sand-boa', 'adult', 0.6),
      with_({ substrate: { materialId: 'loam-sand', depthM: 0.099, wetFrac: 0 } }),
    ),
    'fails',
    'sand-boa',
  ],
  [
    '20 mm over a mat',
    'mat-not-smothered',
    both(mat, with_({ substrate: { materialId: 'aspen-chips', depthM: 0.02, wetFrac: 0 } })),
    'holds',
  ],
  [
    '21 mm over a mat',
    'mat-not-smothered',
    both(mat, with_({ substrate: { materialId: 'aspen-chips', depthM: 0.021, wetFrac: 0 } })),
    'fails',
  ],
  ['no mat', 'mat-not-smothered', none, 'absent'],

  ['a closed lid for a royal python', 'lid-humidity', animal('royal', 'adult', 1.2), 'holds', 'royal'],
  [
    'a quarter of open mesh for a royal python',
    'lid-humidity',
    both(animal('royal', 'adult', 1.2), lid(0.25)),
    'holds',
    'royal',
  ],
  [
    'more than a quarter for a royal python',
    'lid-humidity',
    both(animal('royal', 'adult', 1.2), lid(0.26)),
    'fails',
    'royal',
  ],
  [
    'a mesh lid three quarters covered',
    'lid-humidity',
    both(animal('royal', 'adult', 1.2), lid(1, 0.75)),
    'holds',
    'royal',
  ],
  ['a mesh lid for a corn snake', 'lid-humidity', lid(1), 'holds'],
  [
    'a mesh lid for a carpet python',
    'lid-humidity',
    both(animal('carpet', 'young', 1.0), lid(1)),
    'not-known',
    'carpet',
  ],
  [
    'a mesh tub for a carpet python',
    'lid-humidity',
    both(tubWalls, animal('carpet', 'young', 0.9), lid(1)),
    'fails',
    'carpet',
  ],
  [
    'a mesh lid for a garter snake, which wants 50 % and more',
    'lid-humidity',
    both(animal('garter', 'adult', 0.7), lid(1)),
    'fails',
    'garter',
  ],

  // 1.5 x 0.6 m is 0.9 m2; twice the square of 0.67 m is 0.898, of 0.68 m 0.925.
  [
    'a young snake of 0.68 m in a bare box',
    'too-bare',
    both(animal('corn', 'young', 0.68), with_({ coverFrac: 0.1 })),
    'holds',
  ],
  [
    'a young snake of 0.67 m in a bare box',
    'too-bare',
    both(animal('corn', 'young', 0.67), with_({ coverFrac: 0.29 })),
    'fails',
  ],
  ['the same with cover', 'too-bare', both(animal('corn', 'young', 0.67), with_({ coverFrac: 0.3 })), 'holds'],
  ['a grown snake is not asked', 'too-bare', with_({ coverFrac: 0 }), 'absent'],

  ['a corn hatchling in a tub', 'starter-tub', both(tubWalls, mat, animal('corn', 'hatchling', 0.3)), 'holds'],
  ['a corn snake of 1 m in a tub', 'starter-tub', both(tubWalls, mat, animal('corn', 'adult', 1.0)), 'holds'],
  ['a corn snake over 1 m in a tub', 'starter-tub', both(tubWalls, mat, animal('corn', 'adult', 1.01)), 'fails'],
  [
    'a royal python hatchling in a tub',
    'starter-tub',
    both(tubWalls, mat, animal('royal', 'hatchling', 0.4)),
    'fails',
    'royal',
  ],
  ['a rosy boa in a tub', 'starter-tub', both(tubWalls, mat, animal('rosy', 'young', 0.4)), 'not-known', 'rosy'],
  ['a young rat snake in a tub', 'starter-tub', both(tubWalls, mat, animal('rat', 'young', 0.6)), 'holds', 'rat'],
  ['a grown rat snake in a tub', 'starter-tub', both(tubWalls, mat, animal('rat', 'adult', 0.9)), 'fails', 'rat'],
  ['a wooden box is no tub', 'starter-tub', none, 'absent'],
  ['a mat for 1 m', 'mat-alone', both(mat, animal('corn', 'adult', 1.0)), 'holds'],
  ['a mat for more than 1 m', 'mat-alone', both(mat, animal('corn', 'adult', 1.01)), 'fails'],
  [
    'planted',
    'planted',
    with_({ substrate: { materialId: 'loam-leaf-litter', depthM: 0.06, wetFrac: 0.2 }, coverFrac: 0.4 }),
    'holds',
  ],
  [
    'a dry floor is not planted',
    'planted',
    with_({ substrate: { materialId: 'loam-leaf-litter', depthM: 0.06, wetFrac: 0.19 }, coverFrac: 0.4 }),
    'absent',
  ],
];

describe('rules of the enclosure', () => {
  for (const [title, id, change, expected, speciesId] of cases) {
    test(`${title}: ${id} ${expected}`, () => {
      expect(verdictOf(id, change, speciesId)).toBe(expected);
    });
  }

  test('the sample holds every need', () => {
    expect(judged(none).filter((need) => need.verdict !== 'holds')).toEqual([]);
  });

  test('every answer is whole: reasons, source, and a way out when it does not hold', () => {
    const answers = cases.flatMap((one) => judged(one[2], one[4]));
    for (const need of answers) {
      expect(need.reasons.length).toBeGreaterThan(0);
      expect(facts.sources[need.source], need.source).toBeDefined();
      expect(need.wanted).not.toBe('');
      expect(need.found).not.toBe('');
      if (need.verdict === 'holds') expect(need.fixes).toEqual([]);
      if (need.verdict === 'fails') expect(need.fixes.length, need.id).toBeGreaterThan(0);
      if (need.verdict === 'not-known') expect(need.settledBy, need.id).toBeTruthy();
    }
  });

  test('ids are unique within one answer', () => {
    const ids = judged(none).map((need) => need.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('without an animal of the species its usual adult is judged, and it says so', () => {
    const need = judged(with_({ animal: null })).find((n) => n.id === 'space-now');
    expect(need?.reasons.join(' ')).toContain('150 cm');
  });

  test('without a standard the space is not known', () => {
    const found = judgeEnclosure(sampleEnclosure, facts.species.corn!, null, facts);
    expect(found.find((n) => n.id === 'space-now')?.verdict).toBe('not-known');
  });

  test('a standard not written for the animal is not known', () => {
    const found = judgeEnclosure(sampleEnclosure, facts.species.corn!, facts.standards['de-royal']!, facts);
    expect(found.find((n) => n.id === 'space-now')?.verdict).toBe('not-known');
  });
});
