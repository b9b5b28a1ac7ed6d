import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changed, historyOf, keptSteps, redone, rested, undone } from './history.ts';

describe('history', () => {
  it('takes a whole drag back in one step', () => {
    let history = historyOf(1);
    for (const value of [2, 3, 4]) history = changed(history, value, 'drag');
    expect(undone(history).present).toBe(1);
  });

  it('starts a new step after the hand rested, even for the same gesture', () => {
    const history = changed(rested(changed(historyOf(1), 2, 'drag')), 3, 'drag');
    expect(undone(history).present).toBe(2);
  });

  it('undoing everything and redoing everything comes back to the same present', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: 60 }), (values) => {
        let history = historyOf(0);
        for (const value of values) history = changed(history, value, null);
        const { present } = history;
        const steps = history.past.length;
        for (let step = 0; step < steps; step++) history = undone(history);
        expect(history.present).toBe(0);
        for (let step = 0; step < steps; step++) history = redone(history);
        expect(history.present).toBe(present);
      }),
    );
  });

  it('keeps a bounded past and forgets what was undone once something new is done', () => {
    let history = historyOf(0);
    for (let value = 1; value <= keptSteps + 20; value++) history = changed(history, value, null);
    expect(history.past).toHaveLength(keptSteps);
    history = changed(undone(history), -1, null);
    expect(redone(history).present).toBe(-1);
  });
});
