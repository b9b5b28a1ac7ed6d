// The inner loops of the solver in AssemblyScript, two numbers at a time; scripts/build-kernel.mjs makes kernel.generated.ts
// of it. The same work in the same order as dense.ts, dense-band.ts and solve-plain.ts, which stand in where WebAssembly is
// missing; sums taken in pairs differ from theirs by rounding only. Places are bytes from the start of the memory.

// @ts-ignore: decorator
@inline function at(place: usize, i: i32): f64 { return load<f64>(place + (<usize>i << 3)); }
// @ts-ignore: decorator
@inline function put(place: usize, i: i32, v: f64): void { store<f64>(place + (<usize>i << 3), v); }
// @ts-ignore: decorator
@inline function two(place: usize, i: i32): v128 { return v128.load(place + (<usize>i << 3)); }
// @ts-ignore: decorator
@inline function whole(place: usize, i: i32): i32 { return load<i32>(place + (<usize>i << 2)); }
// @ts-ignore: decorator
@inline function sum(v: v128): f64 { return f64x2.extract_lane(v, 0) + f64x2.extract_lane(v, 1); }

/** LU factors in place with inverse pivots; 1 when a pivot is zero. */
function factorDense(a: usize, n: i32): i32 {
  let k = 0;
  const wide = <usize>n << 3;
  for (; k + 1 < n; k += 2) {
    const top = a + <usize>k * wide;
    const under = top + wide;
    const pivot = at(top, k);
    if (pivot == 0) return 1;
    const inverse = 1 / pivot;
    put(top, k, inverse);
    const first = at(under, k) * inverse;
    put(under, k, first);
    for (let j = k + 1; j < n; j++) put(under, j, at(under, j) - first * at(top, j));
    const second = at(under, k + 1);
    if (second == 0) return 1;
    const inverseUnder = 1 / second;
    put(under, k + 1, inverseUnder);
    const across = at(top, k + 1);
    for (let i = k + 2; i < n; i++) {
      const row = a + <usize>i * wide;
      const f = at(row, k) * inverse;
      const g = (at(row, k + 1) - f * across) * inverseUnder;
      if (f == 0 && g == 0) continue;
      put(row, k, f);
      put(row, k + 1, g);
      const ff = f64x2.splat(f);
      const gg = f64x2.splat(g);
      // addresses run on by themselves: this is the innermost loop of all
      let to = row + (<usize>(k + 2) << 3);
      let t = top + (<usize>(k + 2) << 3);
      let u = under + (<usize>(k + 2) << 3);
      const last = row + wide;
      for (; to + 32 <= last; to += 32, t += 32, u += 32) {
        const a0 = f64x2.sub(f64x2.sub(v128.load(to), f64x2.mul(ff, v128.load(t))), f64x2.mul(gg, v128.load(u)));
        const a1 = f64x2.sub(
          f64x2.sub(v128.load(to, 16), f64x2.mul(ff, v128.load(t, 16))),
          f64x2.mul(gg, v128.load(u, 16)),
        );
        v128.store(to, a0);
        v128.store(to, a1, 16);
      }
      for (; to < last; to += 8, t += 8, u += 8) store<f64>(to, load<f64>(to) - f * load<f64>(t) - g * load<f64>(u));
    }
  }
  if (k < n) {
    const last = a + <usize>k * wide;
    if (at(last, k) == 0) return 1;
    put(last, k, 1 / at(last, k));
  }
  return 0;
}

