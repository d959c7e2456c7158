/** The day of the fleet, standby, teaching hours and the best fit, on a phone and at the desk, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { passOn } from '../../src/bookings/standby/pass-on.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];
let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  browser = await launch();
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});
beforeEach(async () => {
  ready = await readyClub(api);
}, 60_000);

const picture = async (page: Page, name: string): Promise<void> => {
  if (PICTURES) await page.screenshot({ path: `${PICTURES}/${name}.png`, fullPage: true });
};
/** From 13:00 to 15:00 in Chicago. */
const SLOT = { departs: '2026-03-11T18:00:00Z', arrives: '2026-03-11T20:00:00Z' };
const book = async (who: Session) =>
  (
    await who
      .post('/bookings', { ...SLOT, aircraftId: ready.aircraftId, purpose: 'solo', personsOnBoard: 1 })
      .set('Idempotency-Key', newId())
      .expect(201)
  ).body as { id: string };

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot sees the day, starts a question from free time, and waits for a slot until it is offered', async () => {
    const booking = await book(ready.member);
    const who = await pilot(api, ready, `Waits on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/day#2026-03-11' });
    page.setDefaultTimeout(60_000);
    const lane = page.locator('[data-registration="NX101B"]');
    await lane.getByRole('button', { name: /Robin Member, 13:00 to 15:00/ }).waitFor();
    await lane.locator('.answers rect').first().waitFor({ state: 'attached' });
    await lane.getByText('NX101B in words').click();
    const words = await lane.locator('.in-words').innerText();
    expect(words).toMatch(/00:00 to 13:00: free\s+13:00 to 15:00: Robin Member\s+15:00 to 24:00: free/);
    expect(words).toMatch(/Leaving .*Yes, if/);
    await sound(page);
    await picture(page, `day-${name}`);

    // By the keyboard: free time from its beginning, for as long as the flight of the form.
    await lane.getByRole('button', { name: /is free from 15:00 to 24:00/ }).press('Enter');
    await page.getByText('Asked of NX101B alone.').waitFor();
    const form = page.locator('form.ask');
    expect(await form.locator('input[type="date"]').inputValue()).toBe('2026-03-11');
    expect(await form.locator('input[type="time"]').first().inputValue()).toBe('15:00');
    await page.getByRole('button', { name: 'Ask the whole club' }).click();

    await page.goBack();
    await lane.getByRole('button', { name: /Robin Member.*Wait for this slot/ }).click();
    await page.getByRole('heading', { name: 'Standby' }).waitFor();
    await page.getByLabel('Aircraft').locator('option', { hasText: 'NX101B' }).waitFor({ state: 'attached' });
    expect(await page.locator('.standby input[type="time"]').first().inputValue()).toBe('13:00');
    await page.getByRole('button', { name: 'Go on standby' }).click();
    await page.getByText('Nobody asked before you.').waitFor();
    await sound(page);

    await ready.member.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"1"').expect(200);
    await passOn(api.app.get(TenantDb), ready.club.clubId, { now: api.clock.now(), note: () => undefined });
    await page.reload();
    await page.getByText(/is offered to you until .*, and kept for you until then/).waitFor();
    await sound(page);
    await picture(page, `standby-${name}`);
    await page.getByRole('button', { name: 'Take it' }).click();
    await page.getByText(/^NX101B is booked for/).waitFor();
    const { body } = await who.get(`/bookings?memberId=${who.memberId}`).expect(200);
    expect(body.items).toEqual([expect.objectContaining({ ...SLOT, status: 'booked' })]);
    await page.context().close();
  }, 300_000);

  test('the best fit is booked and explained; an instructor keeps hours', async () => {
    const small = await ready.addAircraft('NX202B');
    await api.sql('UPDATE aircraft SET seats = 2, occupants_certificated = 2 WHERE id = $1', [small]);
    const who = await withPassword(
      api,
      await ready.club.signInAs(['member', 'instructor'], { name: `Teaches on the ${name}` }),
    );
    await ready.makePilot(who.memberId);
    const page = await signedIn(browser, { api, ready, who, viewport });
    page.setDefaultTimeout(60_000);
    await page.getByLabel('What kind of flight').selectOption('solo');
    await page.locator('form.ask button.main').click();
    await page.getByRole('button', { name: 'Book the one that fits best' }).click();
    await page.getByText('Why this one').click();
    expect(await page.locator('.book-best').innerText()).toMatch(
      /NX202B is booked.*NX202B.*1 empty seat \(10\).*NX101B.*3 empty seats \(30\)/s,
    );
    await sound(page);
    await picture(page, `best-${name}`);

    await page.goto(page.url().replace(/\/$/, '/teaching'));
    await page.getByText('You keep no hours.').waitFor();
    await page.getByRole('button', { name: 'Add' }).click();
    await page.getByText('Every Monday: 09:00 to 17:00').waitFor();
    await sound(page);
    await picture(page, `teaching-${name}`);
    await page.getByRole('button', { name: 'Take away: Every Monday' }).click();
    await page.getByText('You keep no hours.').waitFor();
    await page.context().close();
  }, 300_000);
});
