// What this does: compiles src/physics/kernel/kernel.as (AssemblyScript) and writes its bytes as text into
// src/physics/kernel/kernel.generated.ts, which is committed, so that nobody needs the compiler to run the program.
// Usage: node scripts/build-kernel.mjs [--check]      with --check nothing is written; exit code 1 = they differ, or it fails.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const folder = new URL('../src/physics/kernel/', import.meta.url);
const target = fileURLToPath(new URL('kernel.generated.ts', folder));

/** The text of kernel.generated.ts made afresh from its source. */
export async function kernelText() {
  const source = readFileSync(new URL('kernel.as', folder), 'utf8');
  let bytes = null;
  const { error, stderr } = await asc.main(
    ['kernel.ts', '-o', 'kernel.wasm', '-O3', '--runtime', 'stub', '--noAssert', '--enable', 'simd', '--noColors'],
    {
      readFile: (name) => (name === 'kernel.ts' ? source : null),
      writeFile: (name, contents) => {
        if (name === 'kernel.wasm') bytes = contents;
      },
      listFiles: () => [],
    },
  );
  if (error || bytes === null) throw new Error(`kernel.as does not compile: ${stderr.toString()}`);
  const text = Buffer.from(bytes).toString('base64');
  const lines = text.match(/.{1,110}/g).map((line) => `  '${line}'`);
  return [
    '// Written by scripts/build-kernel.mjs from kernel.as; do not edit. Bytes of a WebAssembly module, as text.',
    'export const kernelBase64 =',
    `${lines.join(' +\n')};`,
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = await kernelText();
  if (process.argv.includes('--check')) {
    const same = readFileSync(target, 'utf8') === text;
    console.log(same ? 'kernel: up to date' : 'kernel: kernel.generated.ts is not what kernel.as compiles to');
    if (!same) process.exitCode = 1;
  } else {
    writeFileSync(target, text);
    console.log(`kernel: ${text.length} characters written`);
  }
}
