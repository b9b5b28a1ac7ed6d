import { expect, it } from 'vitest';
import { textOfFile } from './text-of-file.ts';

const table = 'id;name;price\r\nm1;Wärmematte für 30 °C;14,50\r\n';
const oneByte = Uint8Array.from(table, (c) => c.charCodeAt(0));
const twoBytes = (bigEnd: boolean, marked: boolean): Uint8Array => {
  const text = marked ? `\uFEFF${table}` : table;
  const bytes = new DataView(new ArrayBuffer(text.length * 2));
  for (let i = 0; i < text.length; i++) bytes.setUint16(2 * i, text.charCodeAt(i), !bigEnd);
  return new Uint8Array(bytes.buffer);
};

it.each([
  ['UTF-8', new TextEncoder().encode(table)],
  ['UTF-8 with its mark', new TextEncoder().encode(`\uFEFF${table}`)],
  ['a byte a letter, as spreadsheets of Western Europe save', oneByte],
  ['two bytes, low one first', twoBytes(false, true)],
  ['two bytes, high one first', twoBytes(true, true)],
  ['two bytes without a mark', twoBytes(false, false)],
])('a table in %s reads the same', async (_, bytes) => {
  expect(await textOfFile(new Blob([bytes as BlobPart]))).toBe(table);
});
