// How long is the snake on this picture? A line traced along its middle, scaled by a ruler in the same picture, with its error.
// Leaves out perspective: ruler and animal lie flat on one board and the camera looks straight down.
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';

export interface Spot {
  /** Picture elements from the left and from the top. */
  readonly xPx: number;
  readonly yPx: number;
}

export interface TracedLength {
  readonly lengthMm: number;
  /** One standard error [mm]. */
  readonly errorMm: number;
  readonly mmPerPx: number;
}

export interface TraceErrors {
  /** How far a touch misses the middle of the body [mm]. */
  readonly clickMm: number;
  /** What bends and breathing add, share of the length 0..1. */
  readonly shareFrac: number;
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);

/** Length of a line through the spots, cut corners put back by a cubic through them (Catmull-Rom, 16 parts each). */
export function curveLengthPx(spots: readonly Spot[]): number {
  let total = 0;
  for (let i = 0; i + 1 < spots.length; i++) {
    const b = spots[i] as Spot;
    const c = spots[i + 1] as Spot;
    const a = spots[i - 1] ?? { xPx: 2 * b.xPx - c.xPx, yPx: 2 * b.yPx - c.yPx };
    const d = spots[i + 2] ?? { xPx: 2 * c.xPx - b.xPx, yPx: 2 * c.yPx - b.yPx };
    let before = b;
    for (let k = 1; k <= 16; k++) {
      const here = between(a, b, c, d, k / 16);
      total += apart(before, here);
      before = here;
    }
  }
  return total;
}

function between(a: Spot, b: Spot, c: Spot, d: Spot, t: number): Spot {
  const one = (p: number, q: number, r: number, s: number): number =>
    0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t * t + (3 * q - p - 3 * r + s) * t ** 3);
  return { xPx: one(a.xPx, b.xPx, c.xPx, d.xPx), yPx: one(a.yPx, b.yPx, c.yPx, d.yPx) };
}

/** @param ruler two spots on the ruler, `rulerMm` apart  @param line spots along the body, nose to tail tip
 *  @returns length and its standard error [mm]
 *  Faults: "ANIMAL_TRACE". Source: RIVAS2008 for tracing; errors are our choice (data/condition.json). */
export function tracedLength(
  ruler: readonly [Spot, Spot],
  rulerMm: number,
  line: readonly Spot[],
  errors: TraceErrors,
): Result<TracedLength> {
  const faults: Fault[] = [];
  const rulerPx = apart(ruler[0], ruler[1]);
  if (!(rulerMm >= 50)) faults.push(traceFault('rulerMm', `${rulerMm}`, 'a stretch of at least 50 mm'));
  if (rulerPx < 40) faults.push(traceFault('ruler', `${Math.round(rulerPx)} px`, 'at least 40 picture elements apart'));
  if (line.length < 4)
    faults.push(traceFault('line', `${line.length} spots`, 'at least 4 spots from nose to tail tip'));
  if (faults.length > 0) return bad(faults);
  const mmPerPx = rulerMm / rulerPx;
  const lengthMm = curveLengthPx(line) * mmPerPx;
  // The ruler's two ends scale the whole; the two ends of the animal add once; bends and breath are a share.
  const ruled = (Math.SQRT2 * errors.clickMm) / rulerMm;
  const errorMm = Math.hypot(lengthMm * ruled, Math.SQRT2 * errors.clickMm, lengthMm * errors.shareFrac);
  return good({ lengthMm, errorMm, mmPerPx });
}

function traceFault(field: string, got: string, allowed: string): Fault {
  return {
    code: 'ANIMAL_TRACE',
    field,
    got,
    allowed,
    say: 'The picture gives no length yet.',
    fix: 'Lay a ruler flat beside the animal, touch both its ends, then the middle of the body from nose to tail tip.',
  };
}
