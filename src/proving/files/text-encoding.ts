// In which encoding is a logger file written? Decided from its first bytes; the decoding itself is the caller's.

export type EncodingLabel = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Encoding of a file.
 *  @param start its first bytes, a few kilobytes are enough  */
export function encodingOf(start: Uint8Array): EncodingLabel {
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le';
  if (start[0] === 0xfe && start[1] === 0xff) return 'utf-16be';
  if (start[0] === 0xef && start[1] === 0xbb && start[2] === 0xbf) return 'utf-8';
  const zeros = [0, 0];
  const seen = Math.min(start.length, 4096);
  for (let i = 0; i < seen; i++) if (start[i] === 0) zeros[i % 2]!++;
  // plain text in two bytes a letter: every second byte is zero
  if (zeros[1]! > seen / 5 && zeros[0]! < seen / 50) return 'utf-16le';
  if (zeros[0]! > seen / 5 && zeros[1]! < seen / 50) return 'utf-16be';
  return isUtf8(start) ? 'utf-8' : 'windows-1252';
}

/** Whether bytes hold text at all: programs, pictures and packed files have zero bytes and control characters. */
export function looksLikeText(start: Uint8Array): boolean {
  const label = encodingOf(start);
  if (label.startsWith('utf-16')) return true;
  let strange = 0;
  for (const b of start) if (b < 9 || (b > 13 && b < 32)) strange++;
  return strange <= start.length / 200;
}

/** A letter cut off at the end of the sample is no fault. */
function isUtf8(bytes: Uint8Array): boolean {
  let i = 0;
  while (i < bytes.length) {
    const b = bytes[i]!;
    const more = b < 0x80 ? 0 : b >= 0xc2 && b < 0xe0 ? 1 : b >= 0xe0 && b < 0xf0 ? 2 : b >= 0xf0 && b < 0xf5 ? 3 : -1;
    if (more < 0) return false;
    for (let k = 1; k <= more; k++) {
      if (i + k >= bytes.length) return true;
      if ((bytes[i + k]! & 0xc0) !== 0x80) return false;
    }
    i += more + 1;
  }
  return true;
}
