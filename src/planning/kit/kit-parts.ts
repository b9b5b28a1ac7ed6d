// The parts list of a kit: what has to be bought, what the customer has already. Leaves out: running costs.
import type { Enclosure } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { itemsOf, type Shelf, type ShelfHeater, type ShelfItem, type ShelfKind } from '../shelf/shelf.ts';
import type { BoxVariant } from './box-variant.ts';
import type { KitHeart } from './kit-enclosure.ts';
import type { KitPart, PartRole } from './kit-part.ts';
import { placedHeater } from './place-heater.ts';

export interface PartsInput extends KitHeart {
  readonly box: BoxVariant;
  /** As drawn: thermometers and guards that stand in it are the customer's own. */
  readonly enclosure: Enclosure;
}

/** Null when the shelf has nothing for a part that cannot be left out. */
export function kitParts(kit: PartsInput, shelf: Shelf, ownedIds: ReadonlySet<string>): readonly KitPart[] | null {
  const owned = (item: ShelfItem) => ownedIds.has(item.id);
  const part = (item: ShelfItem, role: PartRole): KitPart => ({
    itemId: item.id,
    name: item.name,
    role,
    count: 1,
    price: owned(item) ? 0 : item.price,
    owned: owned(item),
  });
  const cheapest = <K extends ShelfKind>(kind: K, fits: (item: Extract<ShelfItem, { kind: K }>) => boolean) =>
    itemsOf(shelf, kind)
      .filter((item) => (item.inStock || owned(item)) && fits(item))
      .reduce<Extract<ShelfItem, { kind: K }> | null>((a, b) => (a && cost(a) <= cost(b) ? a : b), null);
  const cost = (item: ShelfItem) => (owned(item) ? 0 : item.price);
  const parts: (KitPart | null)[] = [...kit.box.parts];
  const heating = (heater: ShelfHeater, role: 'main' | 'night') => {
    parts.push(part(heater, role === 'main' ? 'heater' : 'night-heater'));
    const place = placedHeater(kit.enclosure, heater, role);
    const mount = 'heater' in place ? place.heater.mount : 'inside';
    if (heaterBodies[heater.heaterKind].form === 'body') {
      const holder = cheapest('holder', (item) => item.material === 'ceramic');
      parts.push(holder && part(holder, 'holder'));
    }
    if (mount === 'inside' || mount === 'ceiling') {
      const guard = cheapest('guard', (item) => item.guards === (mount === 'inside' ? 'body' : 'panel'));
      parts.push(guard && part(guard, 'guard'));
    }
  };
  heating(kit.heater, 'main');
  parts.push(part(kit.thermostat, 'thermostat'));
  if (kit.nightHeater) heating(kit.nightHeater, 'night');
  if (kit.nightThermostat) parts.push(part(kit.nightThermostat, 'night-thermostat'));
  for (const place of ['basking', 'cool-end'] as const) {
    const role = place === 'basking' ? 'basking-thermometer' : 'cool-thermometer';
    if (kit.enclosure.thermometers.some((t) => t.place === place && t.kind !== 'stick-on-dial')) continue;
    const item = cheapest('thermometer', (t) => t.thermometerKind !== 'stick-on-dial');
    parts.push(item && part(item, role));
  }
  return parts.some((p) => p === null) ? null : (parts as KitPart[]);
}
