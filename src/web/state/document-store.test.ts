// The document's one place: who looks at a part hears of changes, steps can be taken back, a gesture is one step.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { emptyDocument } from './document.ts';
import { createDocumentStore, isStarted } from './document-store.ts';
import { historyOf } from './history.ts';

const fresh = () => createDocumentStore({ history: historyOf(emptyDocument), savedAs: null, left: new Map() });

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

it('tells of a change once, and not of one that changes nothing', () => {
  const store = fresh();
  const told = vi.fn();
  const leave = store.subscribe(told);
  store.actions.answer({ speciesId: 'corn' });
  store.actions.change((document) => document);
  store.actions.redo();
  expect(told).toHaveBeenCalledTimes(1);
  expect(isStarted(store.state())).toBe(true);
  leave();
  store.actions.answer({ speciesId: 'royal' });
  expect(told).toHaveBeenCalledTimes(1);
});

it('gives the very same state until something is another', () => {
  const store = fresh();
  store.actions.answer({ massG: 20 }, 'mass');
  const before = store.state();
  vi.advanceTimersByTime(10_000);
  expect(store.state()).toBe(before);
});

it('takes a whole gesture back as one step; after a rest the next is a step of its own', () => {
  const store = fresh();
  for (const massG of [1, 2, 3]) store.actions.answer({ massG }, 'mass');
  vi.advanceTimersByTime(10_000);
  store.actions.answer({ massG: 4 }, 'mass');
  store.actions.undo();
  expect(store.state().document.answers.massG).toBe(3);
  store.actions.undo();
  expect(store.state().document.answers.massG).toBe(null);
  expect(store.state().canUndo).toBe(false);
  store.actions.redo();
  expect(store.state().document.answers.massG).toBe(3);
});

it('takes a fresh start back with the place where it was kept', () => {
  const store = fresh();
  const savedAs = { id: 'a', version: 3, mark: 'x' };
  store.actions.open({ ...emptyDocument, answers: { ...emptyDocument.answers, label: 'Old' } }, savedAs);
  store.actions.startAfresh();
  expect(store.state().savedAs).toBe(null);
  store.actions.undo();
  expect(store.state().document.answers.label).toBe('Old');
  expect(store.state().savedAs).toBe(savedAs);
  store.actions.redo();
  expect(store.state().savedAs, 'or the empty sheet would lie over what was kept').toBe(null);
});
