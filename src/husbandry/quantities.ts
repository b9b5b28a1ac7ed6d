// Which units a key of data/ may end in, and what each quantity can possibly be in this world.
// The limits catch slips of the hand (65 for cork, 320 °C for a basking site); they are our choice, not norms.

export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** Unit at the end of a key -> widest limits of any quantity with that unit. */
export const suffixLimits: Readonly<Record<string, Limits>> = {
  WPerMK: { low: 0.01, high: 450 },
  KgPerM3: { low: 1, high: 12000 },
  JPerKgK: { low: 100, high: 5000 },
  JPerK: { low: 1, high: 20000 },
  Frac: { low: 0, high: 1 },
  Pct: { low: 0, high: 100 },
  C: { low: -5, high: 600 },
  K: { low: 0, high: 30 },
  Mm: { low: 0.1, high: 6000 },
  Cm: { low: 1, high: 1000 },
  G: { low: 0.1, high: 100000 },
  W: { low: 1, high: 3000 },
  Days: { low: 0.5, high: 4000 },
  Hours: { low: 0, high: 200000 },
  Years: { low: 0.5, high: 80 },
  Seconds: { low: 0.1, high: 86400 },
  Deg: { low: 1, high: 360 },
  Count: { low: 1, high: 200 },
  Zone: { low: 1, high: 4 },
  Index: { low: 0, high: 12 },
};

/** Pure numbers that carry no unit in their name by custom. */
const unitless: readonly string[] = ['emissivity', 'bodyEmissivity'];

/** Key -> limits of that very quantity. */
export const keyLimits: Readonly<Record<string, Limits>> = {
  emissivity: { low: 0, high: 1 },
  bodyEmissivity: { low: 0, high: 1 },
  baskingSurfaceC: { low: 24, high: 40 },
  warmAirC: { low: 20, high: 36 },
  coolAirC: { low: 14, high: 30 },
  nightMinC: { low: 8, high: 28 },
  preferredZoneC: { low: 15, high: 40 },
  preferredBodyC: { low: 15, high: 40 },
  fieldBodyC: { low: 15, high: 40 },
  ctMinC: { low: -2, high: 15 },
  ctMaxC: { low: 33, high: 48 },
  hottestSurfaceC: { low: 25, high: 600 },
  rhPct: { low: 5, high: 100 },
  rhSloughPct: { low: 5, high: 100 },
  preySharePct: { low: 1, high: 50 },
  massG: { low: 0.2, high: 60000 },
  totalLengthCm: { low: 8, high: 600 },
  snoutVentMm: { low: 60, high: 5500 },
  headWidthMm: { low: 3, high: 120 },
  feedIntervalDays: { low: 1, high: 90 },
  winterDropK: { low: 0.5, high: 20 },
  substrateDepthMm: { low: 5, high: 400 },
  radiantShareFrac: { low: 0.05, high: 0.98 },
};

/** Conductivity by class of material [W/(m K)]. */
export const conductivityLimits: Readonly<Record<string, Limits>> = {
  board: { low: 0.04, high: 0.4 },
  insulation: { low: 0.015, high: 0.08 },
  plastic: { low: 0.03, high: 0.7 },
  glass: { low: 0.6, high: 1.6 },
  metal: { low: 8, high: 450 },
  stone: { low: 0.2, high: 5 },
  loose: { low: 0.03, high: 3 },
  liquid: { low: 0.1, high: 0.8 },
  gas: { low: 0.01, high: 0.05 },
  tissue: { low: 0.2, high: 0.7 },
};

/** Density by class of material [kg/m³]. */
export const densityLimits: Readonly<Record<string, Limits>> = {
  board: { low: 100, high: 1300 },
  insulation: { low: 8, high: 250 },
  plastic: { low: 300, high: 2300 },
  glass: { low: 2200, high: 3000 },
  metal: { low: 1700, high: 12000 },
  stone: { low: 1200, high: 3300 },
  loose: { low: 20, high: 2300 },
  liquid: { low: 700, high: 1300 },
  gas: { low: 0.8, high: 1.6 },
  tissue: { low: 900, high: 1100 },
};

const suffixes = Object.keys(suffixLimits).sort((a, b) => b.length - a.length);

/** The unit a key ends in, or null when it names none.
 *  A suffix counts only after a lower-case letter or digit, so that "…PerMK" is not read as "K". */
export function unitSuffix(key: string): string | null {
  if (unitless.includes(key)) return key;
  for (const suffix of suffixes) {
    if (!key.endsWith(suffix) || key.length === suffix.length) continue;
    const before = key.at(-suffix.length - 1) ?? '';
    if (/[a-z0-9]/.test(before)) return suffix;
  }
  return null;
}

/** Limits that hold for a key, or null when its unit is not known. */
export function limitsFor(key: string): Limits | null {
  const own = keyLimits[key];
  if (own) return own;
  const suffix = unitSuffix(key);
  return suffix ? (suffixLimits[suffix] ?? null) : null;
}
