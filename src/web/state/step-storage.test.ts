// Steps that were kept come back around their draft: undo and redo go on as if nobody had loaded the page again.
import { expect, it } from 'vitest';
import { emptyDocument, type PlanDocument } from './document.ts';
import { createDocumentStore } from './document-store.ts';
import type { Draft, SavedAs } from './draft-storage.ts';
import { lineFrom, stepsOnDevice } from './step-storage.ts';

const savedAs: SavedAs = { id: 'a', version: 3, mark: 'x' };
const labelled = (label: string): PlanDocument => ({ ...emptyDocument, answers: { ...emptyDocument.answers, label } });
const storeOf = (draft: Draft, text: string | null = null) => createDocumentStore(lineFrom(text, draft));
const label = (store: ReturnType<typeof storeOf>) => store.state().document.answers.label;
/** As the device gives it back: a text, and no object of before. */
const again = (store: ReturnType<typeof storeOf>): Draft =>
  JSON.parse(JSON.stringify({ document: store.state().document, savedAs: store.state().savedAs })) as Draft;
const name = (store: ReturnType<typeof storeOf>, text: string) => store.actions.change(() => labelled(text));

it('undo and redo go on after a reload', () => {
  const before = storeOf({ document: labelled('one'), savedAs });
  name(before, 'two');
  name(before, 'three');
  before.actions.undo();
  const after = storeOf(again(before), before.steps());
  expect([label(after), after.state().canUndo, after.state().canRedo]).toEqual(['two', true, true]);
  after.actions.redo();
  expect(label(after)).toBe('three');
  after.actions.undo();
  after.actions.undo();
  expect([label(after), after.state().canUndo]).toEqual(['one', false]);
});

it('a fresh start is taken back after a reload, and goes on with the same enquiry', () => {
  const before = storeOf({ document: labelled('old'), savedAs });
  before.actions.startAfresh();
  const after = storeOf(again(before), before.steps());
  expect(after.state().savedAs).toBeNull();
  after.actions.undo();
  expect([label(after), after.state().savedAs]).toEqual(['old', savedAs]);
});

it('a draft that went on after its steps were kept goes back to where they stood', () => {
  const before = storeOf({ document: labelled('one'), savedAs });
  name(before, 'two');
  const text = before.steps();
  name(before, 'three');
  const after = storeOf(again(before), text);
  after.actions.undo();
  expect(label(after)).toBe('two');
});

it('steps of another enquiry, and a text that is none, are left out', () => {
  const before = storeOf({ document: labelled('one'), savedAs });
  name(before, 'two');
  const other = { document: labelled('other'), savedAs: { ...savedAs, id: 'b' } };
  for (const text of [before.steps(), null, 'x', '{}', '{"past":[],"future":[],"present":{}}']) {
    const store = storeOf(other, text);
    expect([label(store), store.state().canUndo, store.state().savedAs?.id]).toEqual(['other', false, 'b']);
  }
});

it('the newest steps are kept, no more than the device minds', () => {
  const before = storeOf({ document: labelled('0'), savedAs });
  for (let n = 1; n <= stepsOnDevice + 20; n++) name(before, String(n));
  const after = storeOf(again(before), before.steps());
  for (let n = 0; n < stepsOnDevice; n++) after.actions.undo();
  expect([label(after), after.state().canUndo]).toEqual(['20', false]);
});
