// Every sentence that a rule or a climate verdict can give has its German, with the same blanks.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import { givenCodes, type Told } from '../../husbandry/coded.ts';
import '../../husbandry/law-checks.ts';
import '../../proving/diagnosis/diagnose.ts';
import '../../proving/files/understand-log.ts';
import { judgeEnclosure } from '../../husbandry/judge-enclosure.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { guardSayings } from '../../planning/faults/guards.ts';
import { powerCutSteps } from '../../planning/faults/power-cut.ts';
import { rehearsals } from '../../planning/faults/rehearsals.ts';
import { refusals } from '../../planning/kit/refusal.ts';
import { planEnclosure } from '../../planning/plan.ts';
import { germanSayings, sayingIn } from '../../proving/words/say-told.ts';
import { loadFacts } from '../../records/facts.ts';
import { measureFor } from '../settings/measure.ts';
import { needWords } from './need-words.ts';

const data = join(import.meta.dirname, '../../../data');
const { facts } = loadFacts(data);
const json = (file: string) => JSON.parse(readFileSync(join(data, file), 'utf8'));
const examples = readdirSync(join(data, 'examples'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => json(join('examples', name)) as Enclosure);
/** Blanks that are the English wording of the blank before them. */
const englishBlanks: Readonly<Record<string, number>> = { 'space.why': 2, 'space.tolerated': 1, 'probe.placed': 1 };

const toldOf = ({ told }: NeedVerdict): readonly Told[] =>
  told === undefined
    ? []
    : [told.wanted, told.found, told.settledBy, ...told.reasons, ...told.fixes].filter((one) => one !== null);

const de = measureFor({ book: 'de', temperature: 'C', length: 'cm', mass: 'g' });

describe('what needs say in German', () => {
  const codes = [...givenCodes].filter(([code]) => !code.startsWith('name.'));

  it.each(codes)('has %s with its %i blanks', (code, count) => {
    const wanted = [...Array(count).keys()].filter((i) => englishBlanks[code] !== i);
    const used = [...(germanSayings[code] ?? 'none').matchAll(/\{(\d)\}/g)].map((m) => Number(m[1])).sort();
    expect(germanSayings[code], code).toBeDefined();
    expect(used).toEqual(wanted);
  });

  it('names every fault that is rehearsed, how to guard against it, and what was played', () => {
    const words = json('words/de.json') as Record<string, string>;
    for (const { id, played } of rehearsals) {
      const found = facts.faultCases.find((one) => one.id === id)!;
      expect([words[found.title], words[found.guard]], id).not.toContain(undefined);
      expect(sayingIn(played, {}, 'de'), played.en).not.toBeNull();
    }
    for (const say of Object.values(refusals)) expect(sayingIn(say, {}, 'de'), say.en).not.toBeNull();
    for (const say of [guardSayings.cutOut('30.0'), guardSayings.foam('25')])
      expect(sayingIn(say, {}, 'de')).not.toBeNull();
    expect(powerCutSteps.length).toBeGreaterThan(5);
  });

  it('keeps no sentence that nothing gives', () => {
    const given = new Set(codes.map(([code]) => code));
    expect(Object.keys(germanSayings).filter((code) => !given.has(code))).toEqual([]);
  });

  it('puts every sentence of every species in every example', () => {
    const open = new Set<string>();
    let said = 0;
    for (const enclosure of examples)
      for (const species of Object.values(facts.species))
        for (const standard of [null, ...Object.values(facts.standards)])
          for (const told of judgeEnclosure(enclosure, species, standard, facts).flatMap(toldOf)) {
            said += 1;
            if (sayingIn(told, {}, 'de') === null) open.add(JSON.stringify(told));
          }
    expect([...open]).toEqual([]);
    expect(said).toBeGreaterThan(1000);
  });

  it('puts every sentence of a plan, with decimal commas and the unit of the reader', { timeout: 60_000 }, () => {
    const enclosure = examples.find((one) => one.animal !== null)!;
    const climate = climateNeeds(facts.species[enclosure.animal!.speciesId]!, enclosure.animal!.stage);
    if (!climate.ok) throw new Error('climate facts missing');
    const priors = json('priors.json');
    const { needs } = planEnclosure({
      enclosure,
      climate: climate.value,
      materials: facts.materials,
      priors,
      members: 3,
      seed: 3,
    });
    const basking = needs.find((one) => one.id === 'basking-surface')!;
    const all = needs.map((one) => needWords(one, de));
    const sentences = all.flatMap((n) => [n.found, n.wanted, ...n.reasons, ...n.fixes]);
    expect(sentences.length).toBeGreaterThan(10);
    expect(sentences.filter((one) => one.lang === 'en')).toEqual([]);
    expect(needWords(basking, de).found.text).toMatch(/^\d+,\d °C \(\d+,\d–\d+,\d\)$/);
    const inF = measureFor({ book: 'de', temperature: 'F', length: 'in', mass: 'oz' });
    expect(needWords(basking, inF).found.text).toMatch(/^\d+,\d °F \(\d+,\d–\d+,\d\)$/);
  });

  it('keeps the English of a sentence without a code, and says so', () => {
    const need = { wanted: 'a lock', found: 'catch', reasons: ['x'], fixes: [] } as unknown as NeedVerdict;
    expect(needWords(need, de).wanted).toEqual({ text: 'a lock', lang: 'en' });
    const size = needWords({ ...need, found: '12.5 cm × 45 cm' }, de).found;
    expect(size).toEqual({ text: '12,5 cm × 45 cm', lang: undefined });
  });
});
