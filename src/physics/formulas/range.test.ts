import { describe, expect, it } from 'vitest';
import { alamdariHammondRange } from './convection-alamdari-hammond.ts';
import { rangeNotes } from './range.ts';

describe('rangeNotes', () => {
  it('is silent inside, ends included', () => {
    expect(rangeNotes(alamdariHammondRange, { deltaK: 0.1, heightM: 3 })).toEqual([]);
  });
  it('names every input outside, all at once', () => {
    const notes = rangeNotes(alamdariHammondRange, { deltaK: 0.05, heightM: 4, hydraulicDiameterM: 0.8 });
    expect(notes.map((note) => [note.code, note.field])).toEqual([
      ['PHYS_FORMULA_RANGE', 'deltaK'],
      ['PHYS_FORMULA_RANGE', 'heightM'],
    ]);
    expect(notes[0]).toMatchObject({ got: '0.05 K', allowed: '0.1 to 100 K', source: 'ALAMDARI1983' });
  });
  it('takes a value that is no number as outside', () => {
    expect(rangeNotes(alamdariHammondRange, { deltaK: Number.NaN })).toHaveLength(1);
  });
});
