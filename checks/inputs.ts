// Reads one input of a table row; a missing one is our own bug and throws.
import type { Inputs } from './table.ts';

export function num(inputs: Inputs, key: string): number {
  const value = inputs[key];
  if (typeof value !== 'number') throw new Error(`row input "${key}" is not a number`);
  return value;
}

export function list(inputs: Inputs, key: string): readonly number[] {
  const value = inputs[key];
  if (!Array.isArray(value) || value.some((each) => typeof each !== 'number'))
    throw new Error(`row input "${key}" is not a list of numbers`);
  return value as readonly number[];
}

export function grid(inputs: Inputs, key: string): readonly (readonly number[])[] {
  const value = inputs[key];
  if (!Array.isArray(value) || value.some((each) => !Array.isArray(each)))
    throw new Error(`row input "${key}" is not a list of lists`);
  return value as readonly (readonly number[])[];
}
