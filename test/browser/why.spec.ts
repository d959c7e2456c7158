/** From a finding to its derivation and on to the rule book, in headless Chromium, on a phone and on a desk. */
import type { Browser, Page } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { ask, launch, overflow, pilot, signedIn, violations, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const grounded = await ready.addAircraft('NX102B');
  await insertInto(api.sql, ready.club.clubId)('squawks', {
    id: newId(),
    aircraft_id: grounded,
    reported_at: '2026-03-09T12:00:00Z',
    reported_by: ready.member.memberId,
    title: 'Left brake soft',
    state: 'grounding',
  });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const finding = (page: Page, registration: string, rule: string) =>
  page.locator(`[data-registration=${registration}] [data-rule="${rule}"]`);

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a finding opens, by keyboard too, to what was read, counted and written', async () => {
    const who = await pilot(api, ready, `Asks why on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport });
    await ask(page, '13:00', '15:00');
    expect(await page.locator('.command').innerText()).toBe(
      `${who.name} is pilot in command: the member flies without an instructor.`,
    );

    const grounded = finding(page, 'NX102B', 'squawk.grounding');
    await grounded.locator('.why > summary').focus();
    await page.keyboard.press('Enter');
    const why = grounded.locator('.derivation');
    await why.waitFor();
    expect(await why.locator('.counted').innerText()).toContain('Left brake soft');
    // Reported at noon UTC: seven in the morning where the club is, whatever the phone's zone.
    expect(await why.locator('.counted time').first().innerText()).toBe('9 Mar 2026, 07:00');
    expect(await why.locator('.taken').innerText()).toMatch(/^not met Grounded by "Left brake soft"/);
    await why.getByText('The other ways it could have gone').click();
    expect(await why.locator('.others li').first().innerText()).toMatch(/^met No open squawk/);
    expect(await why.innerText()).toContain('14 CFR 91.3(a), 91.7');

    const free = page.locator('[data-registration=NX101B]');
    await free.getByText(/rules met/).click();
    const recency = finding(page, 'NX101B', 'recency.passengers.day');
    await recency.locator('.why > summary').click();
    await recency.locator('.derivation').waitFor();
    const told = await recency.locator('.derivation').innerText();
    expect(told).toContain('counted: 3 take-offs, 3 landings');
    expect(told).toContain('90 days');
    // Good through 21 May: a flight of two hours leaves before ten in the evening.
    expect(told).toMatch(/Changes for a departure from Thu,? 21 May, 22:00/);
    expect(await recency.locator('time[datetime="2026-05-21"]').first().innerText()).toBe('21 May 2026');
    expect(told).not.toMatch(/\d{4}-\d{2}-\d{2}/);
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);

    // The rule book, and back to the answer as it was left.
    await recency.getByRole('link', { name: 'This rule in the rule book' }).click();
    const entry = page.locator('.shelf [data-rule="recency.passengers.day"] .derivation');
    await entry.waitFor();
    expect(await page.evaluate('document.activeElement.textContent')).toContain('Recent take-offs');
    expect(await entry.innerText()).toContain('needed to carry passengers');
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await page.goBack();
    expect(await recency.locator('.derivation').isVisible()).toBe(true);
    await page.context().close();
  }, 60_000);

  test('the rule book is found by words, by day and by address', async () => {
    const who = await pilot(api, ready, `Reads on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/rules#sport.limits' });
    const sport = page.locator('[data-rule="sport.limits"]');
    await sport.locator('.text.now').waitFor();
    expect(await sport.locator('.text').count()).toBe(2);
    expect(await sport.locator('.text.now').innerText()).toContain('22 Oct 2025');

    await page.getByLabel('As it stands on').fill('2025-10-21');
    await page.locator('.hint time[datetime="2025-10-21"]').waitFor();
    await sport.locator('.text.now', { hasText: 'until 22 Oct 2025' }).waitFor();

    await page.getByLabel('Find').fill('landings 61.57');
    expect(await page.getByRole('status').innerText()).toMatch(/^[23] of \d+ rules/);
    expect(await page.locator('.shelf [data-rule]').count()).toBeLessThan(4);
    await page.getByLabel('Find').fill('xyzzy');
    expect(await page.getByRole('status').innerText()).toMatch(/^0 of/);
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await page.context().close();
  }, 60_000);
});

test('dates are written as the reader’s English writes them', async () => {
  const who = await pilot(api, ready, 'Reads American');
  const page = await signedIn(browser, { api, ready, who, viewport: WINDOWS.desk, locale: 'en-US' });
  await ask(page, '13:00', '15:00');
  await page
    .locator('[data-registration=NX101B]')
    .getByText(/rules met/)
    .click();
  const says = await finding(page, 'NX101B', 'recency.passengers.day').locator('p').first().innerText();
  expect(says).toContain('good through May 21, 2026');
  expect(await page.locator('[data-registration=NX101B] .horizon').innerText()).not.toMatch(/[AP]M/);
  await page.context().close();
}, 60_000);
