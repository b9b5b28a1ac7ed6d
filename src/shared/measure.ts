// How a stored quantity (°C, m, W, g, %) is written for this person, and read back from what they type.
// Leaves out the words around it.

/** What decides how quantities are written. */
export interface UnitChoice {
  /** Code of the language. */
  readonly book: string;
  readonly temperature: 'C' | 'F';
  readonly length: 'cm' | 'in';
  readonly mass: 'g' | 'oz';
}

/** A number and its unit apart, so that the unit can be set lighter beside it. */
export interface Written {
  readonly num: string;
  readonly unit: string;
}

export type QuantityKind = 'temperature' | 'difference' | 'length' | 'power' | 'mass' | 'percent' | 'hour';

const inchM = 0.0254;
/** Ounce avoirdupois [g]; exact by its definition (international yard and pound, 1959). */
const ounceG = 28.349523125;

/** Stored value to the shown unit: °C→°C/°F, K→K/°F, m→cm/in, g→g/oz; others unchanged. */
export function shownFromStored(kind: QuantityKind, value: number, settings: UnitChoice): number {
  if (kind === 'temperature') return settings.temperature === 'F' ? value * 1.8 + 32 : value;
  if (kind === 'difference') return settings.temperature === 'F' ? value * 1.8 : value;
  if (kind === 'length') return settings.length === 'in' ? value / inchM : value * 100;
  if (kind === 'mass') return settings.mass === 'oz' ? value / ounceG : value;
  return value;
}

/** The exact inverse of shownFromStored. */
export function storedFromShown(kind: QuantityKind, shown: number, settings: UnitChoice): number {
  if (kind === 'temperature') return settings.temperature === 'F' ? (shown - 32) / 1.8 : shown;
  if (kind === 'difference') return settings.temperature === 'F' ? shown / 1.8 : shown;
  if (kind === 'length') return settings.length === 'in' ? shown * inchM : shown / 100;
  if (kind === 'mass') return settings.mass === 'oz' ? shown * ounceG : shown;
  return shown;
}

export function unitText(kind: QuantityKind, settings: UnitChoice): string {
  switch (kind) {
    case 'temperature':
      return settings.temperature === 'F' ? '°F' : '°C';
    case 'difference':
      return settings.temperature === 'F' ? '°F' : 'K';
    case 'length':
      return settings.length;
    case 'power':
      return 'W';
    case 'mass':
      return settings.mass;
    case 'percent':
      return '%';
    case 'hour':
      return 'h';
  }
}

/** The Intl locale: that of the language, or English with the date and number order of the units chosen. */
export function localeOf(settings: UnitChoice): string {
  if (settings.book === 'de') return 'de-DE';
  if (settings.book !== 'en') return settings.book;
  return settings.length === 'in' ? 'en-US' : 'en-GB';
}

export interface Measure {
  readonly locale: string;
  readonly settings: UnitChoice;
  readonly write: (kind: QuantityKind, value: number, digits?: number) => Written;
  readonly text: (kind: QuantityKind, value: number, digits?: number) => string;
  /** "30–32 °C" */
  readonly span: (kind: QuantityKind, low: number, high: number, digits?: number) => string;
  readonly number: (value: number, digits?: number) => string;
  /** Hours since midnight as a clock time. */
  readonly clock: (hour: number) => string;
}

const usualDigits: Record<QuantityKind, number> = {
  temperature: 1,
  difference: 1,
  length: 0,
  power: 0,
  mass: 0,
  percent: 0,
  hour: 0,
};

export function measureFor(settings: UnitChoice): Measure {
  const locale = localeOf(settings);
  const formats = new Map<number, Intl.NumberFormat>();
  const number = (value: number, digits = 1): string => {
    let format = formats.get(digits);
    if (!format) {
      format = new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
      formats.set(digits, format);
    }
    const rounded = Number(value.toFixed(digits));
    return format.format(rounded === 0 ? 0 : rounded).replace('-', '−');
  };
  // A hundredth of an ounce is about a quarter of a gram.
  const digitsOf = (kind: QuantityKind, digits: number): number =>
    kind === 'mass' && settings.mass === 'oz' ? 2 : digits;
  const write = (kind: QuantityKind, value: number, digits = usualDigits[kind]): Written => ({
    num: number(shownFromStored(kind, value, settings), digitsOf(kind, digits)),
    unit: unitText(kind, settings),
  });
  const clockFormat = new Intl.DateTimeFormat(locale, {
    hour: locale === 'en-US' ? 'numeric' : '2-digit',
    minute: '2-digit',
    timeZone: 'UTC',
  });
  return {
    locale,
    settings,
    number,
    write,
    text: (kind, value, digits) => {
      const written = write(kind, value, digits);
      return `${written.num}\u00a0${written.unit}`;
    },
    span: (kind, low, high, digits = 0) => {
      const from = write(kind, low, digits);
      const to = write(kind, high, digits);
      return from.num === to.num ? `${to.num}\u00a0${to.unit}` : `${from.num}–${to.num}\u00a0${to.unit}`;
    },
    clock: (hour) => clockFormat.format(Math.round((hour % 24) * 60) * 60_000),
  };
}
