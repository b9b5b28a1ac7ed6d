// The real process: kits, faults and boxes from a terminal, for people and for programs.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { warmstead, warmsteadWatched } from './testing/spawn-cli.ts';

const tub = 'data/examples/tub-mat-600.json';
const timeout = 120_000;
const few = ['--members', '10'];

describe.concurrent('choosing from a terminal', () => {
  it('--search gives kits with dial, cost and parts, and says that prices are invented', { timeout }, async () => {
    const ended = await warmstead(['plan', tub, '--search', ...few]);
    expect(ended.err).toBe('');
    for (const part of ['Heat mat', 'dial', 'parts', '5 years', 'Not allowed', 'Prices of this shelf are invented'])
      expect(ended.out.replace(/\s+/g, ' ')).toContain(part);
    expect([0, 2]).toContain(ended.code);
  });

  it('--search --json gives the same to programs, with a shelf of one’s own as CSV', { timeout }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'warmstead-shelf-'));
    const file = join(folder, 'shelf.csv');
    const head = 'id;kind;name;price;inStock;heaterKind;powerW;control;ratingW;bandK;hasCutOut;lengthM;depthM';
    const rows = ['m;heater;Mat;9,50;yes;heat-mat;12;;;;;0,28;0,28', 't;thermostat;Stat;30;yes;;;pulse;100;1;no;;'];
    writeFileSync(file, [head, ...rows].join('\n'));
    const ended = await warmstead(['plan', tub, '--search', '--json', '--shelf', file, '--years', '3', ...few]);
    rmSync(folder, { recursive: true });
    const { answer } = JSON.parse(ended.out);
    expect(answer.choices.length).toBeGreaterThan(0);
    expect(answer.choices[0].cost.years).toBe(3);
    expect(answer.choices[0].parts.map((p: { itemId: string }) => p.itemId)).toEqual(
      expect.arrayContaining(['m', 't']),
    );
    expect(answer.pricesInvented).toBe(false);
  });

  it('names the kit that leads while the search goes on, where somebody looks on', { timeout }, async () => {
    const seen = await warmsteadWatched(['plan', tub, '--search', ...few]);
    const told = seen.split('\r').filter((line) => line.includes('so far: '));
    expect(told.length).toBeGreaterThan(0);
    expect(told.every((line) => /^\d+ % {2}so far: [+?x] Heat mat/.test(line))).toBe(true);
    // and takes the line away before the answer
    const last = seen.lastIndexOf('so far: ');
    expect(seen.indexOf('Kits', last)).toBeGreaterThan(last);
  });

  it('--faults plays the catalogue in German too', { timeout }, async () => {
    const ended = await warmstead(['plan', tub, '--faults', '--lang', 'de']);
    expect(ended.code).toBe(0);
    for (const part of ['Was ausfallen kann', 'Stromausfall in der kältesten Nacht', 'Trifft diesen Plan nicht'])
      expect(ended.out).toContain(part);
  });

  it('--stages gives boxes to the years asked for', { timeout }, async () => {
    const ended = await warmstead(['plan', tub, '--stages', '--years', '4', '--json']);
    const { roads } = JSON.parse(ended.out);
    expect(roads.stepwise.stages.at(-1).toYear).toBe(4);
    expect(roads.growth.years.at(-1)).toBe(4);
  });

  it('refuses two ways at once, a bad price and a shelf that is not there, all told', { timeout }, async () => {
    const two = await warmstead(['plan', tub, '--search', '--faults', '--tariff', 'x']);
    expect(two.code).toBe(64);
    expect(two.err).toContain('CLI_TOGETHER');
    expect(two.err).toContain('CLI_NUMBER');
    const none = await warmstead(['plan', tub, '--search', '--shelf', 'no-such.csv']);
    expect(none.code).toBe(64);
    expect(none.err).toContain('CLI_NO_FILE');
  });
});
