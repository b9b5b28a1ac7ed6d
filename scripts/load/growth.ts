// Growth drawn: answers against how much there is, both on a scale of tenfold steps, so that "twice as slow for twice as
// much" is a straight line at 45 degrees.
export interface Line {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

const wide = 640;
const high = 380;
const left = 60;
const right = 190;
const top = 20;
const bottom = 50;
const dashes = ['', '8 4', '2 4', '10 3 2 3', '4 8', '1 3'];

export function growthSvg(lines: readonly Line[], xTitle: string, yTitle: string): string {
  const xs = lines.flatMap((line) => line.points.map((point) => point.x));
  const ys = lines.flatMap((line) => line.points.map((point) => Math.max(0.1, point.y)));
  const [x0, x1] = [Math.log10(Math.min(...xs)), Math.log10(Math.max(...xs))];
  const [y0, y1] = [Math.floor(Math.log10(Math.min(...ys))), Math.ceil(Math.log10(Math.max(...ys)))];
  const px = (x: number): number => left + ((Math.log10(x) - x0) / (x1 - x0 || 1)) * (wide - left - right);
  const py = (y: number): number =>
    high - bottom - ((Math.log10(Math.max(0.1, y)) - y0) / (y1 - y0 || 1)) * (high - top - bottom);
  const marks = Array.from({ length: y1 - y0 + 1 }, (_, n) => 10 ** (y0 + n));
  const grid = marks.map(
    (y) =>
      `<path d="M${left} ${py(y)}H${wide - right}" stroke="#ccc4b4"/><text x="${left - 8}" y="${py(y) + 4}" text-anchor="end">${y}</text>`,
  );
  const ticks = [...new Set(xs)].map(
    (x) =>
      `<path d="M${px(x)} ${high - bottom}v5" stroke="#2b2a27"/><text x="${px(x)}" y="${high - bottom + 19}" text-anchor="middle">${x}×</text>`,
  );
  const ends = spread(lines.map((line) => py(line.points.at(-1)?.y ?? 1)));
  const drawn = lines.map((line, n) => {
    const path = line.points
      .map((point, i) => `${i === 0 ? 'M' : 'L'}${px(point.x).toFixed(1)} ${py(point.y).toFixed(1)}`)
      .join('');
    const last = line.points.at(-1);
    const dash = dashes[n % dashes.length];
    return `<path d="${path}" fill="none" stroke="#2b2a27" stroke-width="1.6"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/><text x="${wide - right + 8}" y="${(ends[n] ?? 0) + 4}">${line.name} ${(last?.y ?? 0).toFixed(0)}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${wide} ${high}" font-family="Source Sans 3, sans-serif" font-size="12" fill="#2b2a27" role="img" aria-label="${yTitle} against ${xTitle}"><rect width="${wide}" height="${high}" fill="#faf7f0"/>${grid.join('')}<path d="M${left} ${top}V${high - bottom}H${wide - right}" fill="none" stroke="#2b2a27"/>${ticks.join('')}${drawn.join('')}<text x="${(left + wide - right) / 2}" y="${high - 10}" text-anchor="middle">${xTitle}</text><text x="14" y="${high / 2}" transform="rotate(-90 14 ${high / 2})" text-anchor="middle">${yTitle}</text></svg>\n`;
}

/** Names at the ends of lines, none over another. */
function spread(wanted: readonly number[]): number[] {
  const order = wanted.map((y, n) => ({ y, n })).sort((a, b) => a.y - b.y);
  const placed: number[] = [];
  let lowest = Number.NEGATIVE_INFINITY;
  for (const { y, n } of order) {
    lowest = Math.max(y, lowest + 15);
    placed[n] = lowest;
  }
  return placed;
}
