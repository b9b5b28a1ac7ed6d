// Fits sentences and columns into the width of a terminal. Leaves out: colour, which has no width.

// biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of a colour code is one
const colourCode = /\u001b\[[\d;]*m/g;

/** Columns a text takes, colour codes not counted. */
export const widthOf = (text: string): number => [...text.replace(colourCode, '')].length;

export const padEnd = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - widthOf(text)));
export const padStart = (text: string, width: number): string => ' '.repeat(Math.max(0, width - widthOf(text))) + text;

/** Lines of at most `width` columns; the first starts with `first`, the others with as many spaces. */
export function wrapped(text: string, width: number, first = ''): string[] {
  const indent = ' '.repeat(widthOf(first));
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (!empty && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  lines.push(line);
  return lines;
}
