// The floor plan to scale, front below, and under it the animal stretched out today and grown, to the same scale.
import type { Enclosure } from '../../../physics/enclosure.ts';
import {
  circle,
  clay,
  claySoft,
  type Drawing,
  dimension,
  hatching,
  ink,
  letter,
  line,
  rect,
  svgOf,
} from './drawing.ts';

export interface FloorPlanWords {
  readonly alt: string;
  readonly front: string;
  readonly length: (metres: number) => string;
  readonly today: string;
  readonly grown: string;
}

const widthMm = 86;

export function floorPlanDrawing(
  enclosure: Enclosure,
  bodyM: { readonly today: number | null; readonly grown: number | null },
  words: FloorPlanWords,
): Drawing {
  const { box, hides, bowl, heaters, thermostats } = enclosure;
  const longest = Math.max(box.lengthM, bodyM.today ?? 0, bodyM.grown ?? 0);
  const scale = Math.min((widthMm - 20) / longest, 46 / box.depthM);
  const left = 2;
  const top = 7;
  const [w, d] = [box.lengthM * scale, box.depthM * scale];
  const x = (xM: number): number => left + xM * scale;
  const y = (yM: number): number => top + d - yM * scale;
  const hot = { stroke: clay, widthMm: 0.4, fill: claySoft };
  const shapes = [
    rect(left, top, w, d, { widthMm: 0.5, fill: '#ffffff' }),
    ...hides.map((h) =>
      rect(
        x(h.xM - h.lengthM / 2),
        y(h.yM + h.depthM / 2),
        h.lengthM * scale,
        h.depthM * scale,
        { fill: '#f0ece1', widthMm: 0.35 },
        2,
      ),
    ),
    ...heaters.map((h) => {
      const flat = h.lengthM !== undefined && h.depthM !== undefined;
      const [hw, hd] = flat ? [h.lengthM! * scale, h.depthM! * scale] : [4.6, 4.6];
      const [hx, hy] = [x(h.xM) - hw / 2, y(h.yM) - hd / 2];
      const lines = hatching(hx, hy, hw, hd, 1.6, { stroke: clay, widthMm: 0.18 });
      return flat
        ? rect(hx, hy, hw, hd, { ...hot, fill: 'none' }) + lines
        : circle(x(h.xM), y(h.yM), 2.3, hot) +
            hatching(hx + 0.9, hy + 0.9, 2.8, 2.8, 1.1, { stroke: clay, widthMm: 0.2 });
    }),
    ...(bowl
      ? [
          circle(x(bowl.xM), y(bowl.yM), (bowl.diameterM * scale) / 2, { fill: '#ffffff', widthMm: 0.35 }),
          circle(x(bowl.xM), y(bowl.yM), (bowl.diameterM * scale) / 2 - 0.8, { widthMm: 0.2, dash: '0.8 0.6' }),
        ]
      : []),
    ...thermostats.map(
      ({ probe }) =>
        circle(x(probe.xM), y(probe.yM), 1.2, { fill: '#ffffff', widthMm: 0.4 }) +
        line(x(probe.xM) - 1.2, y(probe.yM), x(probe.xM) + 1.2, y(probe.yM)) +
        line(x(probe.xM), y(probe.yM) - 1.2, x(probe.xM), y(probe.yM) + 1.2),
    ),
    dimension(left, 4, left + w, 4),
    dimension(left + w + 4, top, left + w + 4, top + d),
  ];
  const lettering = [
    letter(left + w / 2, 1.6, words.length(box.lengthM)),
    letter(left + w + 6, top + d / 2, words.length(box.depthM), 'left'),
    letter(left + w / 2, top + d + 3, words.front, 'middle', 9),
  ];
  let under = top + d + 8;
  for (const [lengthM, word, dash] of [
    [bodyM.today, words.today, undefined],
    [bodyM.grown, words.grown, '1.4 0.9'],
  ] as const) {
    if (lengthM === null) continue;
    shapes.push(
      line(left, under, left + lengthM * scale, under, { widthMm: 1.1, stroke: ink, ...(dash ? { dash } : {}) }),
    );
    lettering.push(letter(left, under + 3.4, `${word} ${words.length(lengthM)}`, 'left', 9));
    under += 8.4;
  }
  return { svg: svgOf(widthMm, under, shapes), widthMm, heightMm: under, lettering, alt: words.alt };
}
