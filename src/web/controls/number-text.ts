// What number did a person write? Point and comma both part whole from broken, whatever the language of the sheet:
// 23.5 at a German counter is never 235. Leaves out limits and units.

export interface NumberMarks {
  readonly decimal: string;
  readonly group: string;
}

const known = new Map<string, NumberMarks>();

/** How the language parts decimals and thousands. */
export function numberMarks(locale: string): NumberMarks {
  const before = known.get(locale);
  if (before !== undefined) return before;
  const parts = new Intl.NumberFormat(locale, { useGrouping: 'always' }).formatToParts(12_345.6);
  const of = (type: string, otherwise: string) => parts.find((part) => part.type === type)?.value ?? otherwise;
  const marks = { decimal: of('decimal', '.'), group: of('group', ',') };
  known.set(locale, marks);
  return marks;
}

/** @returns the number, null for an empty field, NaN for what is no number */
export function numberFromText(typed: string, marks: NumberMarks): number | null {
  const text = typed.replace(/[\s\u00a0\u202f'’]/g, '').replace(/[−–]/g, '-');
  if (text === '') return null;
  const parting = text.match(/[.,]/g) ?? [];
  const last = parting.at(-1);
  if (last === undefined) return plain(text);
  const at = text.lastIndexOf(last);
  const whole = text.slice(0, at);
  const rest = text.slice(at + 1);
  // Several of one kind, or the language's own mark before just three figures, part thousands.
  const repeated = parting.length > 1 && new Set(parting).size === 1;
  const thousands = repeated || (last === marks.group && /^-?[1-9]\d{0,2}$/.test(whole) && /^\d{3}$/.test(rest));
  if (thousands) return /^-?\d{1,3}([.,]\d{3})+$/.test(text) ? plain(text.replace(/[.,]/g, '')) : Number.NaN;
  if (/[.,]/.test(whole) && !/^-?\d{1,3}([.,]\d{3})+$/.test(whole)) return Number.NaN;
  return plain(`${whole.replace(/[.,]/g, '')}.${rest}`);
}

const plain = (text: string): number => (/^-?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN);

/** One step up or down; from nothing to the limit the step leads away from. */
export function stepped(value: number | null, by: number, min: number, max: number): number {
  if (value === null) return by > 0 ? min : max;
  return clamped(Number((value + by).toFixed(4)), min, max);
}

export const clamped = (value: number, min: number, max: number): number => Math.min(max, Math.max(min, value));
