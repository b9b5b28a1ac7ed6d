import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Enclosure } from '../../physics/enclosure.ts';
import { enclosureFrom } from '../../physics/validate-enclosure.ts';
import { loadFacts } from '../../records/facts.ts';
import { type Answers, composedEnclosure, emptyDocument, firstOpenQuestion, type PlanDocument } from './document.ts';

const data = new URL('../../../data', import.meta.url).pathname;
const wood = JSON.parse(readFileSync(`${data}/examples/wood-1200.json`, 'utf8')) as Enclosure;

const whole: PlanDocument = {
  ...emptyDocument,
  answers: {
    ...emptyDocument.answers,
    speciesId: 'corn',
    stage: 'adult',
    totalLengthM: 1.15,
    winterLowC: 14,
    winterHighC: 19,
    summerLowC: 19,
    summerHighC: 27,
    rhPct: 45,
    sun: 'some',
    startFrom: 'wood-1200',
    cautionsExplained: true,
  },
  enclosure: wood,
};

it('makes of a whole enquiry an enclosure file that the validator takes', () => {
  const enclosure = composedEnclosure(whole);
  const checked = enclosureFrom(JSON.parse(JSON.stringify(enclosure)), loadFacts(data).facts.materials);
  expect(checked.ok ? [] : checked.faults).toEqual([]);
  expect(enclosure?.room.winter.lowC).toBe(14);
  expect(enclosure?.room.summer.rhPct, 'summer as winter unless known apart').toBe(45);
  expect(enclosure?.animal?.totalLengthM).toBe(1.15);
});

it('makes no enclosure while any needed answer is open, and names that question', () => {
  const needed: readonly (readonly [keyof Answers, string])[] = [
    ['speciesId', 'animal'],
    ['stage', 'animal'],
    ['totalLengthM', 'size'],
    ['winterLowC', 'winter'],
    ['summerHighC', 'summer'],
    ['rhPct', 'humidity'],
    ['sun', 'sun'],
  ];
  expect(firstOpenQuestion(whole)).toBeNull();
  for (const [answer, question] of needed) {
    const open = { ...whole, answers: { ...whole.answers, [answer]: null } };
    expect(composedEnclosure(open), answer).toBeNull();
    expect(firstOpenQuestion(open), answer).toBe(question);
  }
});

it('takes a room whose low is above its high for unanswered', () => {
  const crossed = { ...whole, answers: { ...whole.answers, winterLowC: 25 } };
  expect(composedEnclosure(crossed)).toBeNull();
  expect(firstOpenQuestion(crossed)).toBe('winter');
});

it('keeps nothing about the health of a household', () => {
  expect(Object.keys(emptyDocument.answers).sort().join(' ')).not.toMatch(
    /household|pregnan|immun|health|elderly|child/i,
  );
});
