/** Limits beyond the law on a phone and at the desk, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

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

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot sets limits, takes a suggestion, and loosens them for tomorrow; an instructor sets a student’s', async () => {
    const who = await pilot(api, ready, `Limits on the ${name}`);
    const teacher = await withPassword(
      api,
      await ready.club.signInAs('instructor', { name: `Teaches on the ${name}` }),
    );
    await teacher
      .post(`/members/${who.memberId}/practice`, {
        ...{ flownOn: '2026-03-01', manoeuvre: 'normal_landing', crosswindKt: 9, toStandard: true },
      })
      .expect(201);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/practice' });
    page.setDefaultTimeout(30_000);
    await page.getByRole('link', { name: /^Limits for wind/ }).click();
    await page.getByText('No limits are set.').waitFor();
    await page.locator('[data-limit="crosswindKt"]').waitFor();
    await sound(page);

    await page.getByLabel('Wind, with gusts, at most, kt').fill('18');
    await page.getByLabel('Runway, at least, ft').fill('2500');
    await page
      .locator('label', { hasText: /^Flying at night/ })
      .locator('select')
      .selectOption('none');
    await page.getByRole('button', { name: 'Set the limits' }).click();
    await page.getByText('Set. What holds, and from when').waitFor();
    expect(await page.locator('.limits table').innerText()).toMatch(/at most 18 kt/);

    await page.getByRole('button', { name: 'Take it: Crosswind, at most 9 kt' }).click();
    await page.locator('.limits table', { hasText: 'at most 9 kt' }).waitFor();
    expect(await page.locator('[data-limit="crosswindKt"]').innerText()).toContain('As set.');
    expect(await page.getByLabel('Crosswind, at most, kt').inputValue()).toBe('9');

    await page.getByLabel('Wind, with gusts, at most, kt').fill('25');
    await page.getByRole('button', { name: 'Set the limits' }).click();
    await page.locator('.limits th', { hasText: 'from 11 Mar 2026' }).waitFor();
    const wind = page.locator('.limits tbody tr', { hasText: 'Wind, with gusts' });
    expect(await wind.locator('td').allInnerTexts()).toEqual(['at most 18 kt', 'at most 25 kt']);
    await sound(page);
    await page.context().close();

    const desk = await signedIn(browser, {
      ...{ api, ready, who: teacher, viewport },
      at: `/limits#${who.memberId}`,
    });
    desk.setDefaultTimeout(30_000);
    await desk.getByLabel('Crosswind, at most, kt').fill('5');
    await desk.getByLabel('Binding a rated pilot through').fill('2026-04-01');
    await desk.getByRole('button', { name: 'Set the limits' }).click();
    await desk.getByText('after that through').waitFor();
    expect(await desk.locator('.limits thead').innerText()).toContain('Instructor’s, since');
    await sound(desk);
    await desk.context().close();
  }, 180_000);
});
