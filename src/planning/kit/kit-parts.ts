// The parts list of a kit: what has to be bought, what the customer has already. Leaves out: running costs.
import type { Enclosure, Thermometer } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import { itemsOf, type Shelf, type ShelfHeater, type ShelfItem, type ShelfKind } from '../shelf/shelf.ts';
import type { BoxVariant } from './box-variant.ts';
import type { KitHeart } from './kit-enclosure.ts';
import type { KitPart, PartRole } from './kit-part.ts';
import { canBeBought, type Owned, piecesOf } from './owned.ts';
import { hasOpenLid } from './place-heater.ts';

/** Where a part comes from: what the customer has of it, then the cheapest of the shelf. */
interface Supply {
  readonly own: readonly ShelfItem[];
  readonly bought: ShelfItem | null;
}

/** Fitting guards, holders and thermometers, looked up once for all kits. */
export interface CommonParts {
  readonly bodyGuard: Supply;
  readonly panelGuard: Supply;
  readonly holder: Supply;
  readonly thermometer: Supply;
}

export function commonParts(shelf: Shelf, owned: Owned): CommonParts {
  const supply = <K extends ShelfKind>(kind: K, fits: (item: Extract<ShelfItem, { kind: K }>) => boolean): Supply => {
    const fitting = itemsOf(shelf, kind).filter(fits);
    return {
      own: fitting.filter((item) => owned.has(item.id)),
      bought: fitting.filter(canBeBought).reduce<ShelfItem | null>((a, b) => (a && a.price <= b.price ? a : b), null),
    };
  };
  return {
    bodyGuard: supply('guard', (item) => item.guards === 'body'),
    panelGuard: supply('guard', (item) => item.guards === 'panel'),
    holder: supply('holder', (item) => item.material === 'ceramic'),
    thermometer: supply('thermometer', (item) => item.thermometerKind !== 'stick-on-dial'),
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
export function kitParts(kit: PartsInput, common: CommonParts, owned: Owned): readonly KitPart[] | null {
  const parts: (KitPart | null)[] = [...kit.box.parts];
  const isLeft = (item: ShelfItem) =>
    parts.filter((part) => part?.owned && part.itemId === item.id).length < piecesOf(owned, item.id);
  const add = (item: ShelfItem | null, role: PartRole): void => {
    const has = item !== null && isLeft(item);
    if (!item || !(has || canBeBought(item))) {
      parts.push(null);
      return;
    }
    parts.push({ itemId: item.id, name: item.name, role, count: 1, price: has ? 0 : item.price, owned: has });
  };
  const supplied = ({ own, bought }: Supply, role: PartRole): void => add(own.find(isLeft) ?? bought, role);
  const heating = (heater: ShelfHeater, role: PartRole): void => {
    add(heater, role);
    const body = heaterBodies[heater.heaterKind].form === 'body';
    if (body) supplied(common.holder, 'holder');
    if (body && !hasOpenLid(kit.enclosure)) supplied(common.bodyGuard, 'guard');
    if (heater.heaterKind === 'radiant-panel') supplied(common.panelGuard, 'guard');
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
    else supplied(common.thermometer, role);
  }
  return parts.some((p) => p === null) ? null : (parts as KitPart[]);
}
