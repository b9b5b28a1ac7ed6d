// How the server, the terminal and the planning worker are built: one bundle each, packages left outside,
// shared parts in dist/shared. Leaves out the browser program: vite.config.ts.
import { isAbsolute } from 'node:path';
import { defineConfig } from 'rolldown';

export default defineConfig({
  input: {
    'server/main': './src/server/main.ts',
    'cli/main': './src/cli/main.ts',
    'worker/plan': './src/desk/plan-worker.ts',
    'worker/proof': './src/desk/proof-worker.ts',
    'worker/kit-search': './src/desk/kit-search-worker.ts',
  },
  platform: 'node',
  external: (id) => !id.startsWith('.') && !isAbsolute(id),
  output: {
    dir: 'dist',
    format: 'esm',
    entryFileNames: '[name].mjs',
    chunkFileNames: 'shared/[name]-[hash].mjs',
    sourcemap: true,
  },
});
