// The error function that heat soaking into thick bodies follows; own code, so that every engine gives the same digits.

/** Error function. @param x any @returns -1..1, to about 1e-15. Series below 2.5, continued fraction above. Source: ABRAMOWITZ 7.1.5, 7.1.14. Checks: unit table. */
export function erf(x: number): number {
  if (x < 0) return -erf(-x);
  return x < 2.5 ? erfSeries(x) : 1 - erfc(x);
}

/** Complement 1 - erf, without loss of digits for large x. @param x any. Source: ABRAMOWITZ 7.1.14. Checks: unit table. */
export function erfc(x: number): number {
  return x < 2.5 ? 1 - erf(x) : Math.exp(-x * x) * scaledTail(x);
}

/** exp(x²) erfc(x): stays finite where erfc vanishes. @param x >= 0. Source: ABRAMOWITZ 7.1.14. Checks: P-183. */
export function erfcScaled(x: number): number {
  return x < 2.5 ? Math.exp(x * x) * (1 - erf(x)) : scaledTail(x);
}

function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 200 && Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return ((2 * sum) / Math.sqrt(Math.PI)) * Math.exp(-x * x);
}

function scaledTail(x: number): number {
  let fraction = x;
  for (let n = 120; n >= 1; n--) fraction = x + n / 2 / fraction;
  return 1 / (Math.sqrt(Math.PI) * fraction);
}
