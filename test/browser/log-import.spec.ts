/** A file of flights taken over on a phone and at the desk, in headless Chromium. */
import type { Browser, Locator, Page } from 'playwright-core';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  await ready.addAircraft('N-0001');
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const SHEET = [
  'Date;Off;On;From;To;Registration;Type;Total;Night;Landings;Remarks',
  '05.01.2026;14:05;15:10;XQHB;XQHB;N-0001;;1,1;0,0;3;Circuits',
  '13.01.2026;09:00;10:30;XQHB;ZZQQ;N-0001;;1,5;0,0;1;To the lake',
  '14.01.2026;09:00;10:30;ZZQQ;XQHB;N-555;Old Oak;1,5;0,0;1;Back again',
  '31.02.2026;09:00;10:30;ZZQQ;XQHB;N-0001;;1,5;0,0;1;A day that never came',
  ';;;;;;Total;5,6;0,0;6;',
].join('\r\n');
const file = (text: string) => ({ name: 'flights.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
/** A choice by what its label begins with. */
const choice = (part: Locator, label: RegExp) => part.locator('label', { hasText: label }).locator('select');
const section = (page: Page) => page.locator('.log-import');
const count = async (memberId: string): Promise<number> => {
  const [row] = await api.sql<{ n: number }>(
    'SELECT count(*)::int AS n FROM log_entries WHERE member_id = $1 AND import_id IS NOT NULL AND voided_at IS NULL',
    [memberId],
  );
  return row!.n;
};

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot looks at a file, says what it leaves open, takes it over, and takes it back', async () => {
    const who = await pilot(api, ready, `Imports on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/log' });
    page.setDefaultTimeout(30_000);
    const part = section(page);
    await part.getByLabel('File of flights').setInputFiles(file(SHEET));
    await part.getByText('Before its rows can be read:').waitFor();
    expect(await part.getByRole('alert').innerText()).toContain('by whose clock');
    expect(await choice(part, /^Dates/).inputValue()).toBe('day-first');
    expect(await choice(part, /^Decimals/).inputValue()).toBe('comma');
    expect(await part.getByLabel('Type is', { exact: true }).inputValue()).toBe('makeModel');
    await sound(page);

    await choice(part, /^Times are by/).selectOption('zone');
    await choice(part, /^Role/).selectOption('pilot-in-command');
    await part.getByLabel('I handled the controls alone').check();
    await part.getByRole('button', { name: 'Read it again like this' }).click();
    await part.getByText('2 of 5 rows would be written').waitFor();
    expect(await part.locator('.what-comes .bad').innerText()).toContain('is no date of the calendar');
    expect(await part.getByRole('button', { name: 'Take 2 flights over' }).isDisabled()).toBe(true);
    await sound(page);

    await part.getByLabel('Old Oak is', { exact: true }).selectOption('airplane single-engine-land');
    await part.getByLabel('Old Oak has a tailwheel').check();
    await part.getByRole('button', { name: 'Read it again like this' }).click();
    await part.getByText('3 of 5 rows would be written').waitFor();
    await part.getByLabel('Leave out what cannot be read').check();
    const take = part.getByRole('button', { name: 'Take 3 flights over' });
    await part.locator('.what-comes button.main:enabled').waitFor();
    expect(await count(who.memberId)).toBe(0);
    await sound(page);
    await take.focus();
    await page.keyboard.press('Enter');
    await part.getByText('Taken over: 3 flights from 2026-01-05 to 2026-01-14.').waitFor();
    expect(await count(who.memberId)).toBe(3);

    await part.getByLabel('File of flights').setInputFiles(file(SHEET));
    await part.getByText('Read as the last file with the same headings was.').waitFor();
    await part.getByText('0 of 5 rows would be written').waitFor();
    await sound(page);
    await part.getByRole('button', { name: /^Take back/ }).click();
    await part.getByRole('button', { name: 'Take them back' }).click();
    await part.getByText('; taken back').waitFor();
    expect(await count(who.memberId)).toBe(0);
    await page.context().close();
  }, 180_000);
});
