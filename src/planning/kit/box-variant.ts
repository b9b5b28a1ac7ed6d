// The same box changed cheaply: foam outside, mesh covered, vents half shut or doubled; what each change costs.
// Leaves out: heaters (place-heater.ts) and whether the change helps (search/).
import type { Box, Enclosure, Panel, PanelName } from '../../physics/enclosure.ts';
import { panelNames } from '../../physics/enclosure.ts';
import { itemsOf, type Shelf, type ShelfItem } from '../shelf/shelf.ts';
import type { KitPart } from './kit-part.ts';
import { canBeBought, type Owned } from './owned.ts';

export const boxChanges = ['insulated', 'mesh-covered', 'vents-halved', 'vents-doubled'] as const;
export type BoxChange = (typeof boxChanges)[number];

export interface BoxVariant {
  /** "drawn", or the changes joined by "+"; a box from the shelf has its item id in front. */
  readonly id: string;
  readonly changes: readonly BoxChange[];
  readonly enclosure: Enclosure;
  readonly parts: readonly KitPart[];
  /** Bottom panel without foam, for a mat under the floor: foam below it is left away. */
  readonly withoutBottomFoam: Enclosure;
}

/** Share of the mesh that is covered by "mesh-covered"; the rest stays open round the lamp. Our choice. */
export const meshCoverFrac = 0.8;
/** Mesh share of a lid from which a box is called open-lidded; our choice. */
export const openLidFrac = 0.3;

/** Changes worth trying on a box, each as a whole box.
 *  @param boxParts what the box itself costs; empty for one the customer has */
export function variantsOf(
  enclosure: Enclosure,
  shelf: Shelf,
  owned: Owned = new Map(),
  boxId = 'drawn',
  boxParts: readonly KitPart[] = [],
): BoxVariant[] {
  const meshLid = (enclosure.box.panels.top.meshShareFrac ?? 0) > openLidFrac;
  const uncovered = meshLid && (enclosure.box.panels.top.meshCoveredFrac ?? 0) < meshCoverFrac - 0.05;
  const sets: BoxChange[][] = [[], ['insulated']];
  if (uncovered) sets.push(['mesh-covered'], ['mesh-covered', 'insulated']);
  else if (enclosure.box.vents.length > 0) sets.push(['vents-halved'], ['vents-doubled']);
  return sets.flatMap((changes) => {
    const parts = changes.map((change) => changeParts(change, enclosure, shelf, owned));
    if (parts.some((p) => p === null)) return [];
    const id = changes.length === 0 ? boxId : `${boxId}+${changes.join('+')}`;
    return [
      {
        id,
        changes,
        enclosure: changes.reduce((e, c) => changed(e, c, shelf, owned, true), enclosure),
        withoutBottomFoam: changes.reduce((e, c) => changed(e, c, shelf, owned, false), enclosure),
        parts: [...boxParts, ...parts.flatMap((p) => p ?? [])],
      },
    ];
  });
}

const foamOf = (shelf: Shelf, owned: Owned) =>
  itemsOf(shelf, 'insulation').find((item) => owned.has(item.id)) ?? itemsOf(shelf, 'insulation').find(canBeBought);
const meshCoverOf = (shelf: Shelf, owned: Owned) => {
  const fitting = itemsOf(shelf, 'cover').filter((item) => item.covers === 'mesh');
  return fitting.find((item) => owned.has(item.id)) ?? fitting.find(canBeBought);
};

/** Panels that take foam: all but the front and a mesh lid; the bottom only where something may lie under the box. */
function foamed(enclosure: Enclosure, bottom: boolean): PanelName[] {
  const { panels, base } = enclosure.box;
  return panelNames.filter((name) => {
    if (name === 'front' || (panels[name].meshShareFrac ?? 0) > openLidFrac) return false;
    return name !== 'bottom' || (bottom && base.kind !== 'stacked');
  });
}

function changed(enclosure: Enclosure, change: BoxChange, shelf: Shelf, owned: Owned, bottomFoam: boolean): Enclosure {
  const { box } = enclosure;
  const withBox = (next: Partial<Box>): Enclosure => ({ ...enclosure, box: { ...box, ...next } });
  if (change === 'vents-halved' || change === 'vents-doubled') {
    const factor = change === 'vents-halved' ? 0.5 : 2;
    return withBox({ vents: box.vents.map((v) => ({ ...v, areaM2: v.areaM2 * factor })) });
  }
  if (change === 'mesh-covered')
    return withBox({ panels: { ...box.panels, top: { ...box.panels.top, meshCoveredFrac: meshCoverFrac } } });
  const foam = foamOf(shelf, owned);
  if (!foam) return enclosure;
  const layer = { materialId: foam.materialId, thicknessM: foam.thicknessM };
  const panels: Record<PanelName, Panel> = { ...box.panels };
  for (const name of foamed(enclosure, bottomFoam))
    panels[name] = { ...panels[name], layers: [...panels[name].layers, layer] };
  return withBox({ panels });
}

/** Null when the shelf does not hold what the change needs. */
function changeParts(change: BoxChange, enclosure: Enclosure, shelf: Shelf, owned: Owned): readonly KitPart[] | null {
  const { lengthM, depthM, heightM } = enclosure.box;
  const area: Record<PanelName, number> = {
    front: lengthM * heightM,
    back: lengthM * heightM,
    left: depthM * heightM,
    right: depthM * heightM,
    top: lengthM * depthM,
    bottom: lengthM * depthM,
  };
  if (change === 'insulated') {
    const foam = foamOf(shelf, owned);
    if (!foam) return null;
    const m2 = foamed(enclosure, true).reduce((sum, name) => sum + area[name], 0);
    return [areaPart(foam, m2, 'insulation', owned)];
  }
  if (change === 'mesh-covered') {
    const cover = meshCoverOf(shelf, owned);
    if (!cover) return null;
    const m2 = area.top * (enclosure.box.panels.top.meshShareFrac ?? 0) * meshCoverFrac;
    return [areaPart(cover, m2, 'cover', owned)];
  }
  return [];
}

/** Foam or a sheet that the customer has is taken to be enough. */
function areaPart(item: ShelfItem, m2: number, role: KitPart['role'], owned: Owned): KitPart {
  const has = owned.has(item.id);
  const count = Math.ceil(m2 * 10) / 10;
  return { itemId: item.id, name: item.name, role, count, price: has ? 0 : item.price * count, owned: has };
}
