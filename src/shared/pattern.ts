// Fills the blanks of a sentence: {name}, and the two branches of the ICU message format that languages need,
// {count, plural, one {# animal} other {# animals}} and {kind, select, warm {…} other {…}}.
// Leaves out apostrophe quoting, nested functions and formats of numbers: blanks come written already.

export type Blanks = Readonly<Record<string, string | number>>;

/** Blanks by their place: {0}, {1} … */
export const numbered = (blanks: readonly (string | number)[]): Blanks =>
  Object.fromEntries(blanks.map((blank, i) => [String(i), blank]));

type Part =
  | string
  | {
      readonly blank: string;
      readonly kind: 'is' | 'plural' | 'select';
      readonly branches: Readonly<Record<string, readonly Part[]>>;
    };

const parsed = new Map<string, readonly Part[] | null>();

/** Branches are rare and costly to read; a sentence without them is filled at once. */
const branching = /\{\s*\w+\s*,/;

class Reader {
  #at = 0;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  get done(): boolean {
    return this.#at >= this.#text.length;
  }

  /** Text and blanks up to the closing bracket of the branch, or to the end. */
  parts(): readonly Part[] {
    const found: Part[] = [];
    while (!this.done && this.#text[this.#at] !== '}') {
      const next = this.#text.slice(this.#at).search(/[{}]/);
      const until = next < 0 ? this.#text.length : this.#at + next;
      if (until > this.#at) found.push(this.#text.slice(this.#at, until));
      this.#at = until;
      if (this.#text[this.#at] === '{') found.push(this.#blank());
    }
    return found;
  }

  #take(form: RegExp): string {
    const found = new RegExp(form.source, 'y');
    found.lastIndex = this.#at;
    const match = found.exec(this.#text);
    if (match === null) throw new SyntaxError(`a blank breaks off at sign ${this.#at + 1}: ${this.#text}`);
    this.#at = found.lastIndex;
    return match[1] ?? '';
  }

  #blank(): Part {
    const blank = this.#take(/\{\s*(\w+)\s*/);
    if (this.#text[this.#at] === '}') {
      this.#at += 1;
      return { blank, kind: 'is', branches: {} };
    }
    const kind = this.#take(/,\s*(plural|select)\s*,\s*/) as 'plural' | 'select';
    const branches: Record<string, readonly Part[]> = {};
    while (!this.done && this.#text[this.#at] !== '}') {
      const name = this.#take(/(=?[\w-]+)\s*\{/);
      branches[name] = this.parts();
      this.#take(/\}\s*/);
    }
    this.#take(/\}/);
    if (branches.other === undefined) throw new SyntaxError(`a branch "other" is missing: ${this.#text}`);
    return { blank, kind, branches };
  }
}

function partsOf(pattern: string): readonly Part[] | null {
  const known = parsed.get(pattern);
  if (known !== undefined) return known;
  let parts: readonly Part[] | null = null;
  try {
    const reader = new Reader(pattern);
    parts = reader.parts();
    if (!reader.done) parts = null;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  parsed.set(pattern, parts);
  return parts;
}

/** True when every bracket closes and every branch has its "other". */
export const isPattern = (pattern: string): boolean => partsOf(pattern) !== null;

/** Names of the blanks of a pattern, each once, in order of the alphabet. */
export function blanksOf(pattern: string): readonly string[] {
  const names = new Set<string>();
  const walk = (parts: readonly Part[]): void => {
    for (const part of parts) {
      if (typeof part === 'string') continue;
      names.add(part.blank);
      for (const branch of Object.values(part.branches)) walk(branch);
    }
  };
  walk(partsOf(pattern) ?? []);
  return [...names].sort();
}

/** Every piece of plain text of a pattern, for a reader that must not see its blanks. */
export function withTextChanged(pattern: string, change: (text: string) => string): string {
  const written = (parts: readonly Part[]): string =>
    parts
      .map((part) => {
        if (typeof part === 'string') return change(part);
        if (part.kind === 'is') return `{${part.blank}}`;
        const branches = Object.entries(part.branches).map(([name, branch]) => `${name} {${written(branch)}}`);
        return `{${part.blank}, ${part.kind}, ${branches.join(' ')}}`;
      })
      .join('');
  const parts = partsOf(pattern);
  return parts === null ? change(pattern) : written(parts);
}

/** "1.234" and "1,234" are counts too, once their marks are gone; NaN for a word. */
const countOf = (value: string | number): number =>
  typeof value === 'number' ? value : Number(value.replace(/[\s.,\u00a0\u202f](?=\d{3}(?!\d))/g, '').replace(',', '.'));

/** @param language code whose rules of plural count, e.g. "pl"; a blank that was not handed stays visible as {name} */
export function filledPattern(pattern: string, blanks: Blanks, language: string): string {
  const parts = branching.test(pattern) ? partsOf(pattern) : null;
  if (parts === null)
    return pattern.replace(/\{(\w+)\}/g, (all, name: string) =>
      Object.hasOwn(blanks, name) ? String(blanks[name]) : all,
    );
  return said(parts, blanks, language, '');
}

function said(parts: readonly Part[], blanks: Blanks, language: string, count: string): string {
  return parts
    .map((part) => {
      if (typeof part === 'string') return count === '' ? part : part.replaceAll('#', count);
      const value = Object.hasOwn(blanks, part.blank) ? blanks[part.blank]! : null;
      if (value === null || part.kind === 'is') return value === null ? `{${part.blank}}` : String(value);
      const branch =
        part.branches[`=${value}`] ??
        part.branches[part.kind === 'select' ? String(value) : pluralOf(value, language)] ??
        part.branches.other!;
      return said(branch, blanks, language, part.kind === 'plural' ? String(value) : count);
    })
    .join('');
}

function pluralOf(value: string | number, language: string): string {
  const count = countOf(value);
  return Number.isNaN(count) ? 'other' : new Intl.PluralRules(language).select(count);
}
