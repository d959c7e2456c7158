/** Ways to yes as a member sees them, in headless Chromium, on a phone and on a desk. */
import type { Browser } from 'playwright-core';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { ask, launch, overflow, pilot, signedIn, violations, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

/** Where somebody who looks at the pages wants pictures of them. */
const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('what would make it a yes: plans side by side, with steps, cost and what remains', async () => {
    const who = await pilot(api, ready, `Asks for ways on the ${name}`);
    await api.sql(`DELETE FROM log_entries WHERE member_id = $1`, [who.memberId]);
    await api.sql(`UPDATE reviews SET reviewed_on = '2022-01-10' WHERE member_id = $1`, [who.memberId]);
    const page = await signedIn(browser, { api, ready, who, viewport });
    await page.getByLabel('Day', { exact: true }).fill('2026-03-20');
    await ask(page, '13:00', '15:00');
    const answer = page.locator('[data-registration=NX101B]');
    const button = answer.getByRole('button', { name: 'What would make it a yes?' });
    await button.focus();
    await page.keyboard.press('Enter');
    const plans = answer.locator('.plan');
    await plans.first().waitFor();
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/ways-${name}.png`, fullPage: true });
    expect(await plans.count()).toBeGreaterThan(1);
    const text = await answer.locator('.to-yes').innerText();
    expect(text).toContain('Fly a flight review with an instructor.');
    expect(text).toContain('One flight with an instructor for 2 of the steps.');
    expect(text).toContain('An instructor who may teach in it must be found and named');
    await plans.last().getByText('What it costs, and what remains').click();
    expect(await plans.last().locator('.costs').innerText()).toMatch(/Counted as\s+[\d.]+ dollars/);
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await page.context().close();
  }, 60_000);

  test('no way before the flight is said plainly', async () => {
    const who = await pilot(api, ready, `Has no way on the ${name}`);
    await api.sql(`UPDATE medicals SET exam_on = '2019-01-10' WHERE member_id = $1`, [who.memberId]);
    await api.sql(`UPDATE members SET standing = 'suspended', standing_since = '2026-01-01' WHERE id = $1`, [
      who.memberId,
    ]);
    const page = await signedIn(browser, { api, ready, who, viewport });
    await ask(page, '08:00', '09:00');
    const answer = page.locator('[data-registration=NX101B]');
    await answer.getByRole('button', { name: 'What would make it a yes?' }).click();
    await answer.locator('.to-yes h4').first().waitFor();
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/none-${name}.png`, fullPage: true });
    expect(await answer.locator('.to-yes').innerText()).toContain(
      'There is no way to yes before the flight.',
    );
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await page.context().close();
  }, 60_000);
});
