import preact from '@preact/preset-vite';
import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

/** Lays every script and style sheet beside itself compressed, once, so that the service need not do it for each reader. */
const compressed = (): Plugin => ({
  name: 'compressed',
  apply: 'build',
  writeBundle({ dir }, bundle) {
    for (const name of Object.keys(bundle).filter((one) => /\.(js|css)$/.test(one))) {
      const path = resolve(dir!, name);
      writeFileSync(`${path}.gz`, gzipSync(readFileSync(path), { level: 9 }));
    }
  },
});

/** Builds the pages into dist/web, which the service serves. `npm run dev:web` proxies the API to a running service. */
export default defineConfig({
  root: resolve(process.cwd(), 'src/web/page'),
  plugins: [preact({ prefreshEnabled: false }), compressed()],
  build: {
    outDir: resolve(process.cwd(), 'dist/web'),
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
    // Which script loads which: the spec of the script's budget reads it.
    manifest: true,
    // One style sheet: a page may lean on the styles of another, whichever was read first.
    cssCodeSplit: false,
    modulePreload: { polyfill: false },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8087' } },
});
