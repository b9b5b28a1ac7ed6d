import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadFacts } from '../../records/facts.ts';
import type { Shelf, ShelfItem } from './shelf.ts';
import { shelfFromCsv, shelfToCsv } from './shelf-csv.ts';
import { fieldsOf, shelfKinds } from './shelf-fields.ts';
import { shelfFrom } from './validate-shelf.ts';

const starter = JSON.parse(
  readFileSync(new URL('../../../data/shelf/starter.json', import.meta.url), 'utf8'),
) as unknown;
const { facts } = loadFacts(new URL('../../../data', import.meta.url).pathname);

function starterShelf(): Shelf {
  const read = shelfFrom(starter);
  if (!read.ok) throw new Error(read.faults.map((f) => `${f.field} ${f.say}`).join('\n'));
  return read.value;
}

describe('the starter shelf', () => {
  it('is sound, says that its prices are invented, and holds every kind of thing', () => {
    const shelf = starterShelf();
    expect(shelf.invented).toBe(true);
    expect([...new Set(shelf.items.map((item) => item.kind))].sort()).toEqual([...shelfKinds].sort());
  });
  it('names only materials that the data holds, and heaters within a usual power', () => {
    for (const item of starterShelf().items) {
      if (item.kind === 'enclosure') {
        expect(facts.materials).toHaveProperty(item.wallMaterialId);
        expect(facts.materials).toHaveProperty(item.frontMaterialId);
      }
      if (item.kind === 'insulation' || item.kind === 'substrate')
        expect(facts.materials).toHaveProperty(item.materialId);
      if (item.kind === 'heater') expect(facts.heaters[item.heaterKind]?.facts.offeredW?.values).toContain(item.powerW);
    }
  });
});

/** Any sound item, made from the table of fields itself. */
const anyItem = fc.constantFrom(...shelfKinds).chain((kind) => {
  const value = (field: ReturnType<typeof fieldsOf>[number]): fc.Arbitrary<unknown> => {
    if (field.key === 'kind') return fc.constant(kind);
    if (field.type === 'flag') return fc.boolean();
    if (field.type === 'word') return fc.constantFrom(...(field.words ?? []));
    if (field.type === 'number')
      return fc
        .integer({ min: Math.ceil((field.low ?? 0) * 10_000), max: (field.high ?? 1) * 10_000 })
        .map((n) => n / 10_000);
    return fc
      .string({ minLength: 1, maxLength: 20, unit: fc.constantFrom('a', 'é', ',', ';', '"', 'ß', '7', '\n') })
      .map((s) => `x${s}x`);
  };
  const flat = fc.constantFrom('heat-mat', 'radiant-panel');
  return fc
    .record(
      Object.fromEntries(fieldsOf(kind).map((field) => [field.key, value(field)])) as Record<
        string,
        fc.Arbitrary<unknown>
      >,
    )
    .chain((item) =>
      kind === 'heater' ? flat.map((heaterKind) => ({ ...item, heaterKind })) : fc.constant(item),
    ) as unknown as fc.Arbitrary<ShelfItem>;
});

