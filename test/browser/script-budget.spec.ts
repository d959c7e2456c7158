/** How much script a reader waits for before the first page works: from the build's manifest, and held against what Chromium loads. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { WEB_ASSETS_DIR } from '../../src/platform/paths.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { addressOf, launch, PASSWORD, signedIn, WINDOWS, withPassword } from './chromium.js';

/** Bytes of compressed script (gzip, the strongest level, as built). */
const BUDGET = 150_000;

interface Chunk {
  file: string;
  imports?: string[];
  dynamicImports?: string[];
}

const manifest = (): Record<string, Chunk> =>
  JSON.parse(readFileSync(join(WEB_ASSETS_DIR, '.vite/manifest.json'), 'utf8')) as Record<string, Chunk>;

/** Files of a chunk and of everything it imports before it runs. */
function filesOf(key: string, chunks: Record<string, Chunk>, seen = new Set<string>()): Set<string> {
  if (seen.has(key)) return new Set();
  seen.add(key);
  const { file, imports = [] } = chunks[key]!;
  return new Set([file, ...imports.flatMap((one) => [...filesOf(one, chunks, seen)])]);
}
const compressed = (files: Iterable<string>): number =>
  [...files].reduce(
    (sum, file) => sum + gzipSync(readFileSync(join(WEB_ASSETS_DIR, file)), { level: 9 }).length,
    0,
  );

describe('the first page’s script', () => {
  test('is within its budget, with dispatch and return, which are read ahead', () => {
    const chunks = manifest();
    const first = filesOf('index.html', chunks);
    const flights = Object.keys(chunks).find((key) => key.endsWith('flights/flights-page.tsx'))!;
    const ahead = filesOf(flights, chunks);
    expect(first.size).toBeGreaterThan(0);
    expect(compressed(first)).toBeGreaterThan(10_000);
    expect(compressed(new Set([...first, ...ahead]))).toBeLessThanOrEqual(BUDGET);
    // Every other page is a script of its own.
    expect(chunks['index.html']!.dynamicImports!.length).toBeGreaterThan(15);
  });

  describe('in Chromium', () => {
    let api: Api;
    let ready: ReadyClub;
    let browser: Browser;

    beforeAll(async () => {
      api = await startApi();
      ready = await readyClub(api);
      await withPassword(api, ready.member);
      browser = await launch();
    }, 60_000);
    afterAll(async () => {
      await browser?.close();
      await api?.stop();
    });

    test('is what the manifest says, before and after signing in, and comes compressed', async () => {
      const first = [...filesOf('index.html', manifest())].sort();
      // Without the specs' fixed clock: the page waits a while before it reads ahead.
      const page = await browser.newPage();
      const loaded = new Map<string, string | undefined>();
      page.on('response', (response) => {
        const path = new URL(response.url()).pathname.slice(1);
        if (path.endsWith('.js')) loaded.set(path, response.headers()['content-encoding']);
      });
      await page.goto(addressOf(api));
      await page.getByLabel('Club').fill(ready.club.slug);
      expect([...loaded.keys()].sort()).toEqual(first);
      expect([...loaded.values()]).toEqual(first.map(() => 'gzip'));

      await page.getByLabel('E-mail').fill(ready.member.email);
      await page.getByLabel('Password').fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByRole('button', { name: 'Ask the club' }).waitFor();
      const isFlights = (file: string) => file.includes('flights-page');
      for (let tries = 0; tries < 200 && ![...loaded.keys()].some(isFlights); tries += 1)
        await page.waitForTimeout(50);
      expect([...loaded.keys()].some(isFlights)).toBe(true);
      const flights = Object.keys(manifest()).find((key) => key.endsWith('flights/flights-page.tsx'))!;
      const allowed = new Set([...first, ...filesOf(flights, manifest())]);
      expect([...loaded.keys()].filter((file) => !allowed.has(file))).toEqual([]);
      await page.close();
    }, 60_000);

    test('a page whose script cannot be read says so', async () => {
      const page = await signedIn(browser, { api, ready, who: ready.member, viewport: WINDOWS.desk });
      await page.route(/rule-book.*\.js$/, (route) => route.abort());
      await page.getByRole('link', { name: 'Rule book' }).click();
      expect(await page.getByRole('alert').innerText()).toContain('could not be read');
      await page.unroute(/rule-book.*\.js$/);
      await page.getByRole('button', { name: 'Read it again' }).click();
      await page.locator('main.rule-book').waitFor();
      await page.context().close();
    }, 60_000);
  });

  test('is given as it is to whoever takes no gzip', async () => {
    const api = await startApi();
    const { file } = manifest()['index.html']!;
    const answer = await api.http.get(`/${file}`).set('Accept-Encoding', 'identity').expect(200);
    expect(answer.headers['content-encoding']).toBeUndefined();
    expect(answer.headers['vary']).toContain('Accept-Encoding');
    expect(answer.headers['content-type']).toContain('javascript');
    const packed = await api.http.get(`/${file}`).set('Accept-Encoding', 'gzip').expect(200);
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.headers['content-type']).toContain('javascript');
    expect(packed.headers['cache-control']).toContain('immutable');
    expect(packed.text).toBe(answer.text);
    await api.stop();
  });
});
