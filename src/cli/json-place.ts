// Where does a text stop being JSON, and does an object name the same key twice?
// JSON.parse tells neither reliably. Walks without recursion, so deep nesting does not matter.
// Leaves out: the value itself; JSON.parse makes it.

export interface JsonTrouble {
  readonly kind: 'syntax' | 'twice';
  /** Place in the text, from 0. */
  readonly offset: number;
  /** What stands there, or the key that came twice. */
  readonly found: string;
}

const blank = /[ \t\n\r]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids exactly these inside a text
const letters = /[^"\\\u0000-\u001f]*/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const plain = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])|(?:true|false|null)(?!\w)/y;

/** The first thing that is wrong with a JSON text, or null. */
export function jsonTrouble(source: string): JsonTrouble | null {
  let at = 0;
  const open: { readonly end: '}' | ']'; readonly keys: Set<string> | null }[] = [];
  const take = (form: RegExp): string | null => {
    form.lastIndex = at;
    const found = form.exec(source)?.[0] ?? null;
    at += found?.length ?? 0;
    return found;
  };
  const skip = (): string => {
    take(blank);
    return source[at] ?? '';
  };
  /** A quoted text, piece by piece: one expression for the whole would overflow on millions of escapes. */
  const takeText = (): string | null => {
    const start = at;
    if (source[at] !== '"') return null;
    at++;
    do take(letters);
    while (take(escaped) !== null);
    if (source[at] === '"') return source.slice(start, ++at);
    at = start;
    return null;
  };
  const wrong = (): JsonTrouble => ({ kind: 'syntax', offset: at, found: source[at] ?? '' });

  /** Reads `"key":` of an object. */
  const key = (keys: Set<string>): JsonTrouble | null => {
    const start = at;
    const name = takeText();
    if (name === null) return wrong();
    if (keys.has(JSON.parse(name))) return { kind: 'twice', offset: start, found: name };
    keys.add(JSON.parse(name));
    if (skip() !== ':') return wrong();
    at++;
    return null;
  };

  for (;;) {
    const next = skip();
    if (next === '{' || next === '[') {
      at++;
      const inner =
        next === '{' ? ({ end: '}', keys: new Set<string>() } as const) : ({ end: ']', keys: null } as const);
      if (skip() !== inner.end) {
        open.push(inner);
        const trouble = inner.keys === null ? null : key(inner.keys);
        if (trouble) return trouble;
        continue;
      }
      at++;
    } else if ((next === '"' ? takeText() : take(plain)) === null) return wrong();
    // A value is complete: close what it closes, then expect the next one or the end.
    for (;;) {
      const after = skip();
      const inner = open.at(-1);
      if (inner === undefined) return after === '' ? null : wrong();
      if (after === inner.end) {
        at++;
        open.pop();
        continue;
      }
      if (after !== ',') return wrong();
      at++;
      skip();
      const trouble = inner.keys === null ? null : key(inner.keys);
      if (trouble) return trouble;
      break;
    }
  }
}

/** Line and column of a place in a text, both from 1. */
export function lineAndColumn(source: string, offset: number): { readonly line: number; readonly column: number } {
  const before = source.slice(0, offset);
  const lastBreak = before.lastIndexOf('\n');
  return { line: before.split('\n').length, column: [...before.slice(lastBreak + 1)].length + 1 };
}
