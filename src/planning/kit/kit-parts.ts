// The parts list of a kit: what has to be bought, what the customer has already. Leaves out: running costs.
import type { Enclosure, Thermometer } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { itemsOf, type Shelf, type ShelfHeater, type ShelfItem, type ShelfKind } from '../shelf/shelf.ts';
import type { BoxVariant } from './box-variant.ts';
import type { KitHeart } from './kit-enclosure.ts';
import type { KitPart, PartRole } from './kit-part.ts';
import { hasOpenLid } from './place-heater.ts';

/** The cheapest fitting guard, holder and thermometer of a shelf, looked up once for all kits. */
export interface CommonParts {
  readonly bodyGuard: ShelfItem | null;
  readonly panelGuard: ShelfItem | null;
  readonly holder: ShelfItem | null;
  readonly thermometer: ShelfItem | null;
}

export function commonParts(shelf: Shelf, ownedIds: ReadonlySet<string>): CommonParts {
  const cost = (item: ShelfItem) => (ownedIds.has(item.id) ? 0 : item.price);
  const cheapest = <K extends ShelfKind>(kind: K, fits: (item: Extract<ShelfItem, { kind: K }>) => boolean) =>
    itemsOf(shelf, kind)
      .filter((item) => (item.inStock || ownedIds.has(item.id)) && fits(item))
      .reduce<ShelfItem | null>((a, b) => (a && cost(a) <= cost(b) ? a : b), null);
  return {
    bodyGuard: cheapest('guard', (item) => item.guards === 'body'),
    panelGuard: cheapest('guard', (item) => item.guards === 'panel'),
    holder: cheapest('holder', (item) => item.material === 'ceramic'),
    thermometer: cheapest('thermometer', (item) => item.thermometerKind !== 'stick-on-dial'),
  };
}

export interface PartsInput extends KitHeart {
  readonly box: BoxVariant;
  /** As drawn: thermometers and guards that stand in it are the customer's own. */
  readonly enclosure: Enclosure;
}

/** What stands in the drawing already, as a part. */
const thermometerNames: Readonly<Record<Thermometer['kind'], string>> = {
  'digital-probe': 'Digital thermometer with probe',
  'infrared-gun': 'Infrared thermometer',
  'stick-on-dial': 'Stick-on dial',
};

/** Null when the shelf has nothing for a part that cannot be left out. */
export function kitParts(
  kit: PartsInput,
  common: CommonParts,
  ownedIds: ReadonlySet<string>,
): readonly KitPart[] | null {
  const parts: (KitPart | null)[] = [...kit.box.parts];
  const add = (item: ShelfItem | null, role: PartRole): void => {
    if (!item) {
      parts.push(null);
      return;
    }
    const owned = ownedIds.has(item.id);
    parts.push({ itemId: item.id, name: item.name, role, count: 1, price: owned ? 0 : item.price, owned });
  };
  const heating = (heater: ShelfHeater, role: PartRole): void => {
    add(heater, role);
    const body = heaterBodies[heater.heaterKind].form === 'body';
    if (body) add(common.holder, 'holder');
    if (body && !hasOpenLid(kit.enclosure)) add(common.bodyGuard, 'guard');
    if (heater.heaterKind === 'radiant-panel') add(common.panelGuard, 'guard');
  };
  heating(kit.heater, 'heater');
  add(kit.thermostat, 'thermostat');
  if (kit.nightHeater) heating(kit.nightHeater, 'night-heater');
  if (kit.nightThermostat) add(kit.nightThermostat, 'night-thermostat');
  for (const place of ['basking', 'cool-end'] as const) {
    const role = place === 'basking' ? 'basking-thermometer' : 'cool-thermometer';
    const own = kit.enclosure.thermometers.find((t) => t.place === place && t.kind !== 'stick-on-dial');
    if (own)
      parts.push({ itemId: `own-${role}`, name: thermometerNames[own.kind], role, count: 1, price: 0, owned: true });
    else add(common.thermometer, role);
  }
  return parts.some((p) => p === null) ? null : (parts as KitPart[]);
}
