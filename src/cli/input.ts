// What does the named file, or standard input, hold? Every way in which it can be no JSON is a fault with its place.
// Leaves out: whether the JSON is an enclosure (physics/validate-enclosure.ts).
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { shown } from '../physics/field-reader.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { jsonTrouble, lineAndColumn } from './json-place.ts';
import type { Messages } from './messages/en.ts';
import type { Terminal } from './terminal.ts';

/** Largest file that is read [bytes]; a large enclosure has about 10 kB. Our choice. */
export const largestBytes = 4_000_000;

const fault = (
  code: string,
  got: string,
  allowed: string,
  words: { readonly say: string; readonly fix: string },
): Fault => ({
  code,
  field: '',
  got,
  allowed,
  ...words,
});

/** The JSON value in a file or in standard input ("-"). */
export async function readJson(name: string, terminal: Terminal, messages: Messages): Promise<Result<unknown>> {
  const text = await readText(name, terminal, messages);
  return text.ok ? jsonFrom(text.value, messages) : text;
}

/** The text in a file or in standard input ("-"); never an empty one. */
export async function readText(name: string, terminal: Terminal, messages: Messages): Promise<Result<string>> {
  const bytes = await readBytes(name, terminal, messages);
  if (!bytes.ok) return bytes;
  const label = name === '-' ? messages.check.standardInput : displayName(name);
  const text = textOf(bytes.value);
  if (text === null) {
    return bad([fault('CLI_NOT_TEXT', label, 'UTF-8', messages.faults.notText(label))]);
  }
  if (text.trim() === '') return bad([fault('CLI_EMPTY', label, 'JSON', messages.faults.empty(label))]);
  return good(text);
}

/** JSON.parse, but with the place of the trouble; a key that stands twice is trouble too. */
export function jsonFrom(text: string, messages: Messages): Result<unknown> {
  const trouble = jsonTrouble(text);
  if (trouble === null) return good(JSON.parse(text));
  const { line, column } = lineAndColumn(text, trouble.offset);
  const found = trouble.found === '' ? '' : shown(trouble.kind === 'twice' ? JSON.parse(trouble.found) : trouble.found);
  const { notJson, notJsonEnd, twice } = messages.faults;
  if (trouble.kind === 'twice')
    return bad([fault('CLI_KEY_TWICE', found, messages.check.keyOnce, twice(line, column, found))]);
  return bad([
    fault('CLI_NOT_JSON', found, 'JSON', found === '' ? notJsonEnd(line, column) : notJson(line, column, found)),
  ]);
}

async function readBytes(name: string, terminal: Terminal, messages: Messages): Promise<Result<Uint8Array>> {
  const { check } = messages;
  const { noFile, notReadable, isFolder, tooLarge } = messages.faults;
  const label = name === '-' ? messages.check.standardInput : displayName(name);
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    if (name !== '-' && (await stat(name)).isDirectory()) {
      return bad([fault('CLI_IS_FOLDER', label, check.file, isFolder(label))]);
    }
    for await (const chunk of name === '-' ? terminal.stdin : createReadStream(name)) {
      size += chunk.length;
      if (size > largestBytes) {
        return bad([fault('CLI_TOO_LARGE', label, check.atMost(`${largestBytes / 1e6} MB`), tooLarge(label))]);
      }
      chunks.push(chunk);
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    const absent =
      code === 'ENOENT' || code === 'ENOTDIR' || code === 'ENAMETOOLONG' || code === 'ERR_INVALID_ARG_VALUE';
    return bad([
      absent
        ? fault('CLI_NO_FILE', label, check.fileThere, noFile(label))
        : fault('CLI_NOT_READABLE', `${label} (${code})`, check.fileReadable, notReadable(label)),
    ]);
  }
  return good(Buffer.concat(chunks));
}

/** A file name as it may be printed: cut at the left, no character that moves a cursor. */
export function displayName(name: string): string {
  const cut = name.length > 100 ? `...${name.slice(-97)}` : name;
  return cut.replace(/\p{Cc}/gu, '?');
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
