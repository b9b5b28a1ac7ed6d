// Is this enclosure a plastic tub? Every wall and the bottom of a tub plastic.
import type { Enclosure } from '../physics/enclosure.ts';
import type { Facts } from './fact.ts';

export function isTub(enclosure: Enclosure, facts: Facts): boolean {
  const { front, back, left, right, bottom } = enclosure.box.panels;
  return [front, back, left, right, bottom].every((panel) =>
    panel.layers.every((layer) => facts.materialFacts[layer.materialId]?.use.includes('tub') ?? false),
  );
}
