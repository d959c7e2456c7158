import preact from '@preact/preset-vite';
import { resolve } from 'node:path';
import { defineConfig } from 'vite';

/** Builds the pages into dist/web, which the service serves. `npm run dev:web` proxies the API to a running service. */
export default defineConfig({
  root: resolve(process.cwd(), 'src/web/page'),
  plugins: [preact({ prefreshEnabled: false })],
  build: {
    outDir: resolve(process.cwd(), 'dist/web'),
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8087' } },
});
