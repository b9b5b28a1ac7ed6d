// The heaters and thermostats that stand in the drawing, as things of a shelf that cost nothing: the customer has them.
import type { Enclosure } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import type { ShelfItem } from '../shelf/shelf.ts';

const mark = 'own-';
const drawn = (id: string, name: string) => ({ id: `${mark}${id}`, name: `${name} (has it)`, price: 0, inStock: true });

export const isDrawn = ({ id }: Pick<ShelfItem, 'id'>): boolean => id.startsWith(mark);

/** Items of the drawing, with ids that no shelf uses twice. */
export function drawnItems(enclosure: Enclosure): ShelfItem[] {
  const heaters = enclosure.heaters.map((h): ShelfItem => {
    const flat = heaterBodies[h.kind].form === 'area';
    return {
      ...drawn(h.id, `${h.kind.replaceAll('-', ' ')} ${h.powerW} W`),
      kind: 'heater',
      heaterKind: h.kind,
      powerW: h.powerW,
      lengthM: flat ? (h.lengthM ?? 0.3) : null,
      depthM: flat ? (h.depthM ?? 0.3) : null,
    };
  });
  const thermostats = enclosure.thermostats.map(
    (t): ShelfItem => ({
      ...drawn(t.id, `${t.control} thermostat ${t.ratingW} W`),
      kind: 'thermostat',
      control: t.control,
      ratingW: t.ratingW,
      bandK: t.bandK,
      hasCutOut: t.cutOutC !== null,
    }),
  );
  const guards = enclosure.heaters
    .filter((h) => h.guarded && h.mount === 'inside')
    .map((h): ShelfItem => ({ ...drawn(`guard-${h.id}`, 'wire guard'), kind: 'guard', guards: 'body' }));
  const holders = enclosure.heaters
    .filter((h) => h.holder === 'ceramic')
    .map((h): ShelfItem => ({ ...drawn(`holder-${h.id}`, 'ceramic lampholder'), kind: 'holder', material: 'ceramic' }));
  return [...heaters, ...thermostats, ...guards, ...holders];
}
