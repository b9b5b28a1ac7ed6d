// What the customer has costs nothing, once for each piece; what wears out of it is bought again.
import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { prepareSearch } from '../search/prepare-search.ts';
import type { SearchInput } from '../search/search-input.ts';
import { searchKitsNow } from '../search/search-kits.ts';
import type { Kit } from './kit.ts';

const wood = searchInputOf('wood-1200', { members: 1 });
const kitsOf = (input: SearchInput): readonly Kit[] => prepareSearch(input).candidates.kits.flat();
/** Kits of a lamp with a heater for the night, both on thermostats, in guards and holders. */
const pairs = (input: SearchInput) => kitsOf(input).filter((kit) => kit.nightHeater?.heaterKind === 'ceramic-emitter');
const ownedTimes = (kit: Kit, id: string) => kit.parts.filter((p) => p.itemId === id && p.owned).length;

describe('a thing that the customer has once', () => {
  it.each(['guard-cage', 'holder-ceramic', 'thermometer-digital'])(
    '%s is used once, and a second one is bought',
    (id) => {
      const price = wood.shelf.items.find((item) => item.id === id)!.price;
      const bare: Enclosure = { ...wood.enclosure, thermometers: [] };
      const kits = pairs({ ...wood, enclosure: bare, ownedIds: [id] });
      expect(kits.length).toBeGreaterThan(10);
      for (const kit of kits) {
        const parts = kit.parts.filter((p) => p.itemId === id);
        expect(parts.map((p) => p.price).sort((a, b) => a - b)).toEqual([0, price]);
        expect(kit.price).toBeCloseTo(
          kit.parts.reduce((sum, p) => sum + p.price, 0),
          9,
        );
      }
      for (const kit of pairs({ ...wood, enclosure: bare, ownedIds: [id, id] })) expect(ownedTimes(kit, id)).toBe(2);
    },
  );

  it('does not drive two heaters when it is a thermostat', () => {
    const id = 'stat-pulse-300';
    const twice = pairs({ ...wood, ownedIds: [id] }).filter(
      (kit) => kit.thermostat.id === id && kit.nightThermostat?.id === id,
    );
    for (const kit of twice) expect(ownedTimes(kit, id)).toBe(1);
    const night = pairs({ ...wood, ownedIds: [id] }).filter((kit) => kit.nightThermostat?.id === id);
    expect(night.length).toBeGreaterThan(10);
  });

  it('stands in the drawing: a thermostat or a guard there serves one heater', () => {
    const own = (kit: Kit) => kit.parts.filter((p) => p.itemId.startsWith('own-')).map((p) => p.itemId);
    const kits = pairs({ ...wood, drawnIsOwned: true });
    expect(kits.some((kit) => own(kit).length > 0)).toBe(true);
    for (const kit of kits) expect(new Set(own(kit)).size, kit.id).toBe(own(kit).length);
  });
});

it('foam that the customer has costs nothing', () => {
  const foam = kitsOf({ ...wood, ownedIds: ['foam-25'] }).flatMap((kit) =>
    kit.parts.filter((p) => p.itemId === 'foam-25'),
  );
  expect(foam.length).toBeGreaterThan(10);
  for (const part of foam) expect([part.price, part.owned]).toEqual([0, true]);
});

it('an emitter of the drawing that burns out is bought again at the price of its like', () => {
  const answer = searchKitsNow({
    ...wood,
    drawnIsOwned: true,
    years: 30,
    shelf: {
      ...wood.shelf,
      items: wood.shelf.items.map((item) => (item.kind === 'heater' ? { ...item, inStock: false } : item)),
    },
  });
  const drawn = answer.choices.find((c) => c.heart.heater.id.startsWith('own-') && !c.heart.nightHeater);
  expect(drawn?.cost.byYear.some((year) => year.replaced.length > 0)).toBe(true);
  expect(drawn?.cost.lamps).toBeGreaterThan(0);
});

it('two boxes of one size, open and closed above, are judged each by its own lid', () => {
  const glass = wood.shelf.items.find((item) => item.id === 'box-glass-90')!;
  const shut = { ...glass, id: 'box-shut-90', meshShareFrac: 0 };
  const items = [...wood.shelf.items, shut];
  const ask = (...boxIds: string[]) => ({ ...wood, shelf: { ...wood.shelf, items }, boxIds });
  const alone = [...kitsOf(ask('box-glass-90')), ...kitsOf(ask('box-shut-90'))].map((kit) => kit.id).sort();
  expect(
    kitsOf(ask('box-shut-90', 'box-glass-90'))
      .map((kit) => kit.id)
      .sort(),
  ).toEqual(alone);
});
