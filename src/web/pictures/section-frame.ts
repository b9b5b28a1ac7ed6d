// From metres inside the box to units on the sheet, for the front view; one unit is one pixel of the lettering.
import type { Box, Enclosure, Panel } from '../../physics/enclosure.ts';

export interface SectionFrame {
  readonly width: number;
  readonly height: number;
  /** Units per metre. */
  readonly scale: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly floor: number;
  readonly wall: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly narrow: boolean;
  readonly x: (xM: number) => number;
  readonly z: (zM: number) => number;
  readonly xM: (x: number) => number;
  readonly zM: (y: number) => number;
  /** Where the hanging numbers begin. */
  readonly tagsTop: number;
}

export function panelThicknessM(panel: Panel): number {
  return panel.layers.reduce((sum, layer) => sum + layer.thicknessM, 0);
}

/** Room kept for dimension lines, vent arrows and the numbers that hang below [units]. */
const tagsHeight = 74;
const baseHeight = 22;

export function sectionFrame(enclosure: Enclosure, width: number, mostInsideHeight: number): SectionFrame {
  const { box } = enclosure;
  const narrow = width < 520;
  const marginLeft = narrow ? 46 : 74;
  // room for the depth of the substrate beside its dimension line, also in inches
  const marginRight = narrow ? 26 : 64;
  const above = enclosure.heaters.some((heater) => heater.mount === 'above-mesh');
  const marginTop = 34 + (above ? 58 : 0);
  const thickest = (name: keyof Box['panels'], scale: number): number =>
    Math.max(4, panelThicknessM(box.panels[name]) * scale);
  const scale = Math.min((width - marginLeft - marginRight - 20) / box.lengthM, mostInsideHeight / box.heightM);
  const wall = {
    left: thickest('left', scale),
    right: thickest('right', scale),
    top: thickest('top', scale),
    bottom: thickest('bottom', scale),
  };
  const inside = box.lengthM * scale;
  const spare = width - marginLeft - marginRight - inside - wall.left - wall.right;
  const left = marginLeft + wall.left + Math.max(0, spare / 2);
  const top = marginTop + wall.top;
  const floor = top + box.heightM * scale;
  const tagsTop = floor + wall.bottom + baseHeight;
  return {
    width,
    height: tagsTop + tagsHeight,
    scale,
    left,
    right: left + inside,
    top,
    floor,
    wall,
    narrow,
    x: (xM) => left + xM * scale,
    z: (zM) => floor - zM * scale,
    xM: (x) => (x - left) / scale,
    zM: (y) => (floor - y) / scale,
    tagsTop,
  };
}
