// The heaters and thermostats that stand in the drawing, as things of a shelf that cost nothing: the customer has them.
import type { Enclosure } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import type { ShelfItem } from '../shelf/shelf.ts';

const mark = 'own-';

/** Items of the drawing, with ids that no shelf uses twice. */
export function drawnItems(enclosure: Enclosure): ShelfItem[] {
  const heaters = enclosure.heaters.map((h): ShelfItem => {
    const flat = heaterBodies[h.kind].form === 'area';
    return {
      id: `${mark}${h.id}`,
      kind: 'heater',
      name: `${h.kind.replaceAll('-', ' ')} ${h.powerW} W (has it)`,
      price: 0,
      inStock: true,
      heaterKind: h.kind,
      powerW: h.powerW,
      lengthM: flat ? (h.lengthM ?? 0.3) : null,
      depthM: flat ? (h.depthM ?? 0.3) : null,
    };
  });
  const thermostats = enclosure.thermostats.map(
    (t): ShelfItem => ({
      id: `${mark}${t.id}`,
      kind: 'thermostat',
      name: `${t.control} thermostat ${t.ratingW} W (has it)`,
      price: 0,
      inStock: true,
      control: t.control,
      ratingW: t.ratingW,
      bandK: t.bandK,
      hasCutOut: t.cutOutC !== null,
    }),
  );
  const guards: ShelfItem[] = enclosure.heaters.some((h) => h.guarded && h.mount === 'inside')
    ? [{ id: `${mark}guard`, kind: 'guard', name: 'wire guard (has it)', price: 0, inStock: true, guards: 'body' }]
    : [];
  const holders: ShelfItem[] = enclosure.heaters.some((h) => h.holder === 'ceramic')
    ? [
        {
          id: `${mark}holder`,
          kind: 'holder',
          name: 'ceramic lampholder (has it)',
          price: 0,
          inStock: true,
          material: 'ceramic',
        },
      ]
    : [];
  return [...heaters, ...thermostats, ...guards, ...holders];
}
