// Heaters with their guards and beams, and probes with their height, in the front view.
import type { Enclosure, Heater } from '../../../physics/enclosure.ts';
import {
  circle,
  clay,
  claySoft,
  dimension,
  grey,
  hatching,
  type Lettering,
  letter,
  line,
  path,
  rect,
} from './drawing.ts';
import { lampNameMm, type SectionFrame } from './section-frame.ts';

export interface Shapes {
  readonly shapes: string;
  readonly lettering: readonly Lettering[];
}

const hot = { stroke: clay, widthMm: 0.5, fill: claySoft };
const guard = { stroke: clay, widthMm: 0.25, dash: '0.9 0.7' };

/** Half of the space that the name of a heater takes [mm]. */
const nameMm = 26;

export function heaterShapes(enclosure: Enclosure, f: SectionFrame, names: readonly string[]): Shapes {
  const made = enclosure.heaters.map((heater, i) => heaterShape(heater, i, enclosure, f, names[i] ?? ''));
  return { shapes: made.map((m) => m.shapes).join(''), lettering: made.flatMap((m) => m.lettering) };
}

function heaterShape(heater: Heater, index: number, enclosure: Enclosure, f: SectionFrame, name: string): Shapes {
  const flat = flatShape(heater, enclosure, f);
  if (flat) {
    const low = heater.mount === 'under-floor' || heater.mount === 'on-floor';
    // beside its end, where no string of a tag hangs
    if (low) return { shapes: flat.shapes, lettering: [letter(flat.end + 2, flat.y + 3.4, name, 'left')] };
    return { shapes: flat.shapes, lettering: [named(flat.x, flat.y + 4.5 + index * 4.4, name, f)] };
  }
  const above = heater.mount === 'above-mesh';
  const x = f.x(heater.xM);
  const y = above ? f.top - f.wallMm - 5 : f.y(Math.min(heater.zM, enclosure.box.heightM - 0.02));
  const r = 2.6;
  const cord = above ? '' : line(x, f.top, x, y - r, { stroke: grey, widthMm: 0.3 });
  const dome = above
    ? path(['M', x - 5, y + 4.6, 'Q', x - 5, y - 4, x, y - 4, 'Q', x + 5, y - 4, x + 5, y + 4.6], { widthMm: 0.35 })
    : '';
  const bulb = circle(x, y, r, hot) + hatching(x - 1.6, y - 1.6, 3.2, 3.2, 1.1, { stroke: clay, widthMm: 0.2 });
  const cage = heater.guarded && !above ? rect(x - 4.6, y - 4.4, 9.2, 9.2, guard, 1) : '';
  const shapes = cord + dome + beam(heater, x, y, enclosure, f) + bulb + cage;
  const labelY = above ? f.top - f.wallMm - 12 - index * lampNameMm : y;
  if (above) return { shapes, lettering: [named(x, labelY, name, f)] };
  if (f.right - x > nameMm + 14) return { shapes, lettering: [letter(x + 6, labelY, name, 'left')] };
  if (x - f.left > nameMm + 14) return { shapes, lettering: [letter(x - 6, labelY, name, 'right')] };
  // no room inside: outside, at the end of a line
  const out = f.right + f.wallMm + 5;
  const pointer = line(x + 5, y, out - 1, y, { stroke: grey, widthMm: 0.18 });
  return { shapes: shapes + pointer, lettering: [letter(out, labelY, name, 'left')] };
}

/** A name centred at x, kept on the sheet. */
const named = (x: number, y: number, name: string, f: SectionFrame): Lettering =>
  x - f.left < nameMm
    ? letter(f.left + 1, y, name, 'left')
    : f.right - x < nameMm
      ? letter(f.right - 1, y, name, 'right')
      : letter(x, y, name);

/** Panel or mat: a strip along what it lies on. */
function flatShape(heater: Heater, enclosure: Enclosure, f: SectionFrame) {
  const half = ((heater.lengthM ?? 0.2) * f.scale) / 2;
  const x = f.x(heater.xM);
  const strip = (y: number) => ({
    shapes:
      rect(x - half, y, 2 * half, 1.8, hot) + hatching(x - half, y, 2 * half, 1.8, 1.3, { stroke: clay, widthMm: 0.2 }),
    x,
    end: x + half,
  });
  if (heater.mount === 'ceiling') {
    const made = strip(f.top + 0.2);
    const cage = heater.guarded ? rect(x - half - 1, f.top, 2 * half + 2, 3.2, guard) : '';
    return { ...made, shapes: made.shapes + cage, y: f.top + 2 };
  }
  if (heater.mount === 'under-floor') return { ...strip(f.floor + f.wallMm), y: f.floor + f.wallMm };
  if (heater.mount === 'on-floor') {
    const y = f.y(enclosure.substrate?.depthM ?? 0) - 1.8;
    return { ...strip(y), y };
  }
  return null;
}

function beam(heater: Heater, x: number, y: number, enclosure: Enclosure, f: SectionFrame): string {
  if (heater.beamDeg === undefined) return '';
  const floor = f.y(enclosure.substrate?.depthM ?? 0);
  const reach = Math.tan((Math.min(150, heater.beamDeg) * Math.PI) / 360) * (floor - y);
  const ray = { stroke: clay, widthMm: 0.2, dash: '1.6 1' };
  const to = (dx: number): string => line(x, y, Math.min(f.right, Math.max(f.left, x + dx)), floor, ray);
  return to(-reach) + to(reach);
}

export function probeShapes(
  { thermostats }: Enclosure,
  f: SectionFrame,
  word: string,
  length: (metres: number) => string,
): Shapes {
  const made = thermostats.map(({ probe }, i): Shapes => {
    const x = f.x(probe.xM);
    const y = probe.at === 'mat' ? f.floor : f.y(probe.zM);
    const mark =
      circle(x, y, 1.3, { fill: '#ffffff', widthMm: 0.45 }) +
      line(x - 1.3, y, x + 1.3, y) +
      line(x, y - 1.3, x, y + 1.3);
    if (probe.at === 'mat') return { shapes: mark, lettering: [] };
    // its height stands beside it
    const away = x + 5 + 3 * i;
    const low = f.floor - y < 3;
    const height = low ? '' : dimension(away, y, away, f.floor) + line(x, y, away, y, { widthMm: 0.15, stroke: grey });
    const name = thermostats.length > 1 ? `${word} ${i + 1}` : word;
    const text = low ? name : `${name}, ${length(probe.zM)}`;
    const left = f.right - x > 36 || x - f.left < 36;
    return {
      shapes: height + mark,
      lettering: [letter(left ? x + 2 : x - 2, y - 3.4 - 4.2 * i, text, left ? 'left' : 'right')],
    };
  });
  return { shapes: made.map((m) => m.shapes).join(''), lettering: made.flatMap((m) => m.lettering) };
}
