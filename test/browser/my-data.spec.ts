/** Taking one's data out, and erasing a member, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let administrator: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  administrator = await withPassword(
    api,
    await ready.club.signInAs(['administrator'], { name: 'Ada Ministra' }),
  );
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env['BELLCRANK_TEST_PICTURES'];
  if (folder) await page.screenshot({ path: `${folder}/my-data-${name}.png`, fullPage: true });
};

test.each(Object.entries(WINDOWS))(
  'on a %s a member takes everything out; an administrator erases after typing the name',
  async (name, viewport) => {
    const called = `Leaves on the ${name}`;
    const who = await pilot(api, ready, called);
    const own = await signedIn(browser, { api, ready, who, viewport, at: '/my-data' });
    own.setDefaultTimeout(8000);
    expect(await own.getByLabel('Member').count()).toBe(0);
    const download = own.waitForEvent('download');
    await own.getByRole('button', { name: 'Take out everything on record about you' }).click();
    expect((await download).suggestedFilename()).toBe('my-record.json');
    await own.getByText('Flights in the log').waitFor();
    await sound(own);
    await own.context().close();

    const page = await signedIn(browser, { api, ready, who: administrator, viewport, at: '/my-data' });
    page.setDefaultTimeout(8000);
    const members = page.getByLabel('Member');
    expect(await members.locator('option').allInnerTexts()).not.toContain('Ada Ministra');
    await members.selectOption({ label: called });
    await page.getByLabel(/^Why/).fill('Asked in writing');
    await page.getByRole('button', { name: 'See what it would do' }).click();
    const would = page.getByRole('region', { name: `Erasing ${called} would` });
    await would.waitFor();
    expect(await would.innerText()).toMatch(/Flights in the log, without remarks \(\d+\)\./);
    await sound(page);
    await look(page, name);
    const erase = would.getByRole('button', { name: `Erase ${called}` });
    expect(await erase.isDisabled()).toBe(true);
    await would.getByLabel(/^Nothing brings it back/).fill('Somebody Else');
    expect(await erase.isDisabled()).toBe(true);
    await would.getByLabel(/^Nothing brings it back/).fill(called);
    await erase.click();
    await page.getByText(/^Erased\. In the club's records/).waitFor();
    const [row] = await api.sql<{ name: string }>('SELECT name FROM members WHERE id = $1', [who.memberId]);
    expect(row!.name).toMatch(/^Former member /);
    await sound(page);
    await page.context().close();
  },
  60_000,
);