/** Solve LU x = b in place. */
function solveDense(lu: usize, n: i32, b: usize): void {
  const wide = <usize>n << 3;
  const most = n & ~3;
  for (let i = 0; i < most; i += 4) {
    const r0 = lu + <usize>i * wide;
    const r1 = r0 + wide;
    const r2 = r1 + wide;
    const r3 = r2 + wide;
    let a0 = f64x2.splat(0);
    let a1 = f64x2.splat(0);
    let a2 = f64x2.splat(0);
    let a3 = f64x2.splat(0);
    for (let j = 0; j < i; j += 2) {
      const v = two(b, j);
      a0 = f64x2.add(a0, f64x2.mul(two(r0, j), v));
      a1 = f64x2.add(a1, f64x2.mul(two(r1, j), v));
      a2 = f64x2.add(a2, f64x2.mul(two(r2, j), v));
      a3 = f64x2.add(a3, f64x2.mul(two(r3, j), v));
    }
    const s0 = at(b, i) - sum(a0);
    const s1 = at(b, i + 1) - sum(a1) - at(r1, i) * s0;
    const s2 = at(b, i + 2) - sum(a2) - at(r2, i) * s0 - at(r2, i + 1) * s1;
    const s3 = at(b, i + 3) - sum(a3) - at(r3, i) * s0 - at(r3, i + 1) * s1 - at(r3, i + 2) * s2;
    put(b, i, s0);
    put(b, i + 1, s1);
    put(b, i + 2, s2);
    put(b, i + 3, s3);
  }
  for (let i = most; i < n; i++) {
    const row = lu + <usize>i * wide;
    let s = at(b, i);
    for (let j = 0; j < i; j++) s -= at(row, j) * at(b, j);
    put(b, i, s);
  }
  for (let i = n - 1; i >= most; i--) {
    const row = lu + <usize>i * wide;
    let s = at(b, i);
    for (let j = i + 1; j < n; j++) s -= at(row, j) * at(b, j);
    put(b, i, s * at(row, i));
  }
  for (let i = most - 4; i >= 0; i -= 4) {
    const r0 = lu + <usize>i * wide;
    const r1 = r0 + wide;
    const r2 = r1 + wide;
    const r3 = r2 + wide;
    let a0 = f64x2.splat(0);
    let a1 = f64x2.splat(0);
    let a2 = f64x2.splat(0);
    let a3 = f64x2.splat(0);
    let j = i + 4;
    for (; j + 1 < n; j += 2) {
      const v = two(b, j);
      a0 = f64x2.add(a0, f64x2.mul(two(r0, j), v));
      a1 = f64x2.add(a1, f64x2.mul(two(r1, j), v));
      a2 = f64x2.add(a2, f64x2.mul(two(r2, j), v));
      a3 = f64x2.add(a3, f64x2.mul(two(r3, j), v));
    }
    let s0 = at(b, i) - sum(a0);
    let s1 = at(b, i + 1) - sum(a1);
    let s2 = at(b, i + 2) - sum(a2);
    let s3 = at(b, i + 3) - sum(a3);
    if (j < n) {
      const v = at(b, j);
      s0 -= at(r0, j) * v;
      s1 -= at(r1, j) * v;
      s2 -= at(r2, j) * v;
      s3 -= at(r3, j) * v;
    }
    s3 *= at(r3, i + 3);
    s2 = (s2 - at(r2, i + 3) * s3) * at(r2, i + 2);
    s1 = (s1 - at(r1, i + 2) * s2 - at(r1, i + 3) * s3) * at(r1, i + 1);
    s0 = (s0 - at(r0, i + 1) * s1 - at(r0, i + 2) * s2 - at(r0, i + 3) * s3) * at(r0, i);
    put(b, i, s0);
    put(b, i + 1, s1);
    put(b, i + 2, s2);
    put(b, i + 3, s3);
  }
}

function factorBand(a: usize, n: i32, w: i32): i32 {
  const wide = 2 * w + 1;
  for (let k = 0; k < n; k++) {
    const top = k * wide + w;
    const pivot = at(a, top);
    if (pivot == 0) return 1;
    const inverse = 1 / pivot;
    put(a, top, inverse);
    const reach = min(w, n - 1 - k);
    for (let d = 1; d <= reach; d++) {
      const row = (k + d) * wide + w - d;
      const f = at(a, row) * inverse;
      put(a, row, f);
      for (let e = 1; e <= reach; e++) put(a, row + e, at(a, row + e) - f * at(a, top + e));
    }
  }
  return 0;
}

/** Two places either side, as two layers of air give: what was found last stays at hand. */
function solveNarrowBand(a: usize, n: i32, b: usize): void {
  let row = a;
  let back2: f64 = 0;
  let back1 = at(b, 0);
  // the places before the first and after the last row hold zeros
  for (let i = 1; i < n; i++) {
    row += 40;
    const s = at(b, i) - at(row, 0) * back2 - at(row, 1) * back1;
    put(b, i, s);
    back2 = back1;
    back1 = s;
  }
  back1 = 0;
  back2 = 0;
  for (let i = n - 1; i >= 0; i--) {
    const pivot = at(row, 2);
    const s = (at(b, i) - at(row, 4) * back2) * pivot - at(row, 3) * pivot * back1;
    put(b, i, s);
    back2 = back1;
    back1 = s;
    row -= 40;
  }
}

