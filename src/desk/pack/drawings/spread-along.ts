// Places labels along a line as near as possible to where they belong without touching each other.

/** @param wanted centres, any order  @param width of one label  @returns centres in the same order, at least `width`
 *  apart while they fit between from and to. */
export function spreadAlong(wanted: readonly number[], width: number, from: number, to: number): readonly number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const gap = Math.min(width, (to - from) / Math.max(1, wanted.length));
  const placed = new Array<number>(wanted.length).fill(0);
  let least = from + gap / 2;
  for (const i of order) {
    placed[i] = Math.max(wanted[i]!, least);
    least = placed[i]! + gap;
  }
  let most = to - gap / 2;
  for (const i of [...order].reverse()) {
    placed[i] = Math.min(placed[i]!, most);
    most = placed[i]! - gap;
  }
  return placed;
}
