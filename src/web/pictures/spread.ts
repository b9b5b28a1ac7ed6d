// Places labels along a line as near as possible to where they belong without touching each other.

/** @param wanted centres, any order  @param width of one label  @param from,to the line's ends
 *  @returns centres in the same order, at least `width` apart while they fit, inside the line. */
export function spreadAlong(wanted: readonly number[], width: number, from: number, to: number): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const gap = Math.min(width, (to - from) / Math.max(1, wanted.length));
  const placed = order.map((index) => wanted[index] ?? 0);
  // Forward pass pushes right, backward pass pushes left; two passes settle a line of labels.
  let least = from + gap / 2;
  for (let i = 0; i < placed.length; i++) {
    placed[i] = Math.max(placed[i] ?? 0, least);
    least = (placed[i] ?? 0) + gap;
  }
  let most = to - gap / 2;
  for (let i = placed.length - 1; i >= 0; i--) {
    placed[i] = Math.min(placed[i] ?? 0, most);
    most = (placed[i] ?? 0) - gap;
  }
  const result = new Array<number>(wanted.length).fill(0);
  order.forEach((index, at) => {
    result[index] = placed[at] ?? 0;
  });
  return result;
}
