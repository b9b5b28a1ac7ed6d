import { describe, expect, test } from 'vitest';
import type { FitnessFinding } from '../../animal/fitness.ts';
import { reason } from '../../animal/reason.ts';
import type { Place } from '../../husbandry/law-rule.ts';
import { sampleEnclosure } from '../../husbandry/testing/sample-enclosure.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { loadRequirements } from '../../records/release-facts.ts';
import { seededUniform } from '../../shared/seeded.ts';
import { type Override, type RequirementId, requirementIds, type Statement, statementForms } from './requirement.ts';
import { type ReleaseInput, releaseAnswer } from './requirements.ts';
import { de } from './words/de.ts';
import { en } from './words/en.ts';
import { sayReleaseReason, sayRequirement } from './words/say.ts';

const { facts } = allFacts();
const { rows, faults } = loadRequirements();
const at = '2026-11-28T10:00:00.000Z';

const statement = (requirement: RequirementId, part: Partial<Statement> = {}): Statement => ({
  requirement,
  answer: 'yes',
  text: '',
  place: null,
  years: null,
  at,
  by: 'tester',
  ...part,
});
const override = (requirement: RequirementId, covers: Override['covers'] = 'not-met'): Override => ({
  requirement,
  covers,
  reason: 'the keeper is a vet herself',
  at,
  by: 'manager',
});
const fitIds: readonly FitnessFinding['id'][] = [
  'examination',
  'mass',
  'feeding',
  'slough',
  'quarantine',
  'mites',
  'treatment',
  'settled',
];
const fit = (worse: Partial<Record<FitnessFinding['id'], FitnessFinding['answer']>> = {}) => ({
  answer: 'fit' as const,
  findings: fitIds.map((id) => ({ id, answer: worse[id] ?? ('clear' as const), reasons: [reason('exam.none')] })),
});
const saidAll = (place: Place = 'england'): ReleaseInput['statements'] => ({
  'home-place': statement('home-place', { place }),
  'buyer-age': statement('buyer-age', { years: 16 }),
  cautions: statement('cautions'),
  vet: statement('vet', { text: 'a practice in the next town' }),
  information: statement('information'),
});
const ready: ReleaseInput = {
  rows,
  home: {
    enclosure: sampleEnclosure,
    plannedSpeciesId: 'corn',
    species: facts.species.corn!,
    facts,
    enquiry: { on: at, by: 'tester' },
    proof: { verdict: 'proven', current: true, on: at, by: 'tester' },
  },
  animal: { fitness: fit(), register: [], lookedOver: { on: '2026-11-27', by: 'tester' } },
  law: {
    law: facts.law,
    speciesId: 'corn',
    annex: 'none',
    underTreatment: false,
    papersThere: null,
    deskPlace: 'england',
    usualAgeYears: 16,
    today: '2026-11-28',
  },
  householdExplained: true,
  statements: saidAll(),
  overrides: {},
  policy: {},
};

type Change = (input: ReleaseInput) => ReleaseInput;
const say =
  (id: RequirementId, part: Partial<Statement>): Change =>
  (input) => ({ ...input, statements: { ...input.statements, [id]: statement(id, part) } });
const unsaid =
  (id: RequirementId): Change =>
  (input) => ({ ...input, statements: { ...input.statements, [id]: undefined } });
const home =
  (part: Partial<ReleaseInput['home']>): Change =>
  (input) => ({ ...input, home: { ...input.home, ...part } });
const box = (part: Partial<Enclosure>): Change => home({ enclosure: { ...sampleEnclosure, ...part } });
const animal =
  (worse: Parameters<typeof fit>[0]): Change =>
  (input) => ({ ...input, animal: { ...input.animal, fitness: fit(worse) } });
const law =
  (part: Partial<ReleaseInput['law']>): Change =>
  (input) => ({ ...input, law: { ...input.law, ...part } });
const both =
  (...changes: readonly Change[]): Change =>
  (input) =>
    changes.reduce((now, change) => change(now), input);
const heater = sampleEnclosure.heaters[0]!;
const thermostat = sampleEnclosure.thermostats[0]!;
const found = (id: RequirementId, change: Change = (x) => x) =>
  releaseAnswer(change(ready)).findings.find((one) => one.id === id)!;

