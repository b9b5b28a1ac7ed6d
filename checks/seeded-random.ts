// Repeatable random numbers for checks that draw many cases (xorshift128; the seed is part of the check).

/** A generator of numbers in 0..1. @param seed any whole number */
export function seededRandom(seed: number): () => number {
  let state = [seed | 0 || 1, 0x9e3779b9, 0x243f6a88, 0xb7e15162] as [number, number, number, number];
  const next = () => {
    let t = state[3];
    const s = state[0];
    t ^= t << 11;
    t ^= t >>> 8;
    t ^= s ^ (s >>> 19);
    state = [t, s, state[1], state[2]];
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 20; i++) next();
  return next;
}