describe('a shelf as a table', () => {
  it('comes back as it went out, name, currency and invented prices with it', () => {
    const plain = fc.constantFrom('Front room', 'Regal, hinten; "neu"', 'a\nb', 'Ё');
    fc.assert(
      fc.property(
        fc.uniqueArray(anyItem, { selector: (item) => item.id, maxLength: 8 }),
        plain,
        fc.constantFrom(...Intl.supportedValuesOf('currency')),
        fc.boolean(),
        (items, name, currency, invented) => {
          const shelf: Shelf = { format: 'warmstead-shelf', version: 1, name, currency, invented, items };
          const other = { name: 'other', currency: 'JPY', invented: !invented };
          expect(shelfFromCsv(shelfToCsv(shelf), other, undefined)).toEqual({ ok: true, value: shelf });
        },
      ),
      { numRuns: 300 },
    );
  });
  it('the starter shelf too, to the last digit', () => {
    const head = { name: 'other', currency: 'JPY', invented: false };
    expect(shelfFromCsv(shelfToCsv(starterShelf()), head, facts.materials)).toEqual({
      ok: true,
      value: starterShelf(),
    });
  });
  it('refuses a currency that is none, and a name that a spreadsheet would calculate', () => {
    const text = 'warmstead-shelf,1,=A1,XYZ,perhaps\r\nid,kind,name,price,inStock\r\nl,lock, ,3,yes\r\n';
    const read = shelfFromCsv(text, { name: 's', currency: 'EUR', invented: false });
    const fields = read.ok ? [] : read.faults.map((f) => f.field);
    expect(fields).toEqual(['name', 'currency', 'invented', 'line 3, name']);
  });
  it('reads semicolons with decimal commas, columns in another order, and yes and no', () => {
    const text = 'name;id;kind;price;inStock;guards\r\nCage;g1;guard;14,50;yes;body\r\n';
    const read = shelfFromCsv(text, { name: 's', currency: 'EUR', invented: false });
    expect(read.ok && read.value.items).toEqual([
      { id: 'g1', kind: 'guard', name: 'Cage', price: 14.5, inStock: true, guards: 'body' },
    ]);
  });
  it('tells every fault with its line', () => {
    const text = 'id,kind,name,price,inStock,powerW,heaterKind\nh,heater,H,12,yes,9000,emitter\ng,wing,G,x,maybe,,\n';
    const read = shelfFromCsv(text, { name: 's', currency: 'EUR', invented: false });
    const fields = read.ok ? [] : read.faults.map((f) => f.field);
    expect(fields).toEqual(expect.arrayContaining(['line 2, powerW', 'line 2, heaterKind', 'line 3, kind']));
  });
  const head = { name: 's', currency: 'EUR', invented: false };
  const told = (text: string) => {
    const read = shelfFromCsv(text, head);
    return read.ok ? [] : read.faults.map((f) => `${f.field}: ${f.got}: ${f.say}`);
  };
  const columns = 'id,kind,name,price,inStock,guards';
  const cage = { id: 'g', kind: 'guard', name: 'Cage', price: 14.5, inStock: true, guards: 'body' };
  it.each([
    ['tabs with decimal commas', `${columns.replaceAll(',', '\t')}\ng\tguard\tCage\t14,5\tyes\tbody\n`],
    ['lines that end in a carriage return alone', `${columns}\rg,guard,Cage,14.5,yes,body\r`],
    ['a byte-order mark', `\uFEFF${columns}\r\ng,guard,Cage,14.5,yes,body\r\n`],
    [
      'more separators of another kind within quotation marks',
      `"warmstead-shelf",1,"a;b;c;d;e;f;g",EUR,charged\n${columns}\ng,guard,Cage,14.5,yes,body`,
    ],
  ])('reads %s', (_, text) => {
    const read = shelfFromCsv(text, head);
    expect(read.ok && read.value.items).toEqual([cage]);
  });
  it('keeps an inch mark within a name', () => {
    const read = shelfFromCsv(`${columns}\ng,guard,Cage 8" wide,14.5,yes,body\n`, head);
    expect(read.ok && read.value.items[0]?.name).toBe('Cage 8" wide');
  });
  it('tells a cell too many, a quotation mark never closed, and a column twice or unknown once, not in every row', () => {
    expect(told(`${columns}\ng,guard,Cage,14,50,yes,body\n`)[0]).toContain(
      'line 2: "body": Line 2 has 7 cells, the head line 6.',
    );
    expect(told(`${columns}\ng,guard,Cage,14.5,yes,body\nh,guard,"Cage,14.5,yes,body\n`)).toEqual([
      expect.stringContaining('Line 3: a cell begins with a quotation mark that is never closed.'),
    ]);
    expect(told(`${columns},price\ng,guard,Cage,14.5,yes,body,3\n`)).toEqual([
      expect.stringContaining('"price" twice'),
    ]);
    const many = Array.from({ length: 50 }, (_, i) => `g${i},guard,Cage,14.5,yes,body,x`).join('\n');
    expect(told(`${columns},colour\n${many}\n`)).toEqual([expect.stringContaining('No column is called "colour"')]);
  });
  it('says that a price with its sign is no number', () => {
    const read = shelfFromCsv(`${columns}\ng,guard,Cage,£14,yes,body\n`, head);
    expect(read.ok ? '' : read.faults[0]?.allowed).toContain('a number from 0');
  });
  it('refuses a table without the needed columns', () => {
    const read = shelfFromCsv('a,b\n1,2\n', { name: 's', currency: 'EUR', invented: false });
    expect(read.ok ? '' : read.faults[0]?.code).toBe('SHELF_CSV');
  });
});

it('names two things of one id, a mat without a size and a misspelt column', () => {
  const guard = { id: 'g', kind: 'guard', name: 'G', price: 1, inStock: true, guards: 'body' };
  const mat = {
    id: 'm',
    kind: 'heater',
    name: 'M',
    price: 1,
    inStock: true,
    heaterKind: 'heat-mat',
    powerW: 12,
    lengthM: null,
    depthM: null,
  };
  const raw = {
    format: 'warmstead-shelf',
    version: 1,
    name: 'n',
    currency: 'GBP',
    invented: true,
    items: [guard, { ...guard, guard: 'x' }, mat],
  };
  const read = shelfFrom(raw);
  const codes = read.ok ? [] : read.faults.map((f) => `${f.code} ${f.field}`);
  expect(codes).toEqual([
    'SHELF_UNKNOWN_KEY items[1].guard',
    'SHELF_TWICE items[1].id',
    'SHELF_FIELD items[2].lengthM',
    'SHELF_FIELD items[2].depthM',
  ]);
});
