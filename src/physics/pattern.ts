// Where the radiation of a free-hanging heater first lands: shares by patch, and irradiance at a point.
// A point source: all round, downward by the cosine law, or a soft-edged cone.
import { type Patch, partsOf } from './grid.ts';
import { inFrame, type Point, type Rect, rectPoint, solidAngle } from './rectangle.ts';

export interface Pattern {
  /** Share sent all round; the rest goes down. */
  readonly isotropicFrac: number;
  /** Full angle of the downward part; 180 = cosine law over the hemisphere. */
  readonly beamDeg: number;
}

/** Power per steradian for 1 W, in the direction at angle `fromNadirRad` from straight down [1/sr]. */
export function intensityPerSr(pattern: Pattern, fromNadirRad: number): number {
  const round = pattern.isotropicFrac / (4 * Math.PI);
  return round + (1 - pattern.isotropicFrac) * beamPerSr(pattern.beamDeg, fromNadirRad);
}

/** A beam of full angle b as cos^m with the half-power point at b/2; 180 degrees gives the cosine law (half power at 60 degrees, m = 1). */
function beamExponent(beamDeg: number): number {
  const half = (Math.min(beamDeg, 120) / 2) * (Math.PI / 180);
  return Math.log(0.5) / Math.log(Math.cos(half));
}

function beamPerSr(beamDeg: number, angle: number): number {
  const c = Math.cos(angle);
  if (c <= 0) return 0;
  const m = beamExponent(beamDeg);
  return ((m + 1) / (2 * Math.PI)) * c ** m;
}

/** Shares of the radiation by patch; sums to 1 (what would miss is spread in proportion). */
export function firstShares(patches: readonly Patch[], source: Point, pattern: Pattern): Float64Array {
  const { round, down } = landing(patches, source, pattern.beamDeg);
  return round.map((r, i) => pattern.isotropicFrac * r + (1 - pattern.isotropicFrac) * down[i]!);
}

interface Landing {
  /** Shares by patch of what goes all round, and of the beam; each sums to 1. */
  readonly round: Float64Array;
  readonly down: Float64Array;
}

/** Kept for each cut of a box: all versions of one box share cut, heater places and beams, and summing beams is slow. */
const landings = new WeakMap<readonly Patch[], Map<string, Landing>>();

function landing(patches: readonly Patch[], source: Point, beamDeg: number): Landing {
  const kept = landings.get(patches) ?? new Map<string, Landing>();
  landings.set(patches, kept);
  const key = `${source.xM} ${source.yM} ${source.zM} ${beamDeg}`;
  let found = kept.get(key);
  if (!found) {
    found = {
      round: toOne(Float64Array.from(patches, (p) => overParts(p, (r) => solidAngle(r, source)))),
      down: toOne(Float64Array.from(patches, (p) => overParts(p, (r) => beamOnto(r, p.facing, source, beamDeg)))),
    };
    kept.set(key, found);
  }
  return found;
}

/** Over a patch, without what is cut out of it and counts by itself. */
function overParts(p: Patch, of: (r: Rect) => number): number {
  return Math.max(
    0,
    partsOf(p).reduce((s, { rect, weight }) => s + weight * of(rect), 0),
  );
}

function toOne(values: Float64Array): Float64Array {
  const sum = values.reduce((s, v) => s + v, 0);
  return values.map((v) => (sum > 0 ? v / sum : 0));
}

/** Points along each side of a patch at which a beam is summed; narrow beams need more on the floor; our choice. */
const samplesFor = (facing: Patch['facing'], beamDeg: number): number => (beamDeg < 60 && facing === 'floor' ? 32 : 12);

function beamOnto(rect: Rect, facing: Patch['facing'], source: Point, beamDeg: number): number {
  const samples = samplesFor(facing, beamDeg);
  const m = beamExponent(beamDeg);
  const fromPlane = Math.abs(inFrame(rect, source).d);
  let sum = 0;
  for (let u = 0; u < samples; u++) {
    for (let v = 0; v < samples; v++) {
      const at = rectPoint(rect, (u + 0.5) / samples, (v + 0.5) / samples);
      const dz = source.zM - at.zM;
      const r2 = (at.xM - source.xM) ** 2 + (at.yM - source.yM) ** 2 + dz * dz;
      if (dz <= 0 || r2 === 0) continue;
      const r = Math.sqrt(r2);
      sum += ((dz / r) ** m * fromPlane) / r / r2;
    }
  }
  const perSample = ((rect.a1 - rect.a0) * (rect.b1 - rect.b0)) / (samples * samples);
  return ((m + 1) / (2 * Math.PI)) * sum * perSample;
}

/** Irradiance at a point from 1 W, on a surface facing the source [W/m2 per W]. */
export function irradiancePerW(source: Point, at: Point, pattern: Pattern): number {
  const dz = source.zM - at.zM;
  const r2 = Math.max(0.0025, (at.xM - source.xM) ** 2 + (at.yM - source.yM) ** 2 + dz * dz);
  return intensityPerSr(pattern, Math.acos(Math.max(-1, Math.min(1, dz / Math.sqrt(r2))))) / r2;
}
