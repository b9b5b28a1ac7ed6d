// How the browser program is built: sources in src/web, result in dist/web, no file inlined (the page's
// content security policy allows 'self' only). Leaves out the server and the terminal: rolldown.config.ts.
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const serverPort = process.env.PORT ?? '7430';

export default defineConfig({
  root: 'src/web',
  base: '/',
  cacheDir: '../../node_modules/.vite',
  plugins: [react()],
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2022',
    sourcemap: true,
    rolldownOptions: {
      output: {
        // What every screen needs of the libraries in one file: fewer requests before the first paint.
        codeSplitting: {
          groups: [
            {
              name: 'library',
              test: /node_modules[\\/](react|react-dom|scheduler|react-aria|react-aria-components|react-stately|@react-|@internationalized)/,
            },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
  server: { proxy: { '/api': `http://127.0.0.1:${serverPort}` } },
});
