// Draws the effects of uncertain parameters: one row a parameter, one column a measure, bars from the best value out.
// Low end of the belief slate and hatched, high end clay and plain, so that it survives black and white.
import { type Effect, type Measure, measures } from './effects.ts';

const paper = '#faf7f0';
const ink = '#1d1b18';
const clay = '#b4532a';
const slate = '#3e5c76';

const left = 232;
const top = 96;
const rowH = 30;
const columnW = 190;
const gapW = 26;

const at = (v: number): string => v.toFixed(1);
const escaped = (s: string): string => s.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const signed = (v: number, digits: number): string => (v >= 0 ? '+' : '−') + Math.abs(v).toFixed(digits);

/** The whole picture. Its title states the finding. @param box what the box is, as the title begins */
export function tornadoSvg(box: string, effects: readonly Effect[]): string {
  const width = left + measures.length * (columnW + gapW);
  const height = top + effects.length * rowH + 58;
  const [first, second] = effects;
  const finding = `${box}, dial fixed: ${first!.words} and ${second!.words} move the basking surface most`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="t d" font-family="'Source Sans 3', sans-serif" font-size="14" fill="${ink}">`,
    `<title id="t">${escaped(finding)}</title>`,
    `<desc id="d">${escaped(described(effects))}</desc>`,
    `<defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="5" height="5" fill="${paper}"/><rect width="2.4" height="5" fill="${slate}"/></pattern></defs>`,
    `<rect width="${width}" height="${height}" fill="${paper}"/>`,
    `<text x="16" y="30" font-size="18" font-weight="600">${escaped(finding)}</text>`,
    ...effects.map((e, i) => rowName(e, top + i * rowH, width)),
    ...measures.flatMap((m, k) => column(m, effects, left + k * (columnW + gapW))),
    legend(height - 18),
    '</svg>',
    '',
  ].join('\n');
}

function described(effects: readonly Effect[]): string {
  const strongest = effects.slice(0, 5).map((e) => {
    const change = (v: number) => `${signed(v, 1)} K`;
    return `${e.words} from ${e.from} to ${e.to}: ${change(e.low.basking!)} to ${change(e.high.basking!)}`;
  });
  return `Change of the basking surface, strongest first. ${strongest.join('; ')}. All figures stand in the table below the picture.`;
}

function rowName(e: Effect, y: number, width: number): string {
  return [
    `<line x1="16" x2="${width - 16}" y1="${y}" y2="${y}" stroke="${ink}" stroke-opacity="0.15"/>`,
    `<text x="16" y="${y + 20}">${escaped(e.words)}</text>`,
  ].join('\n');
}

function column(m: Measure, effects: readonly Effect[], x: number): string[] {
  const most = Math.max(...effects.flatMap((e) => [Math.abs(e.low[m.id]!), Math.abs(e.high[m.id]!)]), 1e-9);
  const middle = x + columnW / 2;
  const scale = (columnW / 2 - 42) / most;
  const bottom = top + effects.length * rowH;
  const bars = effects.flatMap((e, i) => [
    bar(e.low[m.id]!, 'url(#hatch)', slate, middle, scale, top + i * rowH, m),
    bar(e.high[m.id]!, clay, clay, middle, scale, top + i * rowH, m),
  ]);
  return [
    `<text x="${middle}" y="${top - 28}" text-anchor="middle" font-weight="600">${m.name}</text>`,
    `<text x="${middle}" y="${top - 11}" text-anchor="middle" fill-opacity="0.75">change, ${m.unit}</text>`,
    ...bars,
    `<line x1="${middle}" x2="${middle}" y1="${top}" y2="${bottom}" stroke="${ink}"/>`,
  ];
}

/** One bar with its figure at the end; what rounds to nothing gets neither. Bars to the same side share the row's height. */
function bar(v: number, fill: string, edge: string, middle: number, scale: number, y: number, m: Measure): string {
  const digits = m.digits === 2 ? 1 : 0;
  if (Math.abs(v) < 0.5 * 10 ** -digits) return '';
  const w = Math.abs(v) * scale;
  const low = edge === slate;
  const barY = y + (low ? 4 : 15);
  const x = v < 0 ? middle - w : middle;
  const textX = v < 0 ? middle - w - 4 : middle + w + 4;
  const anchor = v < 0 ? 'end' : 'start';
  return [
    `<rect x="${at(x)}" y="${barY}" width="${at(w)}" height="10" fill="${fill}" stroke="${edge}" stroke-width="0.8"/>`,
    `<text x="${at(textX)}" y="${barY + 9}" text-anchor="${anchor}" font-size="12">${signed(v, digits)}</text>`,
  ].join('');
}

function legend(y: number): string {
  return [
    `<rect x="16" y="${y - 10}" width="26" height="10" fill="url(#hatch)" stroke="${slate}" stroke-width="0.8"/>`,
    `<text x="50" y="${y}">parameter at the low end of its belief</text>`,
    `<rect x="306" y="${y - 10}" width="26" height="10" fill="${clay}"/>`,
    `<text x="340" y="${y}">at the high end. Each moved alone; room at the low of the coldest day, by day.</text>`,
  ].join('\n');
}
