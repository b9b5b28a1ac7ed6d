// --shop-values in the real process: a value of the shop turns the verdict in every door of the terminal, and is named.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const example = 'data/examples/wood-1200.json';
const timeout = 120_000;
const few = ['--members', '10', '--map', 'none'];
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'warmstead-values-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const fileOf = (name: string, values: readonly object[]): string => {
  const path = join(folder, name);
  const signed = values.map((one) => ({ was: {}, by: 'Mia', at: '2026-11-20T09:00:00Z', why: 'our vet asks', ...one }));
  const head = { format: 'warmstead-shop-values', version: 1, shopName: 'S', branchName: 'B', writtenAt: '2026-11-28' };
  writeFileSync(path, JSON.stringify({ ...head, values: signed }));
  return path;
};
const warmNights = { path: 'species.corn.all.nightMinC', value: { low: 27, high: 28 } };
const warmer = { path: 'species.corn.all.warmAirC', value: { low: 29, high: 31 } };
const cooler = { path: 'species.corn.all.coolAirC', value: { low: 16, high: 17 } };
const json = async (args: readonly string[]) => JSON.parse((await warmstead([...args, '--json'])).out);

// One after the other: each starts two programs, and a dozen at once leave none of them its time.
describe('a shop value counts', () => {
  it('plan: turns the verdict, with its sign, who, when and why', { timeout }, async () => {
    const file = fileOf('plan.json', [warmer, warmNights]);
    const [plain, own] = await Promise.all([
      warmstead(['plan', example, ...few]),
      warmstead(['plan', example, ...few, '--shop-values', file]),
    ]);
    expect([plain.code, own.code]).toEqual([0, 1]);
    expect(own.out.replace(/\s+/g, ' ')).toMatch(/Warm hide on the coldest night.*shop’s own value/);
    expect(own.out).toContain('Shop values in this answer');
    expect(own.out.replace(/\s+/g, ' ')).toContain(
      'species.corn.all.nightMinC: 27 to 28, by Mia, 2026-11-20: our vet asks',
    );
  });

  it('plan: the standard that the shop goes by, unless one is named', { timeout }, async () => {
    const file = fileOf('policy.json', [{ path: 'policy.standardId', value: { value: 'awc-aim' } }]);
    const standard = async (args: readonly string[]) =>
      (await json(['plan', example, ...few, '--shop-values', file, ...args])).answer;
    const [shop, named] = await Promise.all([standard([]), standard(['--standard', 'home-third'])]);
    expect(shop.shopValues).toHaveLength(1);
    expect([shop.verdict, named.verdict]).toEqual(['fails', 'holds']);
    expect(named.shopValues).toEqual([]);
  });

  it('faults: hours until harm follow the shop’s need', { timeout }, async () => {
    const file = fileOf('faults.json', [warmer, warmNights]);
    const [plain, own] = await Promise.all([
      json(['plan', example, '--faults']),
      json(['plan', example, '--faults', '--shop-values', file]),
    ]);
    expect(own.shopValues).toHaveLength(2);
    expect(own.rehearsal).not.toEqual(plain.rehearsal);
  });

  it('search: a cool end that no kit of the shelf keeps', { timeout }, async () => {
    const file = fileOf('search.json', [cooler]);
    const best = async (args: readonly string[]) =>
      (await json(['plan', example, '--members', '10', '--search', ...args])).answer.choices[0]?.verdict ?? 'none';
    const [plain, own] = await Promise.all([best([]), best(['--shop-values', file])]);
    expect(plain).toBe('holds');
    expect(own).not.toBe('holds');
  });

  it('stages: a longer adult needs a larger last box', { timeout }, async () => {
    const file = fileOf('stages.json', [{ path: 'species.corn.adult.totalLengthCm', value: { low: 110, high: 180 } }]);
    const roads = async (args: readonly string[]) =>
      (await json(['plan', example, '--stage', 'hatchling', '--stages', ...args])).roads;
    const [plain, own] = await Promise.all([roads([]), roads(['--shop-values', file])]);
    expect(own).not.toEqual(plain);
  });

  it('simulate: a material of the shop’s own', { timeout }, async () => {
    const file = fileOf('material.json', [{ path: 'materials.plywood-700.conductivityWPerMK', value: { value: 0.3 } }]);
    const settled = ['simulate', example, '--steady', '--room', '18'];
    const [plain, own] = await Promise.all([json(settled), json([...settled, '--shop-values', file])]);
    expect(own.answer.places['warm-air']).not.toBe(plain.answer.places['warm-air']);
  });
});

it('a file that is none, or half one, is refused with every fault', { timeout }, async () => {
  const other = await json(['plan', example, '--shop-values', example]);
  expect(other.faults.map(({ code }: { code: string }) => code)).toEqual(['SHOPVALUES_FORM']);
  const file = fileOf('half.json', [{ path: '', value: { low: true } }, { value: 5 }]);
  const half = await json(['plan', example, '--shop-values', file]);
  expect(half.faults.map(({ field }: { field: string }) => field)).toEqual([
    'values[0].path',
    'values[0].value.low',
    'values[1].path',
    'values[1].value',
  ]);
  const gone = await json(['plan', example, '--shop-values', join(folder, 'none.json')]);
  expect(gone.faults[0].code).toBe('CLI_NO_FILE');
});

it('a value that the facts do not allow is not used and said', { timeout }, async () => {
  const file = fileOf('refused.json', [{ path: 'species.corn.all.nightMinC', value: { low: 3, high: 90 } }]);
  const { answer } = await json(['plan', example, ...few, '--shop-values', file]);
  expect(answer.shopValues).toEqual([]);
  expect(answer.refusedShopValues[0]).toMatchObject({ code: 'DATA_RANGE', field: 'species.corn.all.nightMinC' });
  expect(answer.verdict).toBe('holds');
});
