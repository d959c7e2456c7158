/** "When does it work?" on the first page: drawn, walked with the keyboard, read in words, put into the flight. */
import type { Browser, Locator, Page } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, overflow, pilot, signedIn, violations, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const row = insertInto(api.sql, ready.club.clubId);
  const grounded = await ready.addAircraft('NX102B');
  await row('squawks', {
    ...{ id: newId(), aircraft_id: grounded, reported_at: '2026-03-09T12:00:00Z' },
    ...{ reported_by: ready.member.memberId, title: 'Left brake soft', state: 'grounding' },
  });
  // The club itself has the only other aircraft on 10 and 11 March until two in the afternoon.
  for (const during of [
    '[2026-03-10T14:00:00Z,2026-03-10T23:59:00Z)',
    '[2026-03-11T11:00:00Z,2026-03-11T19:00:00Z)',
  ])
    await row('bookings', {
      ...{
        id: newId(),
        kind: 'club',
        aircraft_id: ready.aircraftId,
        member_id: ready.member.memberId,
        during,
      },
      ...{ expected_tenths: 0, request: '{}' },
    });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const look = async (page: Page, span: string): Promise<Locator> => {
  await page.getByRole('button', { name: span, exact: true }).click();
  await page.locator('.when [aria-pressed=true]', { hasText: span }).waitFor();
  const lane = page.locator('.lane[data-registration=NX101B]');
  await lane.locator('.carpet').waitFor();
  return lane;
};

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('the days to come are drawn, said in words and walked by key', async () => {
    const who = await pilot(api, ready, `Looks on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport });
    const lane = await look(page, '30 days');
    expect(await page.locator('.lane').count()).toBe(2);
    // The aircraft that opens first comes first; the grounded one says so.
    expect(await page.locator('.lane').last().innerText()).toMatch(/NX102B[^]*Not in these days/);

    const field = lane.locator('.field');
    await field.focus();
    const said = () => field.getAttribute('aria-valuetext');
    expect(await said()).toMatch(/^Tue,? 10 Mar 10:00 to .*: No; in the way: Aircraft availability/);
    const count = Number(await field.getAttribute('aria-valuemax'));
    await page.keyboard.press('End');
    expect(await field.getAttribute('aria-valuenow')).toBe(`${count}`);
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    expect(await said()).toContain('changed here: ');
    expect(await lane.locator('.step-detail').innerText()).toContain('What changed where it begins: ');
    await page.keyboard.press('PageDown');
    expect(await said()).toMatch(/11 Mar/);

    await lane.getByText('In words, day by day').click();
    const words = await lane.locator('.stretches').innerText();
    expect(words).toMatch(/Thu,? 12 Mar to .*, every day/);
    expect(words).toMatch(/Yes, if: 0\d:\d\d to 1\d:\d\d; by the last day/);
    expect(words).toMatch(/With an instructor: the rest of the day\. In the way: Recent night take-offs/);
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);

    // Five answers' patterns differ in more than colour: each has a shape of its own in its tile.
    const tiles = await page
      .locator('.when-patterns pattern')
      .evaluateAll((all) =>
        (all as unknown as { innerHTML: string }[]).map((one) => one.innerHTML.replace(/class="[^"]*"/g, '')),
      );
    expect(new Set(tiles).size).toBe(5);

    for (const span of ['7 days', 'a year']) {
      await look(page, span);
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBe(0);
    }
    await page.context().close();
  }, 60_000);

  test('the first that works goes into the flight, which the club then grants', async () => {
    const who = await pilot(api, ready, `Takes on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport });
    await look(page, '7 days');
    // Free from 18:59 on the tenth, but night falls for passengers before the flight is back; then from 14:00 on the eleventh.
    const first = page.locator('.first button');
    expect(await first.innerText()).toMatch(/Wed,? 11 Mar 14:00 to 16:00 in NX101B/);
    await first.click();
    expect(await page.getByLabel('Day', { exact: true }).inputValue()).toBe('2026-03-11');
    expect(await page.getByLabel('Leaving at').inputValue()).toBe('14:00');
    expect(await page.getByLabel('Back at').inputValue()).toBe('16:00');
    expect(await page.locator('.when').getByRole('status').innerText()).toContain('is in the flight above');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Ask the club');
    await page.keyboard.press('Enter');
    const answer = page.locator('.aircraft[data-registration=NX101B]');
    await answer.waitFor();
    expect(await answer.getAttribute('data-answer')).toMatch(/^yes/);
    await page.context().close();
  }, 60_000);
});

test('a flight that was changed since says so, and a problem is told', async () => {
  const who = await pilot(api, ready, 'Changes the flight');
  const page = await signedIn(browser, { api, ready, who, viewport: WINDOWS.desk });
  await look(page, '7 days');
  expect(await page.locator('.stale').count()).toBe(0);
  // Another time of the same flight is the same question; another length is not.
  await page.getByLabel('Leaving at').fill('09:00');
  await page.getByLabel('Back at').fill('11:00');
  expect(await page.locator('.stale').count()).toBe(0);
  await page.getByLabel('Back at').fill('12:00');
  await page.locator('.stale').waitFor();
  await page.getByRole('button', { name: 'Look again' }).click();
  await page.locator('.stale').waitFor({ state: 'detached' });
  await page.getByLabel('Back at').fill('08:00');
  await page.getByRole('button', { name: '30 days', exact: true }).click();
  expect(await page.locator('.when').getByRole('alert').innerText()).toContain('Be back after you leave');
  await page.getByRole('button', { name: 'Close' }).click();
  expect(await page.locator('.lane').count()).toBe(0);
  await page.context().close();
}, 60_000);
