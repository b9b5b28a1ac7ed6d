// How does a plate between two equal films warm through: first term of the series, as in the textbook tables.

/** First root of z tan z = Bi. @param biot on the half thickness [-], > 0 @returns [rad], 0..pi/2. Source: INCROPERA tab. 5.1. Checks: P-186. */
export function slabFirstRoot(biot: number): number {
  let low = 0;
  let high = Math.PI / 2;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (middle * Math.sin(middle) < biot * Math.cos(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Weight of the first term. @param root from slabFirstRoot [rad] @returns [-]. Source: INCROPERA tab. 5.1. Checks: P-186. */
export const slabFirstWeight = (root: number): number => (4 * Math.sin(root)) / (2 * root + Math.sin(2 * root));

/** Share of the start difference that is left. @param biot [-] @param fourier alpha t / half thickness² [-], > 0.2
 *  @param position 0 middle, 1 surface @returns 0..1. Source: INCROPERA eq. 5.43. Checks: P-186. */
export function slabShareLeft(biot: number, fourier: number, position: number): number {
  const root = slabFirstRoot(biot);
  return slabFirstWeight(root) * Math.exp(-(root ** 2) * fourier) * Math.cos(root * position);
}
