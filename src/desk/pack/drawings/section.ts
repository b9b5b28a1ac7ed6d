// The front view to scale: what stands where, how big, and what is to be read at each place.
// Leaves out heater and probe (heater-and-probe.ts) and the words.
import type { Enclosure, Vent } from '../../../physics/enclosure.ts';
import { cut, type Drawing, dimension, grey, ink, type Lettering, letter, line, path, rect, svgOf } from './drawing.ts';
import { heaterShapes, probeShapes } from './heater-and-probe.ts';
import { frameOf, type SectionFrame, widthMm } from './section-frame.ts';
import { spreadAlong } from './spread-along.ts';

/** What hangs on the drawing: name of a place and the lines under it. */
export interface HungTag {
  readonly xM: number;
  readonly name: string;
  readonly lines: readonly string[];
}

export interface SectionWords {
  readonly alt: string;
  readonly length: (metres: number) => string;
  /** One line a heater, in the order of the file. */
  readonly heaters: readonly string[];
  readonly probe: string;
}

const tagWidthMm = 43;
const tagLineMm = 4.6;

export function sectionDrawing(
  enclosure: Enclosure,
  tags: readonly HungTag[],
  words: SectionWords,
  mostInsideMm: number,
): Drawing {
  const { box } = enclosure;
  const frame = frameOf(enclosure, mostInsideMm);
  const tagsTop = frame.floor + frame.wallMm + 9;
  const heightMm = tagsTop + (1 + Math.max(0, ...tags.map((t) => t.lines.length))) * tagLineMm + 1;
  const floorM = enclosure.substrate?.depthM ?? 0;
  const outer = { left: frame.left - frame.wallMm, right: frame.right + frame.wallMm };
  const heaters = heaterShapes(enclosure, frame, words.heaters);
  const probes = probeShapes(enclosure, frame, words.probe, words.length);
  const hung = hangingTags(tags, frame, floorM, tagsTop);
  const shapes = [
    panels(enclosure, frame),
    substrate(frame, floorM),
    furniture(enclosure, frame, floorM),
    box.vents.map((vent) => ventShape(vent, frame)).join(''),
    base(enclosure, frame),
    dimension(outer.left, 5, outer.right, 5),
    dimension(outer.left - 6, frame.top, outer.left - 6, frame.floor),
    ...(floorM > 0.015 ? [dimension(outer.right + 5, frame.y(floorM), outer.right + 5, frame.floor)] : []),
    heaters.shapes,
    probes.shapes,
    hung.shapes,
  ];
  const lettering: Lettering[] = [
    letter((frame.left + frame.right) / 2, 2.2, words.length(box.lengthM)),
    letter(outer.left - 8, (frame.top + frame.floor) / 2, words.length(box.heightM), 'right'),
    ...(floorM > 0.015
      ? [letter(outer.right + 7, (frame.y(floorM) + frame.floor) / 2, words.length(floorM), 'left')]
      : []),
    ...heaters.lettering,
    ...probes.lettering,
    ...hung.lettering,
  ];
  return { svg: svgOf(widthMm, heightMm, shapes), widthMm, heightMm, lettering, alt: words.alt };
}

function panels({ box }: Enclosure, f: SectionFrame): string {
  const solid = { fill: cut, widthMm: 0.3 };
  const mesh = box.panels.top.meshShareFrac ?? 0;
  const inside = f.right - f.left;
  const meshFrom = f.left + (inside * (1 - mesh)) / 2;
  const lid =
    rect(f.left - f.wallMm, f.top - f.wallMm, inside + 2 * f.wallMm, f.wallMm, solid) +
    (mesh > 0
      ? rect(meshFrom, f.top - f.wallMm - 0.2, inside * mesh, f.wallMm + 0.4, { fill: '#ffffff', stroke: 'none' }) +
        line(meshFrom, f.top - f.wallMm / 2, meshFrom + inside * mesh, f.top - f.wallMm / 2, {
          widthMm: 0.6,
          dash: '1 0.9',
        })
      : '');
  return (
    rect(f.left, f.top, inside, f.floor - f.top, { fill: '#ffffff', widthMm: 0.2 }) +
    rect(f.left - f.wallMm, f.top, f.wallMm, f.floor - f.top, solid) +
    rect(f.right, f.top, f.wallMm, f.floor - f.top, solid) +
    rect(f.left - f.wallMm, f.floor, inside + 2 * f.wallMm, f.wallMm, solid) +
    lid
  );
}

function substrate(f: SectionFrame, depthM: number): string {
  if (depthM <= 0) return '';
  return rect(f.left, f.y(depthM), f.right - f.left, depthM * f.scale, { fill: '#ece5d6', widthMm: 0.2 });
}

