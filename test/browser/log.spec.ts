/** The log on a phone and at the desk, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { ask, launch, pilot, signedIn, sound, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

/** Waits until the list holds so many entries. */
async function hasEntries(page: Page, count: number): Promise<void> {
  const entries = page.locator('.entries > li');
  for (let tries = 0; tries < 600 && (await entries.count()) !== count; tries += 1)
    await page.waitForTimeout(100);
  expect(await entries.count()).toBe(count);
}

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot logs a flight, sees what is flagged, mends and voids it, and opens what was counted', async () => {
    const who = await pilot(api, ready, `Logs on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/log' });
    page.setDefaultTimeout(60_000);
    const entries = page.locator('.entries > li');
    await entries.first().waitFor();
    await page.locator('.log table').waitFor();
    // 14 CFR 61.57(a): landings of 20 February count up to 21 May.
    const day = page.locator('.lapses [data-rule="recency.passengers.day"]');
    await day.first().waitFor();
    expect(await day.first().innerText()).toMatch(/22 May.*in 73 days/s);
    await sound(page);

    await page.getByRole('button', { name: 'Log a flight' }).click();
    const form = page.locator('form', { has: page.getByRole('button', { name: 'Log it' }) });
    await form.getByLabel('Day').fill('2026-03-09');
    await form.getByLabel('Off blocks').fill('10:00');
    await form.getByLabel('On blocks').fill('11:30');
    await form.getByLabel('From').fill('XQHB');
    await form.getByLabel('To', { exact: true }).fill('XQHB');
    await form.getByLabel('Which aircraft').fill('Plover 2, a friend’s');
    await form.getByLabel('Total, h').fill('1.5');
    await form.getByLabel('Night, h').fill('1.2');
    await page.getByRole('button', { name: 'Log it' }).click();
    await page.getByText('Logged.').waitFor();
    const flag = entries.first().locator('.values .flagged');
    await flag.waitFor();
    expect(await flag.innerText()).toMatch(
      /Night\s+1\.2 h\s+⚑ worked out 0\.0 h\. Of this flight at most 0\.0 h/,
    );
    await page.getByText('Narrow the list').click();
    await page.getByLabel('only flagged ones').check();
    await hasEntries(page, 1);
    await entries.first().locator('summary').click();
    await sound(page);

    await page.getByRole('button', { name: /^Change XQHB/ }).click();
    const change = page.locator('form', { has: page.getByRole('button', { name: 'Save the change' }) });
    await change.getByLabel('Night, h').fill('');
    await change.getByRole('button', { name: 'Save the change' }).click();
    await page.getByText('No flight like that is in the log.').waitFor();
    await page.getByLabel('only flagged ones').uncheck();
    await hasEntries(page, 2);
    const [stored] = await api.sql<{ night_tenths: number; aircraft_words: string; row_version: number }>(
      "SELECT night_tenths, aircraft_words, row_version FROM log_entries WHERE member_id = $1 AND flown_on = '2026-03-09'",
      [who.memberId],
    );
    expect(stored).toEqual({ night_tenths: 0, aircraft_words: 'Plover 2, a friend’s', row_version: 2 });
    await entries.first().getByRole('button', { name: /^Void/ }).click();
    await entries
      .first()
      .getByRole('button', { name: /^Take it out of every count/ })
      .click();
    await hasEntries(page, 1);

    await page.locator('.lapses [data-rule="recency.passengers.day"] a').first().click();
    const counted = page.getByRole('heading', { name: 'What was counted' });
    await counted.waitFor();
    expect(await page.evaluate('document.activeElement.id')).toBe('entries');
    await hasEntries(page, 1);
    expect(await entries.first().innerText()).toContain('20 Feb');
    await page.context().close();
  }, 240_000);

  test('asks what is needed before a day, and opens counts from an answer', async () => {
    const who = await pilot(api, ready, `Asks on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/log' });
    page.setDefaultTimeout(60_000);
    await page.getByLabel('Day of the flight').fill('2026-06-14');
    await page.getByLabel('Passengers', { exact: true }).fill('3');
    await page.getByLabel('at night, at 22:30').check();
    await page.getByRole('button', { name: 'What do I need?' }).click();
    await page.locator('.needed .plan').first().waitFor();
    // 14 CFR 61.57(b): three take-offs and landings to a full stop by night, none of which is on record.
    expect(await page.locator('.needed .plan').first().innerText()).toMatch(/night/i);
    await sound(page);

    await page.goto(page.url().replace(/\/log.*/, '/'));
    await ask(page, '12:00', '13:00');
    const finding = page.locator('[data-rule="recency.passengers.day"]').first();
    await page.locator('details.met summary').first().click();
    await finding.getByRole('link', { name: 'Open what was counted in the log' }).click();
    await page.getByText('What was counted').waitFor();
    const entries = page.locator('.entries > li');
    await hasEntries(page, 1);
    expect(await entries.first().innerText()).toContain('20 Feb');
    await page.context().close();
  }, 240_000);
});
