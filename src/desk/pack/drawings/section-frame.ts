// From metres inside the box to millimetres on paper, for the front view.
import type { Enclosure, Panel } from '../../../physics/enclosure.ts';

export interface SectionFrame {
  readonly scale: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly floor: number;
  readonly wallMm: number;
  readonly x: (xM: number) => number;
  readonly y: (zM: number) => number;
}

/** Width of the whole drawing. */
export const widthMm = 178;
const sideMm = 21;
/** Room above a mesh lid for a lamp, and for each name over it. */
const lampRoomMm = 10.5;
export const lampNameMm = 4.6;

const thicknessM = (panel: Panel): number => panel.layers.reduce((sum, layer) => sum + layer.thicknessM, 0);

export function frameOf(enclosure: Enclosure, mostInsideMm: number): SectionFrame {
  const { box } = enclosure;
  const lamps = enclosure.heaters.filter((h) => h.mount === 'above-mesh').length;
  const above = lamps === 0 ? 0 : lampRoomMm + lamps * lampNameMm;
  const scale = Math.min((widthMm - 2 * sideMm - 8) / box.lengthM, mostInsideMm / box.heightM);
  const wallMm = Math.max(1.2, Math.max(...Object.values(box.panels).map(thicknessM)) * scale);
  const left = (widthMm - box.lengthM * scale) / 2;
  const top = 8 + wallMm + above;
  const floor = top + box.heightM * scale;
  return {
    scale,
    left,
    right: left + box.lengthM * scale,
    top,
    floor,
    wallMm,
    x: (xM) => left + xM * scale,
    y: (zM) => floor - zM * scale,
  };
}