function solveBand(a: usize, n: i32, w: i32, b: usize): void {
  if (w == 2) {
    solveNarrowBand(a, n, b);
    return;
  }
  const wide = 2 * w + 1;
  for (let i = 1; i < n; i++) {
    const row = i * wide + w;
    let s = at(b, i);
    for (let d = min(w, i); d >= 1; d--) s -= at(a, row - d) * at(b, i - d);
    put(b, i, s);
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * wide + w;
    let s = at(b, i);
    const reach = min(w, n - 1 - i);
    for (let d = 1; d <= reach; d++) s -= at(a, row + d) * at(b, i + d);
    put(b, i, s * at(a, row));
  }
}

/** First byte that the kernel's own tables (of the exponential) leave free. */
export function freeFrom(): usize {
  return __heap_base;
}

// What a box consists of: whole numbers in one table whose first word lies at `box`. Lengths first, then places.
// resident.ts fills the table in this order.
// @ts-ignore: decorator
@inline const AIR: i32 = 0;
// @ts-ignore: decorator
@inline const PATCHES: i32 = 1;
// @ts-ignore: decorator
@inline const BEHIND: i32 = 2;
// @ts-ignore: decorator
@inline const BAND: i32 = 3;
// @ts-ignore: decorator
@inline const HEATERS: i32 = 4;
// @ts-ignore: decorator
@inline const MATS: i32 = 5;
// @ts-ignore: decorator
@inline const GROUPS: i32 = 6;
// @ts-ignore: decorator
@inline const GROUPED: i32 = 7;
// @ts-ignore: decorator
@inline const FIRST: i32 = 8;
// @ts-ignore: decorator
@inline const ORDER: i32 = 9;
// @ts-ignore: decorator
@inline const AIR_AT: i32 = 10;
// @ts-ignore: decorator
@inline const MAT_AT: i32 = 11;
// @ts-ignore: decorator
@inline const OUTERMOST: i32 = 12;
// @ts-ignore: decorator
@inline const GROUP_OF: i32 = 13;
// @ts-ignore: decorator
@inline const LU: i32 = 14;
// @ts-ignore: decorator
@inline const AIR_LU: i32 = 15;
// @ts-ignore: decorator
@inline const TO_AIR: i32 = 16;
// @ts-ignore: decorator
@inline const FROM_AIR: i32 = 17;
// @ts-ignore: decorator
@inline const ALONE: i32 = 18;
// @ts-ignore: decorator
@inline const SHARE_ALONE: i32 = 19;
// @ts-ignore: decorator
@inline const AIR_ALONE: i32 = 20;
// @ts-ignore: decorator
@inline const MEAN_ALONE: i32 = 21;
// @ts-ignore: decorator
@inline const SHARE_AIR: i32 = 22;
// @ts-ignore: decorator
@inline const TO_MEAN: i32 = 23;
// @ts-ignore: decorator
@inline const PER_GROUP: i32 = 24;
// @ts-ignore: decorator
@inline const PIVOT: i32 = 25;
// @ts-ignore: decorator
@inline const GAIN: i32 = 26;
// @ts-ignore: decorator
@inline const HELD: i32 = 27;
// @ts-ignore: decorator
@inline const TO_ROOM: i32 = 28;
// @ts-ignore: decorator
@inline const OUTER: i32 = 29;
// @ts-ignore: decorator
@inline const TO_OUT: i32 = 30;
// @ts-ignore: decorator
@inline const SOURCES: i32 = 31; // air, surfaces
// @ts-ignore: decorator
@inline const MAT: i32 = 32;
// @ts-ignore: decorator
@inline const OUTSIDE: i32 = 33;
// @ts-ignore: decorator
@inline const SCRATCH: i32 = 34;
// @ts-ignore: decorator
@inline const AMBIENT: i32 = 35; // as sources
// @ts-ignore: decorator
@inline const SLOPE: i32 = 36;
// @ts-ignore: decorator
@inline const STILL: i32 = 37; // c of each group, see factored.ts
// @ts-ignore: decorator
@inline const OLD: i32 = 38;
// @ts-ignore: decorator
@inline const STAGE: i32 = 39;
// @ts-ignore: decorator
@inline const BETWEEN: i32 = 40;
// @ts-ignore: decorator
@inline const ROW: i32 = 41;
// @ts-ignore: decorator
@inline const BODIES: i32 = 42;
// @ts-ignore: decorator
@inline const BOOKS: i32 = 43;
// @ts-ignore: decorator
@inline const CAPACITIES: i32 = 44;
// @ts-ignore: decorator
@inline const ANSWERS: i32 = 45;

