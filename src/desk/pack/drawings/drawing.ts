// What a drawing of the pack is: shapes as SVG in millimetres, and its lettering apart, so that the page sets it in its own
// type and a reader for the blind finds it. Leaves out what is drawn.

export interface Lettering {
  readonly xMm: number;
  /** Middle of the line of text. */
  readonly yMm: number;
  readonly text: string;
  readonly sizePt: number;
  readonly at: 'left' | 'middle' | 'right';
  readonly bold: boolean;
}

export interface Drawing {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lettering: readonly Lettering[];
  readonly alt: string;
}

/** Ink, paper and the two tones of the sheet; each tone also has a hatching, because print may be black and white. */
export const ink = '#1c1a17';
export const grey = '#8a857b';
export const cut = '#cfc9bc';
export const clay = '#a4461e';
export const claySoft = '#f0d6c6';
export const slate = '#35587a';
export const slateSoft = '#d3dfe9';

const n = (mm: number): string => String(Math.round(mm * 100) / 100);

export interface Stroke {
  readonly stroke?: string;
  readonly widthMm?: number;
  readonly fill?: string;
  readonly dash?: string;
}

const painted = ({ stroke = ink, widthMm = 0.25, fill = 'none', dash }: Stroke): string =>
  `fill="${fill}" stroke="${stroke}" stroke-width="${widthMm}"${dash === undefined ? '' : ` stroke-dasharray="${dash}"`}`;

export const line = (x1: number, y1: number, x2: number, y2: number, s: Stroke = {}): string =>
  `<line x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}" ${painted(s)}/>`;
export const rect = (x: number, y: number, w: number, h: number, s: Stroke = {}, radius = 0): string =>
  `<rect x="${n(x)}" y="${n(y)}" width="${n(Math.max(0, w))}" height="${n(Math.max(0, h))}" rx="${n(radius)}" ${painted(s)}/>`;
export const circle = (x: number, y: number, r: number, s: Stroke = {}): string =>
  `<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" ${painted(s)}/>`;
/** Points and letters of a path; numbers are rounded to a hundredth of a millimetre. */
export const path = (parts: readonly (string | number)[], s: Stroke = {}): string =>
  `<path d="${parts.map((p) => (typeof p === 'number' ? n(p) : p)).join(' ')}" ${painted(s)}/>`;

export const svgOf = (widthMm: number, heightMm: number, shapes: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${n(widthMm)}mm" height="${n(heightMm)}mm" viewBox="0 0 ${n(widthMm)} ${n(heightMm)}">${shapes.join('')}</svg>`;

export const letter = (
  xMm: number,
  yMm: number,
  text: string,
  at: Lettering['at'] = 'middle',
  sizePt = 9.5,
  bold = false,
): Lettering => ({ xMm, yMm, text, at, sizePt, bold });

/** A dimension line with ticks at both ends. */
export function dimension(x1: number, y1: number, x2: number, y2: number): string {
  const flat = y1 === y2;
  const tick = (x: number, y: number): string => (flat ? line(x, y - 1.4, x, y + 1.4) : line(x - 1.4, y, x + 1.4, y));
  return line(x1, y1, x2, y2, { widthMm: 0.18 }) + tick(x1, y1) + tick(x2, y2);
}

/** Slanting lines inside a rectangle, in step with those of its neighbours. */
export function hatching(x: number, y: number, w: number, h: number, stepMm: number, s: Stroke): string {
  let found = '';
  for (let sum = Math.ceil((x + y) / stepMm) * stepMm; sum < x + w + y + h; sum += stepMm) {
    const x1 = Math.max(x, sum - (y + h));
    const x2 = Math.min(x + w, sum - y);
    if (x2 - x1 > 0.01) found += line(x1, sum - x1, x2, sum - x2, s);
  }
  return found;
}

/** Dots inside a rectangle, on one grid for the whole drawing. */
export function dots(
  x: number,
  y: number,
  w: number,
  h: number,
  stepMm: number,
  radiusMm: number,
  fill: string,
): string {
  let found = '';
  for (let gy = Math.ceil(y / stepMm); gy * stepMm < y + h; gy++) {
    const shift = gy % 2 === 0 ? 0 : stepMm / 2;
    for (let gx = Math.ceil((x - shift) / stepMm); gx * stepMm + shift < x + w; gx++)
      found += `<circle cx="${n(gx * stepMm + shift)}" cy="${n(gy * stepMm)}" r="${n(radiusMm)}" fill="${fill}"/>`;
  }
  return found;
}
