// Do the options of a command make sense? All of them are read as text and judged together, so that every fault
// is told at once. Leaves out: the options that exist (program.ts).
import { shown } from '../physics/field-reader.ts';
import { nearestKey } from '../physics/nearest-key.ts';
import type { Fault } from '../shared/fault.ts';
import { type Language, languageCodes } from '../shared/languages.ts';
import { celsiusFromF, type UnitSystem } from './display.ts';
import type { Messages } from './messages/en.ts';
import { type OptionRange, optionRanges, type RangedOption } from './option-ranges.ts';

export type RawOptions = Readonly<Record<string, string | boolean | undefined>>;

/** Collects faults while options are read. */
export class OptionReader {
  readonly faults: Fault[] = [];
  readonly #raw: RawOptions;
  readonly #messages: Messages;

  constructor(raw: RawOptions, messages: Messages) {
    this.#raw = raw;
    this.#messages = messages;
  }

  flag(name: string): boolean {
    return this.#raw[name] === true;
  }

  text(name: string): string | null {
    const value = this.#raw[name];
    return typeof value === 'string' ? value : null;
  }

  /** A number within limits, or null when the option is not there or not usable. */
  number(name: string, low: number, high: number, unit: string, whole = false): number | null {
    const text = this.text(name);
    if (text === null) return null;
    const value = numberOf(text);
    if (value >= low && value <= high && (!whole || Number.isInteger(value))) return value;
    const { check } = this.#messages;
    const range = `${check.range(String(low), String(high))}${unit === '' ? '' : ` ${unit}`}`;
    this.fault(
      'CLI_NUMBER',
      name,
      text,
      whole ? check.whole(range) : range,
      this.#messages.faults.number(flagOf(name)),
    );
    return null;
  }

  /** A number within the limits that the help tells of. */
  ranged(name: RangedOption): number | null {
    const { low, high, unit, whole }: OptionRange = optionRanges[name];
    return this.number(name, low, high, unit, whole === true);
  }

  /** A temperature in the units shown, as degrees Celsius. */
  tempC(name: 'room' | 'low' | 'high', units: UnitSystem): number | null {
    const { low: lowC, high: highC } = optionRanges[name];
    if (units === 'metric') return this.number(name, lowC, highC, '°C');
    const valueF = this.number(name, lowC * 1.8 + 32, highC * 1.8 + 32, '°F');
    return valueF === null ? null : celsiusFromF(valueF);
  }

  word<T extends string>(name: string, words: readonly T[], usual: T): T {
    const text = this.text(name);
    if (text === null) return usual;
    const found = words.find((word) => word === text);
    if (found !== undefined) return found;
    const near = nearestKey(text, words);
    const { say, fix } = this.#messages.faults.choice(flagOf(name));
    this.fault('CLI_CHOICE', name, text, words.join(' | '), { say, fix: near === null ? fix : `${fix} (${near}?)` });
    return usual;
  }

  /** Options of which only one may be given. */
  apart(names: readonly string[]): void {
    const given = names.filter((name) => this.#raw[name] !== undefined && this.#raw[name] !== false);
    for (const other of given.slice(1)) {
      const words = this.#messages.faults.together(`--${given[0]}`, `--${other}`);
      this.fault('CLI_TOGETHER', other, `--${given[0]} --${other}`, names.map((n) => `--${n}`).join(' | '), words);
    }
  }

  /** When one of them is given, the others must be too. */
  together(name: string, needed: string): void {
    if (this.#raw[name] === undefined || this.#raw[name] === false || this.#raw[needed] !== undefined) return;
    const words = this.#messages.faults.needs(`--${name}`, `--${needed}`);
    this.fault('CLI_NEEDS', needed, '-', `--${needed}`, words);
  }

  fault(
    code: string,
    name: string,
    got: string,
    allowed: string,
    words: { readonly say: string; readonly fix: string },
  ): void {
    this.faults.push({ code, field: name === '' ? '' : flagOf(name), got: shown(got), allowed, ...words });
  }
}

/** "tempUnit" as it is typed: "--temp-unit". */
const flagOf = (name: string): string => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/** "1.5" but not "1.5x", "", "0x10", "Infinity" or a decimal comma. */
export function numberOf(text: string): number {
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text.trim()) ? Number(text) : Number.NaN;
}

export const unitSystems: readonly UnitSystem[] = ['metric', 'us'];

/** Language from --lang, else from the environment, else English. */
export function languageOf(argv: readonly string[], env: Readonly<Record<string, string | undefined>>): Language {
  const place = argv.findIndex((arg) => arg === '--lang' || arg.startsWith('--lang='));
  const option = argv[place]?.split('=')[1] ?? (place < 0 ? undefined : argv[place + 1]);
  const asked = option ?? (env.LC_ALL || env.LC_MESSAGES || env.LANG);
  return languageCodes().find((language) => asked?.toLowerCase().startsWith(language)) ?? 'en';
}
