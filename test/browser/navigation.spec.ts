/** The links between pages, by role, on a phone and at the desk, with the keyboard too, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let instructor: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  instructor = await withPassword(api, await ready.club.signInAs('instructor', { name: 'Ina Structor' }));
  await withPassword(api, ready.member);
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env['BELLCRANK_TEST_PICTURES'];
  if (folder) await page.screenshot({ path: `${folder}/navigation-${name}.png` });
};

/** Waits outside the page: its content security policy refuses a predicate that is evaluated there again and again. */
const titled = async (page: Page, title: string): Promise<void> => {
  const giveUpAfter = 200;
  for (let tries = 0; tries < giveUpAfter && (await page.title()) !== title; tries += 1)
    await page.waitForTimeout(50);
  expect(await page.title()).toBe(title);
};

test('at the desk every page is one step away, in three rows at most', async () => {
  const page = await signedIn(browser, { api, ready, who: instructor, viewport: WINDOWS.desk });
  const links = page.getByRole('navigation', { name: 'Pages' });
  expect(await links.getByRole('group', { name: 'Learn and teach' }).count()).toBe(1);
  expect(await page.getByRole('button', { name: /all pages/ }).isVisible()).toBe(false);
  expect((await page.locator('.top').boundingBox())!.height).toBeLessThan(150);
  await sound(page);
  await look(page, 'desk');
  for (const link of await links.getByRole('link').all()) {
    const name = await link.innerText();
    await link.click();
    await titled(page, `${name} · Bellcrank`);
    expect(await links.locator('[aria-current=page]').allInnerTexts()).toEqual([name]);
    await page.locator('main:visible').first().waitFor();
  }
  await page.context().close();
}, 60_000);

test('on a phone one button opens them; Escape and a choice close them', async () => {
  const page = await signedIn(browser, { api, ready, who: ready.member, viewport: WINDOWS.phone });
  const button = page.getByRole('button', { name: 'Ask, all pages' });
  const links = page.getByRole('navigation', { name: 'Pages' });
  expect(await links.isVisible()).toBe(false);
  await button.focus();
  await page.keyboard.press('Enter');
  expect(await button.getAttribute('aria-expanded')).toBe('true');
  expect(await links.getByRole('group').allInnerTexts()).toContainEqual(expect.stringMatching(/^Learn\n/));
  await sound(page);
  await look(page, 'phone');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  expect(await links.isVisible()).toBe(false);
  expect(await page.evaluate("document.activeElement.getAttribute('aria-controls')")).toBe('places');
  await button.click();
  await links.getByRole('link', { name: 'Practice' }).click();
  await page.getByRole('button', { name: 'Practice, all pages' }).waitFor();
  expect(await links.isVisible()).toBe(false);
  await page.context().close();
}, 60_000);

test('the keyboard may skip the links', async () => {
  const page = await signedIn(browser, {
    api,
    ready,
    who: ready.member,
    viewport: WINDOWS.desk,
    at: '/rules',
  });
  await page.locator('.rule-book').waitFor();
  await page.getByRole('button', { name: 'Skip to the page' }).focus();
  await page.keyboard.press('Enter');
  expect(await page.evaluate("document.activeElement.matches('main.rule-book')")).toBe(true);
  await page.context().close();
}, 60_000);
