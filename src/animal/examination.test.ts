import { describe, expect, test } from 'vitest';
import { loadCareFacts } from '../records/animal-facts.ts';
import { type Answers, compareExaminations, examinationVerdict } from './examination.ts';

const steps = loadCareFacts().facts.examination;
const allNormal: Answers = Object.fromEntries(steps.map((step) => [step.id, []]));
const verdict = (answers: Answers) => examinationVerdict(steps, answers);

describe('the verdict of a look-over', () => {
  test('all normal is fit', () => expect(verdict(allNormal)).toMatchObject({ result: 'fit', urgency: null, open: [] }));

  test('one step left out is unfinished, whichever it is', () => {
    for (const { id } of steps) {
      const { [id]: _left, ...rest } = allNormal;
      expect(verdict(rest)).toMatchObject({ result: 'unfinished', open: [id] });
    }
  });

  test('every sign leads to exactly what its urgency says', () => {
    for (const step of steps)
      for (const sign of step.signs) {
        const expected = sign.urgency === 'note' ? 'fit' : sign.urgency === 'hold' ? 'hold' : 'vet';
        expect(verdict({ ...allNormal, [step.id]: [sign.id] }).result, sign.id).toBe(expected);
      }
  });

  test('a vet sign counts though the rest was not looked at; a hold sign does not make it finished', () => {
    expect(verdict({ breath: ['open-mouth'] })).toMatchObject({ result: 'vet', urgency: 'vet-now', isolate: true });
    expect(verdict({ eyes: ['old-spectacle'] }).result).toBe('unfinished');
  });

  test('the most urgent stands first, and what must be told is listed', () => {
    const found = verdict({ ...allNormal, spine: ['kink'], eyes: ['old-spectacle'], skin: ['burn'] });
    expect(found.seen.map(({ sign }) => sign.id)).toEqual(['burn', 'kink', 'old-spectacle']);
    expect(found.disclose.map(({ sign }) => sign.id)).toEqual(['kink']);
  });

  test('a sign from another version of the list is never lost nor taken for normal', () => {
    expect(verdict({ ...allNormal, skin: ['of-old'] })).toMatchObject({
      result: 'unfinished',
      unknown: ['skin.of-old'],
    });
  });
});

test('against the last time: fresh, still, gone, and not looked at', () => {
  const before: Answers = { skin: ['mites'], eyes: ['old-spectacle'], tail: ['tail-rings'] };
  const now: Answers = { skin: ['mites', 'pieces'], eyes: [] };
  expect(compareExaminations(before, now)).toEqual({
    fresh: ['skin.pieces'],
    still: ['skin.mites'],
    gone: ['eyes.old-spectacle'],
    notLooked: ['tail.tail-rings'],
  });
});
