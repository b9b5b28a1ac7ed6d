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
export function factorDense(a: usize, n: i32): i32 {
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
      let j = k + 2;
      for (; j + 1 < n; j += 2)
        v128.store(
          row + (<usize>j << 3),
          f64x2.sub(f64x2.sub(two(row, j), f64x2.mul(ff, two(top, j))), f64x2.mul(gg, two(under, j))),
        );
      if (j < n) put(row, j, at(row, j) - f * at(top, j) - g * at(under, j));
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
export function solveDense(lu: usize, n: i32, b: usize): void {
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

function solveBand(a: usize, n: i32, w: i32, b: usize): void {
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

/** One solve of a whole box.
 *  @param old what the row was before, or 0   @param outside temperature beyond each patch, or 0 with the room left out
 *  @param mat heat of mats by patch, or 0 */
export function solveBox(
  air: i32, patches: i32, behind: i32, band: i32,
  first: usize, order: usize, airAt: usize, matAt: usize,
  lu: usize, bandLu: usize, toAir: usize, pivot: usize, gain: usize, held: usize,
  toRoom: usize, outer: usize, airW: usize, surfaceW: usize, mat: usize,
  old: usize, outside: usize, roomC: f64, row: usize, scratch: usize,
): void {
  const all = air + patches + behind;
  const surface = row + (<usize>air << 3);
  const inner = surface + (<usize>patches << 3);
  const rhs = scratch + (<usize>air << 3);
  if (old != 0) {
    let k = 0;
    for (; k + 1 < all; k += 2) v128.store(row + (<usize>k << 3), f64x2.mul(two(held, k), two(old, k)));
    if (k < all) put(row, k, at(held, k) * at(old, k));
  } else memory.fill(row, 0, <usize>all << 3);
  for (let a = 0; a < air; a++) {
    let v = at(row, a) + at(airW, a);
    if (outside != 0) v += at(toRoom, a) * roomC;
    put(row, a, v);
    put(scratch, whole(order, a), v);
  }
  for (let s = 0; s < patches; s++) {
    if (mat != 0) {
      const to = whole(matAt, s);
      put(row, to, at(row, to) + at(mat, s));
    }
    let carry = outside != 0 ? at(outer, s) * at(outside, s) : 0;
    const from = whole(first, s);
    for (let k = whole(first, s + 1) - 1; k >= from; k--) {
      const v = at(inner, k) + carry;
      put(inner, k, v);
      carry = v * at(gain, k);
    }
    put(rhs, s, at(surface, s) + at(surfaceW, s) + carry);
  }
  solveBand(bandLu, air, band, scratch);
  for (let s = 0; s < patches; s++) put(rhs, s, at(rhs, s) + at(toAir, s) * at(scratch, whole(airAt, s)));
  solveDense(lu, patches, rhs);
  for (let a = 0; a < air; a++) put(scratch, whole(order, a), at(row, a));
  for (let s = 0; s < patches; s++) {
    const t = at(rhs, s);
    put(surface, s, t);
    const to = whole(airAt, s);
    put(scratch, to, at(scratch, to) + at(toAir, s) * t);
  }
  solveBand(bandLu, air, band, scratch);
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