test('data/release.json is whole, in order, and every source is known', () => {
  expect(faults).toEqual([]);
  expect(rows.map((row) => row.id)).toEqual([...requirementIds]);
  expect(rows.filter((row) => row.absolute === 'always').map((row) => row.id)).toEqual(['thermostat', 'examination']);
});

test('a sound animal for a proven home, everything said: the door is open', () => {
  const { open, next, findings } = releaseAnswer(ready);
  expect(findings.filter((one) => one.answer !== 'met')).toEqual([]);
  expect([open, next]).toEqual([true, null]);
});

describe('each requirement', () => {
  test.each<[RequirementId, string, Change, string]>([
    ['home-fits', 'no home drawn', home({ enclosure: null }), 'not-known'],
    ['home-fits', 'drawn for another species', home({ plannedSpeciesId: 'royal' }), 'not-met'],
    ['home-proven', 'never judged', home({ proof: null }), 'not-known'],
    ['home-proven', 'changed since', home({ proof: { ...ready.home.proof!, current: false } }), 'not-known'],
    ['home-proven', 'not proven', home({ proof: { ...ready.home.proof!, verdict: 'not-proven' } }), 'not-known'],
    ['home-proven', 'failed', home({ proof: { ...ready.home.proof!, verdict: 'failed' } }), 'not-met'],
    ['thermostat', 'none', box({ heaters: [{ ...heater, thermostatId: null }] }), 'not-met'],
    [
      'thermostat',
      'a lamp on pulses',
      box({
        heaters: [{ ...heater, kind: 'halogen-lamp', period: 'day' }],
        thermostats: [{ ...thermostat, control: 'pulse' }],
      }),
      'not-met',
    ],
    ['thermostat', 'no home drawn', home({ enclosure: null }), 'not-known'],
    ['guard', 'bare', box({ heaters: [{ ...heater, guarded: false }] }), 'not-met'],
    ['guard', 'a bare panel', box({ heaters: [{ ...heater, kind: 'radiant-panel', guarded: false }] }), 'not-known'],
    [
      'guard',
      'bare in the drawing, seen at home',
      both(box({ heaters: [{ ...heater, guarded: false }] }), say('guard', { text: 'photograph' })),
      'met',
    ],
    ['guard', 'drawn, but seen not to be there', say('guard', { answer: 'no', text: 'taken off' }), 'not-met'],
    ['two-hides', 'one', box({ hides: sampleEnclosure.hides.slice(0, 1) }), 'not-met'],
    ['lock', 'a catch', box({ lock: 'catch' }), 'not-met'],
    ['lock', 'gap not measured', box({ box: { ...sampleEnclosure.box, widestGapM: null } }), 'not-known'],
    ['thermometer', 'none', box({ thermometers: [] }), 'not-met'],
    ['heater-safe', 'a plastic holder', box({ heaters: [{ ...heater, holder: 'plastic' }] }), 'not-met'],
    ['heater-safe', 'holder not entered', box({ heaters: [{ ...heater, holder: 'none' }] }), 'not-known'],
    ['examination', 'a vet sign', animal({ examination: 'vet' }), 'not-met'],
    ['examination', 'nobody looked', animal({ examination: 'not-known' }), 'not-known'],
    ['feeding', 'too few meals', animal({ feeding: 'not-known' }), 'not-known'],
    ['slough', 'under way', animal({ slough: 'hold' }), 'not-met'],
    ['quarantine', 'running', animal({ quarantine: 'hold' }), 'not-met'],
    ['treatment', 'running in England', animal({ treatment: 'hold' }), 'not-met'],
    [
      'treatment',
      "running in England, a vet's word there",
      both(animal({ treatment: 'hold' }), say('treatment', { text: 'a vet, yesterday' })),
      'not-met',
    ],
    [
      'treatment',
      "running in Scotland, a vet's word there",
      both(
        animal({ treatment: 'hold' }),
        law({ deskPlace: 'scotland', underTreatment: true }),
        say('home-place', { place: 'scotland' }),
        say('treatment', { text: 'a vet, yesterday' }),
      ),
      'met',
    ],
    ['home-place', 'not said', unsaid('home-place'), 'not-known'],
    ['buyer-age', 'not asked', unsaid('buyer-age'), 'not-known'],
    ['buyer-age', 'taken back', say('buyer-age', { answer: 'open' }), 'not-known'],
    ['buyer-age', 'too young', say('buyer-age', { answer: 'no', years: 16 }), 'not-met'],
    ['buyer-age', 'asked against a lower age', say('buyer-age', { years: 14 }), 'not-known'],
    ['species-lawful', 'nobody said where the home is', unsaid('home-place'), 'not-known'],
    [
      'species-lawful',
      'a kingsnake from England to Germany',
      both(law({ speciesId: 'california-kingsnake' }), say('home-place', { place: 'germany' })),
      'not-met',
    ],
    ['species-lawful', 'any reptile to Belgium', say('home-place', { place: 'belgium' }), 'not-known'],
    [
      'species-lawful',
      'to Belgium, the authority was asked',
      both(say('home-place', { place: 'belgium' }), say('species-lawful', { text: 'on the list, told today' })),
      'met',
    ],
    ['papers', 'annex B, nothing entered', law({ annex: 'B' }), 'not-known'],
    ['papers', 'annex B, there', law({ annex: 'B', papersThere: true }), 'met'],
    ['papers', 'annex A, missing', law({ annex: 'A', papersThere: false }), 'not-met'],
    [
      'licences',
      'New South Wales, not seen',
      both(law({ deskPlace: 'new-south-wales' }), say('home-place', { place: 'new-south-wales' })),
      'not-known',
    ],
    ['cautions', 'not explained yet', unsaid('cautions'), 'not-known'],
    ['household', 'not explained', (input) => ({ ...input, householdExplained: false }), 'not-known'],
    ['household', 'said not to be', say('household', { answer: 'no' }), 'not-met'],
    ['vet', 'none named', unsaid('vet'), 'not-known'],
    ['vet', 'none found', say('vet', { answer: 'no' }), 'not-met'],
    ['information', 'not handed over', unsaid('information'), 'not-known'],
  ])('%s: %s', (id, _what, change, answer) => {
    const finding = found(id, change);
    expect(finding.answer).toBe(answer);
    expect(finding.stands).toBe(answer === 'met');
    for (const language of ['en', 'de'] as const)
      expect(finding.reasons.map((why) => sayReleaseReason(why, language)).join(' ')).toMatch(/^[^{}#]{3,}$/);
  });

  test('register: a heading that is missing is named in the language', () => {
    const missing = { heading: { ...allFacts().care.register[0]! }, state: 'missing' as const, value: '', law: null };
    const finding = found('register', (input) => ({ ...input, animal: { ...input.animal, register: [missing] } }));
    expect(finding.answer).toBe('not-met');
    expect(sayReleaseReason(finding.reasons[0]!, 'en')).toBe('Missing in the register: Full name of the supplier.');
    expect(sayReleaseReason(finding.reasons[0]!, 'de')).toBe('Fehlt im Register: Voller Name des Lieferanten.');
  });

  test('an animal that has left cannot go again', () => {
    const gone = (input: ReleaseInput): ReleaseInput => ({
      ...input,
      animal: { ...input.animal, fitness: { answer: 'gone', findings: [] } },
    });
    expect(found('examination', gone)).toMatchObject({ answer: 'not-met', absolute: 'program' });
  });
});

describe('overrides and policy', () => {
  const with_ = (overrides: ReleaseInput['overrides'], change: Change = (x) => x) =>
    releaseAnswer({ ...change(ready), overrides });

  test('a manager overrides what is not absolute', () => {
    const answer = with_({ lock: override('lock') }, box({ lock: 'none' }));
    expect(answer.open).toBe(true);
    expect(answer.findings.find((one) => one.id === 'lock')).toMatchObject({ answer: 'not-met', stands: true });
  });

  test('an override of "not known" does not cover a failure that comes to light', () => {
    const overrides = { 'home-proven': override('home-proven', 'not-known') } as const;
    expect(with_(overrides, home({ proof: null })).open).toBe(true);
    const failed = home({ proof: { ...ready.home.proof!, verdict: 'failed' } });
    expect(with_(overrides, failed)).toMatchObject({ open: false, next: 'home-proven' });
  });

  test('thermostat and examination stay absolute whatever the shop sets', () => {
    const policy = { thermostat: 'manager', examination: 'manager' } as const;
    const bare = box({ heaters: [{ ...heater, thermostatId: null }] });
    const answer = releaseAnswer({ ...bare(ready), policy, overrides: { thermostat: override('thermostat') } });
    expect(answer).toMatchObject({ open: false, next: 'thermostat' });
  });

  test('the shop makes a requirement absolute', () => {
    const absolute = { ...box({ lock: 'none' })(ready), policy: { lock: 'absolute' as const } };
    expect(releaseAnswer({ ...absolute, overrides: { lock: override('lock') } }).open).toBe(false);
  });

  test('no policy and no override stands against the law', () => {
    const change = both(animal({ treatment: 'hold' }), law({ underTreatment: true }));
    const answer = releaseAnswer({
      ...change(ready),
      policy: { treatment: 'manager' },
      overrides: { treatment: override('treatment') },
    });
    expect(answer.findings.find((one) => one.id === 'treatment')).toMatchObject({ absolute: 'law', stands: false });
  });
});

test('law: 400 random cases; what is absolute and unmet shuts the door whatever is overridden, and nothing else can', () => {
  const random = seededUniform(20261128);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const answers = ['clear', 'clear', 'clear', 'hold', 'vet', 'not-known'] as const;
  let [shut, opened, overridden] = [0, 0, 0];
  for (let n = 0; n < 400; n++) {
    const worse = Object.fromEntries(fitIds.map((id) => [id, random() < 0.1 ? pick(answers) : 'clear']));
    const lose = requirementIds.filter((id) => id in statementForms && random() < 0.1);
    const input: ReleaseInput = {
      ...both(
        animal(worse),
        home({ proof: pick([null, ready.home.proof, ready.home.proof]) }),
        ...lose.map(unsaid),
        random() < 0.2
          ? say('home-place', { place: pick(['germany', 'belgium', 'scotland', 'california']) })
          : (x) => x,
      )(ready),
      overrides: Object.fromEntries(requirementIds.filter(() => random() < 0.9).map((id) => [id, override(id)])),
      policy: Object.fromEntries(
        requirementIds.filter(() => random() < 0.2).map((id) => [id, pick(['absolute', 'manager'])]),
      ),
    };
    const { findings, open } = releaseAnswer(input);
    const barred = findings.filter((one) => one.answer !== 'met' && one.absolute !== null);
    if (barred.length > 0) {
      shut += 1;
      expect(open).toBe(false);
      for (const one of barred) expect(one.stands).toBe(false);
    }
    const uncovered = findings.filter((one) => one.answer !== 'met' && one.override === null);
    expect(open).toBe(barred.length === 0 && uncovered.length === 0);
    if (open) opened += 1;
    if (open && findings.some((one) => one.answer !== 'met')) overridden += 1;
    for (const one of findings) expect(one.reasons.length).toBeGreaterThan(0);
  }
  expect(Math.min(shut, opened, overridden)).toBeGreaterThan(20);
});

test('both languages hold the same words, blanks and questions', () => {
  const blanks = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map((one) => one[1]).sort();
  for (const [key, text] of Object.entries(en.reasons))
    expect(blanks(de.reasons[key as keyof typeof de.reasons]), key).toEqual(blanks(text));
  expect(Object.keys(de.words).sort()).toEqual(Object.keys(en.words).sort());
  for (const id of requirementIds)
    for (const language of ['en', 'de'] as const) {
      const { title, ask, text, todo } = sayRequirement(id, language);
      const form = statementForms[id];
      expect([title, todo].every((words) => words.length > 2)).toBe(true);
      expect([id, ask !== undefined]).toEqual([id, form !== undefined]);
      expect([id, text !== undefined]).toEqual([id, form !== undefined && form.text !== 'none']);
    }
});