/** One row of many right sides less a multiple of another. */
function takeRow(to: usize, from: usize, many: i32, f: f64): void {
  const ff = f64x2.splat(f);
  let k = 0;
  for (; k + 1 < many; k += 2) v128.store(to + (<usize>k << 3), f64x2.sub(two(to, k), f64x2.mul(ff, two(from, k))));
  if (k < many) put(to, k, at(to, k) - f * at(from, k));
}

/** Many right sides at once, a row for each unknown. */
function solveBandRows(a: usize, n: i32, w: i32, b: usize, many: i32): void {
  const wide = 2 * w + 1;
  const row = <usize>many << 3;
  for (let i = 1; i < n; i++) {
    for (let d = min(w, i); d >= 1; d--) {
      const f = at(a, i * wide + w - d);
      if (f != 0) takeRow(b + <usize>i * row, b + <usize>(i - d) * row, many, f);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    const to = b + <usize>i * row;
    const reach = min(w, n - 1 - i);
    for (let d = 1; d <= reach; d++) {
      const f = at(a, i * wide + w + d);
      if (f != 0) takeRow(to, to + <usize>d * row, many, f);
    }
    const inverse = at(a, i * wide + w);
    for (let k = 0; k < many; k++) put(to, k, at(to, k) * inverse);
  }
}

/** Factor the air (a band at AIR_LU), take from the groups (a matrix at LU) what they exchange through it, and factor them.
 *  @returns 1 when a pivot is zero */
export function factorBox(box: usize): i32 {
  const air = whole(box, AIR);
  const patches = whole(box, PATCHES);
  const groups = whole(box, GROUPS);
  const band = whole(box, BAND);
  const lu = <usize>whole(box, LU);
  const airLu = <usize>whole(box, AIR_LU);
  const toAir = <usize>whole(box, TO_AIR);
  const fromAir = <usize>whole(box, FROM_AIR);
  const airAt = <usize>whole(box, AIR_AT);
  const groupOf = <usize>whole(box, GROUP_OF);
  const answers = <usize>whole(box, ANSWERS);
  const row = <usize>groups << 3;
  if (factorBand(airLu, air, band) != 0) return 1;
  memory.fill(answers, 0, <usize>air * row);
  for (let s = 0; s < patches; s++) {
    const answer = answers + <usize>whole(airAt, s) * row;
    put(answer, whole(groupOf, s), at(answer, whole(groupOf, s)) + at(toAir, s));
  }
  solveBandRows(airLu, air, band, answers, groups);
  for (let s = 0; s < patches; s++)
    takeRow(lu + <usize>whole(groupOf, s) * row, answers + <usize>whole(airAt, s) * row, groups, at(fromAir, s));
  return factorDense(lu, groups);
}

/** Right sides once the surfaces of each group are eliminated; groupRightSides of solve-plain.ts. */
function groupRightSides(box: usize, surface: usize, scratch: usize, rhs: usize): void {
  const patches = whole(box, PATCHES);
  const groups = whole(box, GROUPS);
  const groupOf = <usize>whole(box, GROUP_OF);
  const airAt = <usize>whole(box, AIR_AT);
  const airAlone = <usize>whole(box, AIR_ALONE);
  const shareAir = <usize>whole(box, SHARE_AIR);
  const toMean = <usize>whole(box, TO_MEAN);
  const still = <usize>whole(box, STILL);
  memory.fill(still, 0, <usize>groups << 3);
  for (let s = 0; s < patches; s++) {
    const b = at(rhs, s);
    put(surface, s, b);
    const g = whole(groupOf, s);
    put(still, g, at(still, g) + at(toMean, s) * b);
  }
  for (let s = 0; s < patches; s++) {
    const a = whole(airAt, s);
    const lost = at(shareAir, s) * at(still, whole(groupOf, s));
    put(scratch, a, at(scratch, a) + at(airAlone, s) * at(surface, s) - lost);
  }
  memory.copy(rhs, still, <usize>groups << 3);
}

/** Air and surfaces from the means of their groups; fromMeans of solve-plain.ts. */
function fromMeans(box: usize, surface: usize, scratch: usize, rhs: usize): void {
  const patches = whole(box, PATCHES);
  const groups = whole(box, GROUPS);
  const groupOf = <usize>whole(box, GROUP_OF);
  const airAt = <usize>whole(box, AIR_AT);
  const toAir = <usize>whole(box, TO_AIR);
  const fromAir = <usize>whole(box, FROM_AIR);
  const alone = <usize>whole(box, ALONE);
  const shareAlone = <usize>whole(box, SHARE_ALONE);
  const airAlone = <usize>whole(box, AIR_ALONE);
  const meanAlone = <usize>whole(box, MEAN_ALONE);
  const shareAir = <usize>whole(box, SHARE_AIR);
  const perGroup = <usize>whole(box, PER_GROUP);
  const still = <usize>whole(box, STILL);
  for (let s = 0; s < patches; s++) {
    const a = whole(airAt, s);
    const g = whole(groupOf, s);
    const b = at(surface, s);
    const y = at(rhs, g);
    put(scratch, a, at(scratch, a) + at(airAlone, s) * b - at(shareAir, s) * at(still, g) + at(toAir, s) * y);
    put(surface, s, at(alone, s) * b + at(meanAlone, s) * y);
  }
  solveBand(<usize>whole(box, AIR_LU), whole(box, AIR), whole(box, BAND), scratch);
  for (let g = 0; g < groups; g++) put(rhs, g, at(rhs, g) * at(perGroup, g) - at(still, g));
  for (let s = 0; s < patches; s++) {
    const g = whole(groupOf, s);
    put(rhs, g, at(rhs, g) - at(fromAir, s) * at(scratch, whole(airAt, s)));
  }
  for (let s = 0; s < patches; s++) {
    const got = at(shareAlone, s) * at(rhs, whole(groupOf, s));
    put(surface, s, at(surface, s) + got + at(airAlone, s) * at(scratch, whole(airAt, s)));
  }
}

/** One solve of a whole box from `old` (0: at rest) into `row`; the room is left out where withRoom is 0. */
export function solveBox(box: usize, old: usize, row: usize, roomC: f64, withRoom: i32): void {
  const air = whole(box, AIR);
  const patches = whole(box, PATCHES);
  const all = air + patches + whole(box, BEHIND);
  const first = <usize>whole(box, FIRST);
  const order = <usize>whole(box, ORDER);
  const airAt = <usize>whole(box, AIR_AT);
  const toAir = <usize>whole(box, TO_AIR);
  const gain = <usize>whole(box, GAIN);
  const pivot = <usize>whole(box, PIVOT);
  const held = <usize>whole(box, HELD);
  const toRoom = <usize>whole(box, TO_ROOM);
  const outer = <usize>whole(box, OUTER);
  const outside = <usize>whole(box, OUTSIDE);
  const sources = <usize>whole(box, SOURCES);
  const scratch = <usize>whole(box, SCRATCH);
  const surface = row + (<usize>air << 3);
  const inner = surface + (<usize>patches << 3);
  const rhs = scratch + (<usize>air << 3);
  if (old != 0) {
    let k = 0;
    for (; k + 1 < all; k += 2) v128.store(row + (<usize>k << 3), f64x2.mul(two(held, k), two(old, k)));
    if (k < all) put(row, k, at(held, k) * at(old, k));
  } else memory.fill(row, 0, <usize>all << 3);
  for (let a = 0; a < air; a++) {
    let v = at(row, a) + at(sources, a);
    if (withRoom != 0) v += at(toRoom, a) * roomC;
    put(row, a, v);
    put(scratch, whole(order, a), v);
  }
  if (whole(box, MATS) != 0) {
    const mat = <usize>whole(box, MAT);
    const matAt = <usize>whole(box, MAT_AT);
    for (let s = 0; s < patches; s++) put(row, whole(matAt, s), at(row, whole(matAt, s)) + at(mat, s));
  }
  for (let s = 0; s < patches; s++) {
    let carry = withRoom != 0 ? at(outer, s) * at(outside, s) : 0;
    const from = whole(first, s);
    for (let k = whole(first, s + 1) - 1; k >= from; k--) {
      const v = at(inner, k) + carry;
      put(inner, k, v);
      carry = v * at(gain, k);
    }
    put(rhs, s, at(surface, s) + at(sources, air + s) + carry);
  }
  const airLu = <usize>whole(box, AIR_LU);
  const band = whole(box, BAND);
  const isGrouped = whole(box, GROUPED) != 0;
  if (isGrouped) groupRightSides(box, surface, scratch, rhs);
  solveBand(airLu, air, band, scratch);
  if (isGrouped) {
    const groupOf = <usize>whole(box, GROUP_OF);
    const fromAir = <usize>whole(box, FROM_AIR);
    for (let s = 0; s < patches; s++) {
      const g = whole(groupOf, s);
      put(rhs, g, at(rhs, g) + at(fromAir, s) * at(scratch, whole(airAt, s)));
    }
  } else for (let s = 0; s < patches; s++) put(rhs, s, at(rhs, s) + at(toAir, s) * at(scratch, whole(airAt, s)));
  solveDense(<usize>whole(box, LU), whole(box, GROUPS), rhs);
  for (let a = 0; a < air; a++) put(scratch, whole(order, a), at(row, a));
  if (isGrouped) fromMeans(box, surface, scratch, rhs);
  else {
    for (let s = 0; s < patches; s++) {
      const t = at(rhs, s);
      put(surface, s, t);
      const to = whole(airAt, s);
      put(scratch, to, at(scratch, to) + at(toAir, s) * t);
    }
    solveBand(airLu, air, band, scratch);
  }
  for (let a = 0; a < air; a++) put(row, a, at(scratch, whole(order, a)));
  for (let s = 0; s < patches; s++) {
    let t = at(surface, s);
    const to = whole(first, s + 1);
    for (let k = whole(first, s); k < to; k++) {
      t = at(inner, k) * at(pivot, k) + at(gain, k) * t;
      put(inner, k, t);
    }
  }
}

// A heater: these numbers, then its shares by patch (long wave, short wave, plume, sheet, mat) and by air node (plume, stands).
// @ts-ignore: decorator
@inline const IS_BODY: i32 = 0;
// @ts-ignore: decorator
@inline const IS_OUTSIDE: i32 = 1;
// @ts-ignore: decorator
@inline const DIAMETER: i32 = 2;
// @ts-ignore: decorator
@inline const AREA: i32 = 3;
// @ts-ignore: decorator
@inline const RADIATES: i32 = 4; // emissivity x Stefan-Boltzmann constant x area
// @ts-ignore: decorator
@inline const CAPACITY: i32 = 5;
// @ts-ignore: decorator
@inline const SHORT_SHARE: i32 = 6;
// @ts-ignore: decorator
@inline const KEPT: i32 = 7; // of convected, radiated, short-wave and a sheet's power
// @ts-ignore: decorator
@inline const POWER: i32 = 11;
// @ts-ignore: decorator
@inline const BODY: i32 = 12; // at the start, then its temperature after stage one and two
// @ts-ignore: decorator
@inline const CONVECTED: i32 = 15;
// @ts-ignore: decorator
@inline const RADIATED: i32 = 16;
// @ts-ignore: decorator
@inline const RADIATED_AT_START: i32 = 17;
// @ts-ignore: decorator
@inline const SHARES: i32 = 18;

/** Film of a sphere [W/m2K]: body-law.ts with its formulas, in one piece.
 *  @param delta excess over the air, sign ignored [K]   @param filmC mean temperature */
export function filmSphere(diameterM: f64, delta: f64, filmC: f64): f64 {
  const t = max<f64>(-40, min<f64>(390, filmC)) + 273.15;
  const threeHalves = t * Math.sqrt(t);
  const density = 101325.0 / (287.042 * t);
  const viscosity = (1.458e-6 * threeHalves) / (t + 110.4);
  const conductivity = (2.64638e-3 * threeHalves) / (t + 245.4 * Math.exp((-12 * Math.LN10) / t));
  const diffusivity = conductivity / (density * 1006);
  const rayleigh =
    (((9.81 / t) * max<f64>(Math.abs(delta), 0.01)) * (diameterM * diameterM * diameterM)) /
    ((viscosity / density) * diffusivity);
  const half = Math.sqrt((0.469 * conductivity) / (viscosity * 1006));
  const ninth = Math.cbrt(Math.cbrt(1 + half * Math.sqrt(Math.sqrt(Math.sqrt(half)))));
  const fourNinths = ninth * ninth * (ninth * ninth);
  const laminar = (0.589 * Math.sqrt(Math.sqrt(rayleigh))) / fourNinths;
  const turbulent = (7.44e-8 * rayleigh) / (fourNinths * fourNinths * (fourNinths * fourNinths));
  return ((2 + laminar * Math.sqrt(Math.sqrt(Math.cbrt(1 + turbulent)))) * conductivity) / diameterM;
}

function kelvin4(c: f64): f64 {
  const k = c + 273.15;
  return k * k * (k * k);
}

/** Each heater's body after one stage and what it gives to the box, added to the ambient sources.
 *  @param stage 1 or 2   @param lift share by which stage two starts further on   @returns what the box keeps [W] */
function heaterStage(box: usize, row: usize, stage: i32, lift: f64, perS: f64, roomC: f64): f64 {
  const air = whole(box, AIR);
  const patches = whole(box, PATCHES);
  const heaters = whole(box, HEATERS);
  const sources = <usize>whole(box, SOURCES);
  const mat = <usize>whole(box, MAT);
  memory.copy(sources, <usize>whole(box, AMBIENT), <usize>(air + patches) << 3);
  memory.fill(mat, 0, <usize>patches << 3);
  const stride = <usize>(SHARES + 5 * patches + 2 * air) << 3;
  const surfaces = sources + (<usize>air << 3);
  const surfaceC = row + (<usize>air << 3);
  let kept: f64 = 0;
  for (let h = 0; h < heaters; h++) {
    const b = <usize>whole(box, BODIES) + <usize>h * stride;
    const longWave = b + (SHARES << 3);
    const shortWave = longWave + (<usize>patches << 3);
    const plumePatch = shortWave + (<usize>patches << 3);
    const sheet = plumePatch + (<usize>patches << 3);
    const sheetMat = sheet + (<usize>patches << 3);
    const plumeAir = sheetMat + (<usize>patches << 3);
    const stands = plumeAir + (<usize>air << 3);
    const power = at(b, POWER);
    const guess = at(b, BODY + stage - 1);
    if (at(b, IS_BODY) == 0) {
      for (let s = 0; s < patches; s++) {
        put(surfaces, s, at(surfaces, s) + power * at(sheet, s));
        put(mat, s, at(mat, s) + power * at(sheetMat, s));
      }
      put(b, BODY + stage, guess);
      kept += power * at(b, KEPT + 3);
      continue;
    }
    let airC = roomC;
    let seen = kelvin4(roomC);
    if (at(b, IS_OUTSIDE) == 0) {
      let weight: f64 = 0;
      let sum4: f64 = 0;
      for (let s = 0; s < patches; s++) {
        weight += at(longWave, s);
        sum4 += at(longWave, s) * kelvin4(at(surfaceC, s));
      }
      if (weight > 0) seen = sum4 / weight;
      airC = 0;
      for (let a = 0; a < air; a++) airC += at(stands, a) * at(row, a);
    }
    const start = at(b, BODY);
    const from = stage == 1 ? start : start + lift * (at(b, BODY + 1) - start);
    const held = at(b, CAPACITY) * perS;
    const short = power * at(b, SHORT_SHARE);
    const diameter = at(b, DIAMETER);
    const area = at(b, AREA);
    const radiates = at(b, RADIATES);
    if (stage == 1) put(b, RADIATED_AT_START, radiates * (kelvin4(start) - seen));
    let t = guess;
    let convected: f64 = 0;
    let radiated: f64 = 0;
    for (let i = 0; i < 40; i++) {
      const film = filmSphere(diameter, Math.abs(t - airC), (t + airC) / 2);
      const k = t + 273.15;
      convected = film * area * (t - airC);
      radiated = radiates * (k * k * (k * k) - seen);
      const slopeAir = 1.25 * film * area;
      const slopeSeen = 4 * radiates * k * k * k;
      const step = (power - short - convected - radiated - held * (t - from)) / (slopeAir + slopeSeen + held);
      t += max<f64>(-150, min<f64>(150, step));
      if (Math.abs(step) < 1e-5) {
        // the last step is so short that its own slopes carry the heat on to its end
        convected += slopeAir * step;
        radiated += slopeSeen * step;
        break;
      }
    }
    put(b, BODY + stage, t);
    put(b, CONVECTED, convected);
    put(b, RADIATED, radiated);
    kept += convected * at(b, KEPT) + radiated * at(b, KEPT + 1) + short * at(b, KEPT + 2);
    const inside = at(b, IS_OUTSIDE) == 0 ? convected : 0;
    for (let a = 0; a < air; a++) put(sources, a, at(sources, a) + inside * at(plumeAir, a));
    for (let s = 0; s < patches; s++)
      put(
        surfaces,
        s,
        at(surfaces, s) + radiated * at(longWave, s) + short * at(shortWave, s) + inside * at(plumePatch, s),
      );
  }
  return kept;
}

/** One step of heat from OLD into ROW, as heat-step.ts does it. BOOKS gets the heat that left [W], what wet faces took for
 *  each kelvin times their temperature [W], what heaters kept in the box [W], each as the step's mean, and what the box
 *  took up [J]. */
export function heatStep(box: usize, perS: f64, gamma: f64, roomC: f64): void {
  const air = whole(box, AIR);
  const patches = whole(box, PATCHES);
  const all = air + patches + whole(box, BEHIND);
  const old = <usize>whole(box, OLD);
  const stage = <usize>whole(box, STAGE);
  const between = <usize>whole(box, BETWEEN);
  const row = <usize>whole(box, ROW);
  const lift = (1 - gamma) / gamma;
  const keptOne = heaterStage(box, old, 1, lift, perS, roomC);
  solveBox(box, old, stage, roomC, 1);
  const lifts = f64x2.splat(lift);
  let k = 0;
  for (; k + 1 < all; k += 2)
    v128.store(
      between + (<usize>k << 3),
      f64x2.add(two(old, k), f64x2.mul(lifts, f64x2.sub(two(stage, k), two(old, k)))),
    );
  if (k < all) put(between, k, at(old, k) + lift * (at(stage, k) - at(old, k)));
  const keptTwo = heaterStage(box, stage, 2, lift, perS, roomC);
  solveBox(box, between, row, roomC, 1);
  const toOut = <usize>whole(box, TO_OUT);
  const outer = <usize>whole(box, OUTER);
  const outside = <usize>whole(box, OUTSIDE);
  const outermost = <usize>whole(box, OUTERMOST);
  const slope = <usize>whole(box, SLOPE);
  let out: f64 = 0;
  let wet: f64 = 0;
  for (let a = 0; a < air; a++) out += at(toOut, a) * ((1 - gamma) * at(stage, a) + gamma * at(row, a) - roomC);
  for (let s = 0; s < patches; s++) {
    const o = whole(outermost, s);
    out += at(outer, s) * ((1 - gamma) * at(stage, o) + gamma * at(row, o) - at(outside, s));
    wet += at(slope, s) * ((1 - gamma) * at(stage, air + s) + gamma * at(row, air + s));
  }
  const capacity = <usize>whole(box, CAPACITIES);
  let stored = f64x2.splat(0);
  for (k = 0; k + 1 < all; k += 2)
    stored = f64x2.add(stored, f64x2.mul(two(capacity, k), f64x2.sub(two(row, k), two(old, k))));
  let storedJ = sum(stored);
  if (k < all) storedJ += at(capacity, k) * (at(row, k) - at(old, k));
  const books = <usize>whole(box, BOOKS);
  put(books, 0, out);
  put(books, 1, wet);
  put(books, 2, (1 - gamma) * keptOne + gamma * keptTwo);
  put(books, 3, storedJ);
}
