// The real process: a shelf out as a table and in again, its faults all at once.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const timeout = 60_000;

describe.concurrent('warmstead shelf', { timeout }, () => {
  it('writes the starter shelf as a table, and reads it again without loss', async () => {
    const table = await warmstead(['shelf', '--csv']);
    expect(table.code).toBe(0);
    expect(table.out.split('\r\n')[0]).toBe('warmstead-shelf,1,Starter shelf,GBP,invented');
    const back = await warmstead(['shelf', '-', '--json'], table.out);
    expect(JSON.parse(back.out)).toEqual(JSON.parse(readFileSync('data/shelf/starter.json', 'utf8')));
  });
  it('takes the currency of a table without its first line, and says what stands on the shelf', async () => {
    const table = 'id;kind;name;price;inStock\nl;lock;Schloss;7,50;ja\n';
    const refused = await warmstead(['shelf', '-', '--json'], table);
    expect(JSON.parse(refused.out).faults[0].field).toBe('line 2, inStock');
    const read = await warmstead(['shelf', '-', '--json', '--currency', 'EUR'], table.replace('ja', 'yes'));
    expect(JSON.parse(read.out)).toMatchObject({ currency: 'EUR', invented: false, items: [{ price: 7.5 }] });
    const said = await warmstead(['shelf', '--lang', 'de']);
    expect(said.out).toContain('erfunden');
    expect(said.out).toMatch(/28\s+Heizung/);
  });
  it('tells every fault at once, with its line', async () => {
    const table = 'warmstead-shelf,1,S,GBX,charged\nid,kind,name,price,inStock\na,lock,A,-1,yes\na,lock,,2,yes\n';
    const ended = await warmstead(['shelf', '-'], table);
    expect(ended.code).toBe(64);
    for (const part of ['currency', 'line 3, price', 'line 4, id', 'line 4, name']) expect(ended.err).toContain(part);
  });
});
