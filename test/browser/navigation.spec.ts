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

/** Every link, by the menu it is in; what is always in sight is in ''. */
async function allLinks(page: Page): Promise<{ menu: string; name: string }[]> {
  const links = page.getByRole('navigation', { name: 'Pages' });
  const namesIn = async (menu: string) =>
    (await links.getByRole('link').allInnerTexts()).map((name) => ({ menu, name }));
  const found = await namesIn('');
  const inSight = found.length;
  for (const menu of await links.getByRole('button').allInnerTexts()) {
    await links.getByRole('button', { name: menu }).click();
    const now = await namesIn(menu);
    found.push(...now.filter(({ name }) => !found.slice(0, inSight).some((one) => one.name === name)));
    await page.keyboard.press('Escape');
  }
  return found;
}

test('at the desk one row: flying in sight, the rest in menus, each page two presses away at most', async () => {
  const page = await signedIn(browser, { api, ready, who: instructor, viewport: WINDOWS.desk });
  const links = page.getByRole('navigation', { name: 'Pages' });
  expect((await page.locator('.top').boundingBox())!.height).toBeLessThan(70);
  await look(page, 'desk');
  const found = await allLinks(page);
  expect(found.slice(0, 5).map(({ name }) => name)).toEqual([
    'Ask',
    'My flights',
    'Day',
    'Out now',
    'Standby',
  ]);
  expect(found).toContainEqual({ menu: 'Teaching', name: 'Students' });
  expect(found).toContainEqual({ menu: 'Ina Structor', name: 'Account' });
  for (const { menu, name } of found) {
    const button = links.getByRole('button', { name: menu });
    if (menu !== '') await button.click();
    await links.getByRole('link', { name, exact: true }).click();
    await titled(page, `${name} · Bellcrank`);
    if (menu !== '') {
      expect(await button.getAttribute('aria-expanded')).toBe('false');
      expect(await button.getAttribute('aria-current')).toBe('true');
    }
    expect(await links.locator('[aria-current=page]').allTextContents()).toEqual([name]);
    await page.locator('main:visible').first().waitFor();
  }
  await page.context().close();
}, 60_000);

test('a menu opens and closes by keyboard, and closes when one is elsewhere', async () => {
  const page = await signedIn(browser, { api, ready, who: instructor, viewport: WINDOWS.desk });
  const links = page.getByRole('navigation', { name: 'Pages' });
  const fleet = links.getByRole('button', { name: 'Fleet' });
  const focused = () => page.evaluate('document.activeElement.textContent') as Promise<string>;
  const expanded = () => fleet.getAttribute('aria-expanded');
  await fleet.focus();
  await page.keyboard.press('Enter');
  expect(await expanded()).toBe('true');
  await sound(page);
  await look(page, 'desk-menu');
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('Hours left');
  await page.keyboard.press('ArrowDown');
  await page.waitForTimeout(50);
  expect(await focused()).toBe('Squawks');
  await page.keyboard.press('Escape');
  expect(await expanded()).toBe('false');
  expect(await focused()).toBe('Fleet');

  await page.keyboard.press('ArrowDown');
  await page.waitForTimeout(50);
  expect([await expanded(), await focused()]).toEqual(['true', 'Hours left']);
  // On past the last link, or a press anywhere else.
  for (const next of ['Squawks', 'Shop']) {
    await page.keyboard.press('Tab');
    expect(await focused()).toBe(next);
  }
  await page.keyboard.press('Tab');
  expect(await expanded()).toBe('false');
  await fleet.click();
  await links.locator('button[aria-expanded=true]').waitFor();
  await page.mouse.click(600, 700);
  await links.locator('button[aria-expanded=true]').waitFor({ state: 'detached' });
  // One at a time.
  await fleet.click();
  await links.getByRole('button', { name: 'My record' }).click();
  expect(await links.locator('button[aria-expanded=true]').allInnerTexts()).toEqual(['My record']);
  await page.context().close();
}, 60_000);

test('on a phone flying is in sight and one button opens the rest; Escape and a choice close it', async () => {
  const page = await signedIn(browser, { api, ready, who: ready.member, viewport: WINDOWS.phone });
  const links = page.getByRole('navigation', { name: 'Pages' });
  const button = links.getByRole('button', { name: 'More' });
  expect(await links.getByRole('link').allInnerTexts()).toEqual(['Ask', 'My flights', 'Day', 'Out now']);
  expect((await page.locator('.top').boundingBox())!.height).toBeLessThan(120);
  await look(page, 'phone');
  await button.focus();
  await page.keyboard.press('Enter');
  expect(await button.getAttribute('aria-expanded')).toBe('true');
  expect(await links.getByRole('group', { name: 'My record' }).getByRole('link').allInnerTexts()).toEqual([
    'Log',
    'Papers',
    'Practice',
    'Checkouts',
    'Limits',
  ]);
  await sound(page);
  await look(page, 'phone-more');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  expect(await links.getByRole('group').count()).toBe(0);
  expect(await page.evaluate("document.activeElement.getAttribute('aria-controls')")).toBe('places');
  await button.click();
  await links.getByRole('link', { name: 'Practice' }).click();
  await titled(page, 'Practice · Bellcrank');
  expect(await links.getByRole('group').count()).toBe(0);
  await page.setViewportSize({ width: 360, height: 740 });
  await sound(page);
  await page.context().close();
}, 60_000);

test('a member finds the booked flights on a page of their own', async () => {
  const page = await signedIn(browser, {
    api,
    ready,
    who: ready.member,
    viewport: WINDOWS.phone,
    at: '/mine',
  });
  await page.getByRole('main', { name: 'My flights' }).getByText('Nothing booked.').waitFor();
  await sound(page);
  await page.context().close();
}, 60_000);

test('an address without its aircraft, or cut off, leads to the page it belongs to', async () => {
  const coordinator = await withPassword(api, await ready.club.signInAs('maintenance-coordinator'));
  const of = { api, ready, who: coordinator, viewport: WINDOWS.desk };
  for (const at of ['/status', '/handbook', '/equipment', '/status#%E2%82']) {
    const page = await signedIn(browser, { ...of, at });
    await page.getByRole('heading', { name: 'Hours and days left' }).waitFor();
    await page.context().close();
  }
}, 120_000);

test('signing out is under one’s name', async () => {
  const page = await signedIn(browser, { api, ready, who: instructor, viewport: WINDOWS.desk });
  await page.getByRole('button', { name: 'Ina Structor' }).click();
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('button', { name: 'Sign in' }).waitFor();
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
