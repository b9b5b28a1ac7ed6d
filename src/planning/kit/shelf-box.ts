// A box of the shelf as an enclosure: the same room, animal, floor and furniture, moved into it to scale.
// Vents low at one end and high at the other, our choice. Leaves out: heaters.
import type { Enclosure, Panel, PanelName } from '../../physics/enclosure.ts';
import type { ShelfEnclosure } from '../shelf/shelf.ts';

/** Open share of a vent's grille on the shelf: areas there are given open. */
const openFrac = 1;
/** Opening round sliding doors for each metre of front height [m2/m]; our estimate, about 8 cm2 for 0.6 m. */
const gapPerHeightM = 0.0013;

export function enclosureInBox(base: Enclosure, item: ShelfEnclosure): Enclosure {
  const { lengthM: L, depthM: D, heightM: H } = item;
  const wall: Panel = { layers: [{ materialId: item.wallMaterialId, thicknessM: item.wallThicknessM }] };
  const front: Panel = { layers: [{ materialId: item.frontMaterialId, thicknessM: item.frontThicknessM }] };
  const top: Panel =
    item.meshShareFrac > 0
      ? { ...wall, meshShareFrac: item.meshShareFrac, meshOpenFrac: 0.6, meshCoveredFrac: 0 }
      : wall;
  const panels: Record<PanelName, Panel> = { front, back: wall, left: wall, right: wall, top, bottom: wall };
  const vent = (areaM2: number, alongM: number, heightM: number) =>
    areaM2 > 0 ? [{ panel: 'back' as const, alongM, heightM, areaM2, openFrac }] : [];
  const x = L / base.box.lengthM;
  const y = D / base.box.depthM;
  const z = H / base.box.heightM;
  const hides = base.hides.map((h) => ({
    ...h,
    lengthM: Math.min(h.lengthM, L * 0.45),
    depthM: Math.min(h.depthM, D * 0.9),
    heightM: Math.min(h.heightM, H * 0.8),
  }));
  const inside = (at: number, size: number, span: number) => Math.max(size / 2, Math.min(span - size / 2, at));
  return {
    ...base,
    name: item.name,
    box: {
      lengthM: L,
      depthM: D,
      heightM: H,
      panels,
      vents: [...vent(item.lowVentM2, L * 0.2, H * 0.25), ...vent(item.highVentM2, L * 0.83, H * 0.8)],
      gapAreaM2: gapPerHeightM * H,
      widestGapM: item.widestGapM,
      base: base.box.base.kind === 'stacked' ? { kind: 'shelf' } : base.box.base,
    },
    heaters: [],
    thermostats: [],
    hides: hides.map((h) => ({ ...h, xM: inside(h.xM * x, h.lengthM, L), yM: inside(h.yM * y, h.depthM, D) })),
    bowl: base.bowl
      ? {
          diameterM: base.bowl.diameterM,
          xM: inside(base.bowl.xM * x, base.bowl.diameterM, L),
          yM: inside(base.bowl.yM * y, base.bowl.diameterM, D),
        }
      : null,
    perch: base.perch ? { xM: base.perch.xM * x, yM: base.perch.yM * y, zM: base.perch.zM * z } : null,
    substrate: base.substrate ? { ...base.substrate, depthM: Math.min(base.substrate.depthM, H / 3) } : null,
  };
}
