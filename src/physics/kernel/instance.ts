// The compiled kernel, made once from its bytes. Where WebAssembly is missing or forbidden there is none, and plain
// arithmetic does the work.
import { kernelBase64 } from './kernel.generated.ts';

export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer; grow(pages: number): number };
  /** The table says where everything of a box lies; 1 when a pivot is zero. */
  factorBox(table: number): number;
  solveBox(table: number, old: number, row: number, roomC: number, withRoom: number): void;
  heatStep(table: number, perS: number, weight: number, roomC: number): void;
  /** First byte of the memory that the kernel does not need for itself. */
  freeFrom(): number;
  /** The film law of body-law.ts, as the kernel has it. */
  filmSphere(diameterM: number, delta: number, filmC: number): number;
}

/** As much of WebAssembly as is used here; pure rooms know no surroundings. */
declare const WebAssembly:
  | {
      Module: new (bytes: Uint8Array) => object;
      Instance: new (module: object, imports: object) => { readonly exports: unknown };
    }
  | undefined;

let kernel: Kernel | null | undefined;

/** The kernel, or null where there is none. */
export function kernelInstance(): Kernel | null {
  if (kernel === undefined) kernel = instantiate();
  return kernel;
}

function instantiate(): Kernel | null {
  if (typeof WebAssembly === 'undefined') return null;
  try {
    return new WebAssembly.Instance(new WebAssembly.Module(bytesOf(kernelBase64)), {}).exports as Kernel;
  } catch {
    return null; // forbidden by a page's policy, or too old for pairs of numbers
  }
}

const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

function bytesOf(base64: string): Uint8Array {
  const text = base64.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let to = 0;
  for (const letter of text) {
    held = (held << 6) | digits.indexOf(letter);
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[to++] = (held >> bits) & 255;
  }
  return bytes;
}
