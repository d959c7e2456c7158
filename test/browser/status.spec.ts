/** An aircraft's status in headless Chromium: read, of a past day, printed, taken away, and taken over from a file. */
import { readFileSync } from 'node:fs';
import type { Browser, Download, Page } from 'playwright-core';
import { hashPassword } from '../../src/accounts/passwords.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, overflow, PASSWORD, pilot, signedIn, violations, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let coordinator: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  coordinator = await ready.club.signInAs('maintenance-coordinator', { name: 'Cory Coordinates' });
  await api.sql('UPDATE accounts SET password_hash = $2 WHERE member_id = $1', [
    coordinator.memberId,
    await hashPassword(PASSWORD),
  ]);
  await ready.member
    .post(`/aircraft/${ready.aircraftId}/squawks`, { title: 'Landing light out' })
    .expect(201);
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const sound = async (page: Page): Promise<void> => {
  expect(await violations(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
};
const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env['BELLCRANK_TEST_PICTURES'];
  if (folder) await page.screenshot({ path: `${folder}/status-${name}.png`, fullPage: true });
};
const taken = async (page: Page, button: string): Promise<Download> => {
  const wait = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).click();
  return wait;
};

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('the coordinator goes to it, reads it as of a past day, and takes it away', async () => {
    const page = await signedIn(browser, { api, ready, who: coordinator, viewport, at: '/maintenance' });
    await page
      .locator('[data-registration=NX101B]')
      .getByRole('link', { name: 'Status on one page' })
      .click();
    const sheet = page.locator('.status .sheet');
    await sheet.waitFor();
    const annual = sheet.getByRole('row').filter({ hasText: 'Annual inspection' });
    expect(await annual.innerText()).toMatch(/5 Nov 2025, 1020\.0 h[\s\S]*30 Nov 2026[\s\S]*265 days/);
    expect(await sheet.innerText()).toContain('Printed by Cory Coordinates, 10 Mar 2026, 10:00');
    expect(await sheet.locator('.cautions').innerText()).toContain(
      'Squawks not yet judged by the coordinator: 1.',
    );
    expect(await sheet.innerText()).toContain('the maintenance records themselves decide');
    await sound(page);
    await look(page, name);

    expect((await taken(page, 'PDF')).suggestedFilename()).toBe('status-NX101B-2026-03-10.pdf');
    const json = await taken(page, 'JSON');
    const told = JSON.parse(readFileSync(await json.path(), 'utf8')) as { times: { totalH: number }[] };
    expect(told.times[0]!.totalH).toBe(1050);
    const csv = await taken(page, 'CSV');
    expect(readFileSync(await csv.path(), 'utf8')).toContain('item,annual,Annual inspection');

    await page.getByLabel('As of the end of').fill('2025-11-01');
    await page.getByText('This is the status of a past day').waitFor();
    expect(await annual.innerText()).toContain('Never, as far as the records go');
    expect(await sheet.innerText()).toContain('No reading of the inspection meter is on record');
    await sound(page);
    await page.context().close();
  }, 60_000);

  test('a file is looked at, mended, and taken over', async () => {
    const aircraftId = await ready.addAircraft(name === 'phone' ? 'NX301B' : 'NX302B');
    const at = `/status#${aircraftId}`;
    const page = await signedIn(browser, { api, ready, who: coordinator, viewport, at });
    await page.getByText('Take over an existing status').click();
    const rows = 'section,title,interval (h),last done,last done (h)\nitem,Oil change,50,01/02/2026,1040\n';
    await page.getByLabel('File').setInputFiles({
      ...{ name: 'status.csv', mimeType: 'text/csv' },
      buffer: Buffer.from(rows),
    });
    await page.getByRole('button', { name: 'What would be written?' }).click();
    const preview = page.locator('.import-preview');
    await preview.waitFor();
    expect(await preview.innerText()).toContain('can be read two ways');
    expect(await preview.getByRole('button', { name: 'Take it over' }).isDisabled()).toBe(true);
    await sound(page);
    await page.getByLabel('Dates').selectOption('day-first');
    await page.getByRole('button', { name: 'What would be written?' }).click();
    await preview.waitFor();
    expect(await preview.innerText()).toContain('last done 1 Feb 2026 at 1040.0 h');
    await preview.getByText('How the columns were read').click();
    expect(await preview.innerText()).toContain('interval_h');
    await sound(page);
    await look(page, `import-${name}`);
    await preview.getByRole('button', { name: 'Take it over' }).click();
    await page.getByText('Taken over: 1 new records').waitFor();
    const oil = page.locator('.sheet').getByRole('row').filter({ hasText: 'Oil change' });
    await oil.waitFor();
    // 1040.0 h and 50.0 h, with the meter at 1050.0 h.
    expect(await oil.innerText()).toMatch(/1090\.0 h[\s\S]*40\.0 h/);
    await page.context().close();
  }, 60_000);
});

test('on paper there are the facts, the cautions and who printed them, and nothing to press', async () => {
  const at = `/status#${ready.aircraftId}`;
  const page = await signedIn(browser, { api, ready, who: coordinator, viewport: WINDOWS.desk, at });
  await page.locator('.sheet').waitFor();
  await page.emulateMedia({ media: 'print' });
  const seen = await page.locator('body').innerText();
  for (const words of [
    'Status of NX101B',
    'Annual inspection',
    'Printed by Cory Coordinates',
    'not yet judged',
  ])
    expect(seen).toContain(words);
  expect(await page.locator('button:visible, input:visible, summary:visible, nav:visible').count()).toBe(0);
  expect(await violations(page)).toEqual([]);
  await look(page, 'print');
  const paper = await page.pdf({ format: 'Letter' });
  expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
  await page.context().close();
}, 60_000);

test('a member reads it and is offered no import', async () => {
  const who = await pilot(api, ready, 'Pat Pilot');
  const at = `/status#${ready.aircraftId}`;
  const page = await signedIn(browser, { api, ready, who, viewport: WINDOWS.phone, at });
  await page.locator('.sheet').waitFor();
  expect(await page.getByText('Take over an existing status').count()).toBe(0);
  await page.context().close();
}, 60_000);
