// Reading times of many shapes: ISO, day-month-year in either order, month names, AM/PM, seconds since 1970,
// spreadsheet day numbers. A stamp is a wall-clock time, with its offset when the file gives one.

export type DateOrder = 'dmy' | 'mdy' | 'ymd';

export interface Stamp {
  /** Wall-clock seconds since 1970-01-01 00:00; a bare time of day is below 86 400. */
  readonly wallS: number;
  /** Minutes ahead of UTC, when the text says so. */
  readonly offsetMin: number | null;
  readonly has: 'date' | 'time' | 'both';
}

/** Days from 1970-01-01 of a date of the Gregorian calendar; null when there is no such day. */
export function dayNumber(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || day < 1 || day > lengthOfMonth(year, month)) return null;
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

function lengthOfMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

const monthNames = ['jan', 'feb', 'm[aär]r', 'apr', 'ma[iy]', 'jun', 'jul', 'aug', 'sep', 'o[ck]t', 'nov', 'de[cz]'];
const clock = String.raw`(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([AaPp]\.?[Mm]\.?)?`;
const zone = String.raw`\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?`;
const onlyClock = new RegExp(`^${clock}$`);
const numeric = new RegExp(String.raw`^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})(?:(?:\s*,\s*|\s+|T)${clock}${zone})?$`);
const named = new RegExp(
  String.raw`^(?:(\d{1,2})\.?[\s-]+([A-Za-zäÄ]{3,9})\.?|([A-Za-zäÄ]{3,9})\.?[\s-]+(\d{1,2}))(?:,|[\s-])\s*(\d{4})(?:(?:\s*,\s*|\s+)${clock}${zone})?$`,
);

/** Read a text as a time. @param order how a date of numbers is meant where its year does not stand first
 *  @returns null when it is no time */
export function stampFrom(text: string, order: DateOrder): Stamp | null {
  if (text.length > 40 || !/\d/.test(text)) return null;
  const t = text.trim();
  const bare = onlyClock.exec(t);
  if (bare) {
    const s = clockSeconds(bare[1], bare[2], bare[3], bare[4]);
    return s === null ? null : { wallS: s, offsetMin: null, has: 'time' };
  }
  const n = numeric.exec(t);
  if (n) return fromParts(dateOf(n[1]!, n[2]!, n[3]!, order), n.slice(4));
  const m = named.exec(t);
  if (m) {
    const word = (m[2] ?? m[3])!.toLowerCase();
    const month = monthNames.findIndex((name) => new RegExp(`^${name}`).test(word)) + 1;
    return fromParts(dayNumber(Number(m[5]), month, Number(m[1] ?? m[4])), m.slice(6));
  }
  return null;
}

function fromParts(day: number | null, rest: readonly (string | undefined)[]): Stamp | null {
  if (day === null) return null;
  const [hour, minute, second, half, zoneText] = rest;
  if (hour === undefined) return { wallS: day * 86400, offsetMin: null, has: 'date' };
  const s = clockSeconds(hour, minute, second, half);
  return s === null ? null : { wallS: day * 86400 + s, offsetMin: offsetFrom(zoneText), has: 'both' };
}

function dateOf(a: string, b: string, c: string, order: DateOrder): number | null {
  if (a.length === 4 || (a.length === 3 && c.length <= 2)) return dayNumber(Number(a), Number(b), Number(c));
  if (c.length === 3) return null;
  const full = (y: string) => (y.length <= 2 ? 2000 + Number(y) : Number(y));
  if (order === 'ymd') return c.length > 2 ? null : dayNumber(full(a), Number(b), Number(c));
  if (a.length > 2) return null;
  return order === 'dmy' ? dayNumber(full(c), Number(b), Number(a)) : dayNumber(full(c), Number(a), Number(b));
}

function clockSeconds(h?: string, m?: string, s?: string, half?: string): number | null {
  let hour = Number(h);
  const minute = Number(m);
  const second = Number(s ?? 0);
  if (half !== undefined && half !== '') {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (/^p/i.test(half) ? 12 : 0);
  }
  return hour > 24 || minute > 59 || second > 60 ? null : hour * 3600 + minute * 60 + second;
}

function offsetFrom(text: string | undefined): number | null {
  if (text === undefined || text === '') return null;
  if (!/^[+-]/.test(text)) return 0;
  const sign = text.startsWith('-') ? -1 : 1;
  const digits = text.replace(/\D/g, '');
  return sign * (Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2, 4)));
}

/** Zone named in a heading, e.g. "Date Time (GMT+01:00)": minutes ahead of UTC; null for none. */
export function zoneInHeading(text: string): number | null {
  const m = /\b(?:GMT|UTC)\s*([+-]\d{1,2})(?::?(\d{2}))?/i.exec(text);
  if (m) return Number(m[1]) * 60 + (m[1]!.startsWith('-') ? -1 : 1) * Number(m[2] ?? 0);
  return /\b(?:GMT|UTC)\b/i.test(text) ? 0 : null;
}

/** Seconds or milliseconds since 1970, or a spreadsheet's day number (since 1899-12-30): what a column of numbers holds.
 *  Limits: years 2000 to 2100. */
export function numberStampKind(value: number): 'seconds' | 'milliseconds' | 'sheet-days' | null {
  if (value >= 946684800 && value < 4102444800) return 'seconds';
  if (value >= 946684800e3 && value < 4102444800e3) return 'milliseconds';
  if (value >= 36526 && value < 73051) return 'sheet-days';
  return null;
}

export function wallFromNumber(value: number, kind: 'seconds' | 'milliseconds' | 'sheet-days'): number {
  if (kind === 'seconds') return Math.round(value);
  if (kind === 'milliseconds') return Math.round(value / 1000);
  return Math.round((value - 25569) * 86400);
}

/** "2026-11-24 13:05" of a wall-clock time. */
export function wallText(wallS: number): string {
  const days = Math.floor(wallS / 86400);
  const rest = wallS - days * 86400;
  const z = days + 719468;
  const era = Math.floor(z / 146097);
  const dayOfEra = z - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const mp = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * mp + 2) / 5) + 1;
  const month = mp < 10 ? mp + 3 : mp - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${year}-${two(month)}-${two(day)} ${two(Math.floor(rest / 3600))}:${two(Math.floor((rest % 3600) / 60))}`;
}
