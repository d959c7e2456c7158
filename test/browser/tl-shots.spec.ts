import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, overflow, pilot, signedIn, violations, WINDOWS } from './chromium.js';

let api: Api; let ready: ReadyClub; let browser: Browser;
beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const row = insertInto(api.sql, ready.club.clubId);
  const grounded = await ready.addAircraft('NX102B');
  await row('squawks', { id: newId(), aircraft_id: grounded, reported_at: '2026-03-09T12:00:00Z', reported_by: ready.member.memberId, title: 'Left brake soft', state: 'grounding' });
  const third = await ready.addAircraft('NX103B');
  const use = (a: string, from: string, to: string) => row('bookings', { id: newId(), kind: 'club', aircraft_id: a, member_id: ready.member.memberId, during: `[${from},${to})`, expected_tenths: 0, request: '{}' });
  for (const d of ['11', '12', '14', '18', '21', '22', '25']) await use(third, `2026-03-${d}T15:00:00Z`, `2026-03-${d}T19:00:00Z`);
  await use(ready.aircraftId, '2026-03-16T05:00:00Z', '2026-03-19T05:00:00Z');
  await use(ready.aircraftId, '2026-03-10T14:00:00Z', '2026-03-10T23:00:00Z');
  browser = await launch();
}, 60_000);
afterAll(async () => { await browser?.close(); await api?.stop(); });
test.each(['phone', 'desk'] as const)('%s', async (name) => {
  const who = await pilot(api, ready, `Shot ${name}`);
  await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [who.memberId, '2021-04-10']);
  const page = await signedIn(browser, { api, ready, who, viewport: WINDOWS[name] });
  const shot = (n: string) => page.screenshot({ path: `/tmp/tl/${name}-${n}.png`, fullPage: true });
  await shot('0');
  for (const span of ['7 days', '30 days', 'a year']) {
    await page.getByRole('button', { name: span, exact: true }).click();
    await page.locator('.lane').first().waitFor();
    await page.waitForTimeout(1200);
    await shot(span.replace(' ', ''));
  }
  await page.getByRole('button', { name: '30 days', exact: true }).click();
  await page.waitForTimeout(1000);
  await page.locator('.field').first().focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  await page.locator('.in-words summary').first().click();
  await shot('detail');
  console.log(name, await violations(page), await overflow(page));
  await page.locator('.first .main').click();
  await shot('taken');
  await page.context().close();
}, 90_000);
