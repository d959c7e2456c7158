/** Rates, the charge of a flight, the statement and its file, as treasurer and as member, in headless Chromium. */
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword, type Viewport } from './chromium.js';

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];
let api: Api;
let ready: ReadyClub;
let treasurer: Session;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});
beforeEach(async () => {
  ready = await readyClub(api);
  treasurer = await withPassword(api, await ready.club.signInAs('administrator', { name: 'Tova Treasurer' }));
}, 60_000);

/** A flight that is back and not charged, since nothing said what an hour costs. */
async function flown(who: Session): Promise<string> {
  const { body } = await who
    .post('/bookings', { aircraftId: ready.aircraftId, ...tomorrow, purpose: 'solo', personsOnBoard: 1 })
    .set('Idempotency-Key', newId())
    .expect(201);
  const { id } = body as { id: string };
  await api.sql("UPDATE bookings SET status = 'returned' WHERE id = $1", [id]);
  return id;
}
const open = (who: Session, viewport: Viewport, at: string) =>
  signedIn(browser, { api, ready, who, viewport, at });

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a treasurer sets a rate, charges a flight and enters a receipt; the member reads and saves the statement', async () => {
    const who = await pilot(api, ready, `Payer on the ${name}`);
    await flown(who);
    const desk = await open(treasurer, viewport, '/charges');
    desk.setDefaultTimeout(60_000);
    const rate = desk.locator('[data-rate=NX101B]');
    await rate.getByText('no rate').click();
    await rate.getByLabel('From').fill('2026-01-01');
    await rate.getByLabel(/^For an hour/).fill('145.05');
    await rate.getByLabel(/US gal$/).fill('6.00');
    await sound(desk);
    await rate.getByRole('button', { name: 'Set this rate' }).click();
    await rate.getByText('(holds today)').waitFor();
    expect(await rate.locator('summary').innerText()).toContain('145.05 wet, by Hobbs');

    await desk.getByText(`NX101B, Payer on the ${name}`).click();
    await desk.getByLabel('Hobbs ran, h').fill('1.3');
    await desk.getByLabel('Tachometer ran, h').fill('1.1');
    await sound(desk);
    if (PICTURES) await desk.screenshot({ path: `${PICTURES}/charges-${name}.png`, fullPage: true });
    await desk.getByRole('button', { name: 'Charge it' }).click();
    await desk.getByText('Every flight that came back is charged.').waitFor();
    await desk.getByRole('link', { name: `Payer on the ${name}` }).click();
    await desk.getByLabel(/^Amount/).fill('100');
    await desk.getByLabel('Note; the member reads it').fill('Bank transfer');
    await desk.getByRole('button', { name: 'Enter it' }).click();
    await desk.getByText('Bank transfer').waitFor();
    await sound(desk);
    await desk.context().close();

    // 1.3 h at 145.05 is 188.565, rounded half up once (worked by hand); 100 of it came in.
    const page = await open(who, viewport, '/account');
    page.setDefaultTimeout(60_000);
    await page.locator('[data-kind=receipt]').waitFor();
    expect(await page.locator('[data-kind=flight] .money').first().innerText()).toContain('188.57');
    expect(await page.locator('.stands').innerText()).toContain('88.57');
    expect(await page.getByRole('button', { name: 'Enter it' }).count()).toBe(0);
    await sound(page);
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/account-${name}.png`, fullPage: true });
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV' }).click(),
    ]);
    expect(file.suggestedFilename()).toMatch(/^statement-.*\.csv$/);
    const text = readFileSync(await file.path(), 'utf8');
    expect(text).toContain('188.57');
    expect(text).toContain('Bank transfer');
    await page.context().close();
  }, 180_000);
});