function furniture({ hides, bowl, perch, box }: Enclosure, f: SectionFrame, floorM: number): string {
  const y = f.y(floorM);
  const drawn = hides.map((hide) => {
    const [w, h] = [hide.lengthM * f.scale, hide.heightM * f.scale];
    const x = f.x(hide.xM) - w / 2;
    return (
      path(
        ['M', x, y, 'V', y - h * 0.45, 'Q', x, y - h, x + w * 0.3, y - h, 'H', x + w * 0.7].concat([
          'Q',
          x + w,
          y - h,
          x + w,
          y - h * 0.45,
          'V',
          y,
          'Z',
        ]),
        { fill: '#f7f4ec', widthMm: 0.35 },
      ) +
      path(['M', x + w / 2 - 2.2, y, 'V', y - 1.4, 'A', 2.2, 2, 0, 0, 1, x + w / 2 + 2.2, y - 1.4, 'V', y, 'Z'], {
        fill: ink,
      })
    );
  });
  const water = bowl
    ? path(
        [
          'M',
          f.x(bowl.xM - bowl.diameterM / 2),
          y - 3,
          'l',
          1,
          3,
          'H',
          f.x(bowl.xM + bowl.diameterM / 2) - 1,
          'l',
          1,
          -3,
          'Z',
        ],
        { fill: '#ffffff', widthMm: 0.35 },
      ) +
      line(f.x(bowl.xM - bowl.diameterM / 2) + 0.5, y - 2.1, f.x(bowl.xM + bowl.diameterM / 2) - 0.5, y - 2.1, {
        dash: '0.8 0.6',
      })
    : '';
  const branch = perch
    ? path(
        [
          'M',
          f.x(Math.max(0.02, perch.xM - 0.22)),
          f.y(perch.zM) + 2,
          'Q',
          f.x(perch.xM),
          f.y(perch.zM) - 2,
          f.x(Math.min(box.lengthM - 0.02, perch.xM + 0.24)),
          f.y(perch.zM) + 1.5,
        ],
        { widthMm: 1.1, stroke: grey },
      )
    : '';
  return branch + drawn.join('') + water;
}

/** In the side walls a gap with an arrow, in back and front a louvre seen from the front, dashed as it lies behind. */
function ventShape(vent: Vent, f: SectionFrame): string {
  const y = f.y(vent.heightM);
  if (vent.panel === 'left' || vent.panel === 'right') {
    const wall = vent.panel === 'left' ? f.left - f.wallMm : f.right;
    const [out, into] = vent.panel === 'left' ? [wall - 3.5, wall + f.wallMm + 3] : [wall + f.wallMm + 3.5, wall - 3];
    return (
      rect(wall - 0.2, y - 2.2, f.wallMm + 0.4, 4.4, { fill: '#ffffff', stroke: 'none' }) +
      line(out, y, into, y, { widthMm: 0.3 })
    );
  }
  const x = vent.panel === 'top' || vent.panel === 'bottom' ? f.x(vent.alongM) : f.x(vent.alongM);
  if (vent.panel === 'top')
    return rect(x - 4, f.top - f.wallMm - 0.2, 8, f.wallMm + 0.4, { fill: '#ffffff', dash: '0.8 0.6' });
  if (vent.panel === 'bottom')
    return rect(x - 4, f.floor - 0.2, 8, f.wallMm + 0.4, { fill: '#ffffff', dash: '0.8 0.6' });
  const dashed = { widthMm: 0.22, dash: '0.9 0.6', stroke: grey };
  return rect(x - 4, y - 1.6, 8, 3.2, dashed) + line(x - 4, y, x + 4, y, dashed);
}

function base({ box }: Enclosure, f: SectionFrame): string {
  const y = f.floor + f.wallMm;
  const [from, to] = [f.left - f.wallMm, f.right + f.wallMm];
  if (box.base.kind === 'legs')
    return line(from + 2, y, from + 2, y + 4) + line(to - 2, y, to - 2, y + 4) + line(from - 3, y + 4, to + 3, y + 4);
  return line(from - 3, y + 0.4, to + 3, y + 0.4, { widthMm: 0.35 });
}

function hangingTags(tags: readonly HungTag[], f: SectionFrame, floorM: number, top: number) {
  const centres = spreadAlong(
    tags.map((tag) => f.x(tag.xM)),
    tagWidthMm,
    1,
    widthMm - 1,
  );
  const string = { widthMm: 0.18, stroke: grey };
  const shapes = tags.map((tag, i) => {
    const x = f.x(tag.xM);
    return (
      `<circle cx="${x}" cy="${f.y(floorM)}" r="0.8" fill="${ink}"/>` +
      path(['M', x, f.y(floorM), 'V', top - 5, 'L', centres[i]!, top - 2], string)
    );
  });
  const lettering = tags.flatMap((tag, i) => [
    letter(centres[i]!, top, tag.name, 'middle', 10, true),
    ...tag.lines.map((text, k) => letter(centres[i]!, top + (k + 1) * tagLineMm, text, 'middle', k === 0 ? 10 : 9)),
  ]);
  return { shapes: shapes.join(''), lettering };
}
