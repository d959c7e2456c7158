/** A headless Chromium in front of the service, and what the browser specs do with it again and again. */
import { existsSync, readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { chromium, type Browser, type Page } from 'playwright-core';
import { hashPassword } from '../../src/accounts/passwords.js';
import { NOW, type Api } from '../support/api.js';
import type { ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
];
const CHROMIUM = [process.env['CHROMIUM_PATH'], ...PLACES].find((path) => path && existsSync(path));
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

export const PASSWORD = 'a quiet grass strip';
/** A phone in the hand, a screen on the desk. */
export const WINDOWS = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } };
export type Viewport = { width: number; height: number };

export async function launch(): Promise<Browser> {
  if (!CHROMIUM)
    throw new Error('No Chromium: run node test/browser/ensure-chromium.mjs, or set CHROMIUM_PATH');
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-dev-shm-usage',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
}

export const addressOf = (api: Api): string =>
  `http://127.0.0.1:${(api.app.getHttpServer().address() as AddressInfo).port}`;

/** A current pilot with a password. */
export async function pilot(api: Api, ready: ReadyClub, name: string): Promise<Session> {
  const session = await ready.club.signInAs('member', { name });
  await ready.makePilot(session.memberId);
  return withPassword(api, session);
}

/** Lets a person of the club sign in on the page. */
export async function withPassword(api: Api, session: Session): Promise<Session> {
  const hash = await hashPassword(PASSWORD);
  await api.sql('UPDATE accounts SET password_hash = $2 WHERE member_id = $1', [session.memberId, hash]);
  return session;
}

/** Opens the page at an address and signs in; the phone stands in another zone than the club. */
export async function signedIn(
  browser: Browser,
  of: { api: Api; ready: ReadyClub; who: Session; viewport: Viewport; at?: string; locale?: string },
): Promise<Page> {
  const context = await browser.newContext({
    viewport: of.viewport,
    timezoneId: 'Asia/Tokyo',
    locale: of.locale ?? 'en-GB',
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.clock.setFixedTime(NOW);
  await page.goto(addressOf(of.api) + (of.at ?? '/'));
  await page.getByLabel('Club').fill(of.ready.club.slug);
  await page.getByLabel('E-mail').fill(of.who.email);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('.top').waitFor();
  return page;
}

export async function ask(page: Page, from: string, to: string): Promise<void> {
  await page.getByLabel('Leaving at').fill(from);
  await page.getByLabel('Back at').fill(to);
  await page.getByRole('button', { name: 'Ask the club' }).click();
  await page.locator('.aircraft').first().waitFor();
}

/** What axe finds wrong with the page as it stands. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations: found } = (await page.evaluate('axe.run()')) as {
    violations: { id: string; nodes: { target: string[] }[] }[];
  };
  return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

/** Pixels by which the page is wider than the window. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  ) as Promise<number>;

/** Holds the page as it stands to axe, and to the window's width. */
export async function sound(page: Page): Promise<void> {
  expect(await violations(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
}
