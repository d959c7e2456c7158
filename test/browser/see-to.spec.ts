/** What instructors and officers do with flights of others: another pilot at dispatch, a hand-over accepted, a rule set aside anew. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { bookToday } from '../api/flight-scene.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];
let api: Api;
let ready: ReadyClub;
let officer: Session;
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
  officer = await withPassword(api, await ready.club.signInAs('safety-officer', { name: 'Ola Officer' }));
}, 60_000);

const booking = async (id: string) =>
  (await officer.get(`/bookings/${id}`).expect(200)).body as {
    memberId: string;
    arrives: string;
    rowVersion: number;
  };

test.each(Object.entries(WINDOWS))(
  'on a %s: a flight taken over for somebody, and changed with a rule set aside',
  async (name, viewport) => {
    const to = await pilot(api, ready, 'Toni Taker');
    const { id, rowVersion } = (
      await ready.member
        .post('/bookings', { aircraftId: ready.aircraftId, ...tomorrow, purpose: 'solo', personsOnBoard: 1 })
        .set('Idempotency-Key', newId())
        .expect(201)
    ).body as { id: string; rowVersion: number };
    await ready.member
      .post(`/bookings/${id}/hand-over`, { toId: to.memberId })
      .set('If-Match', `"${rowVersion}"`)
      .expect(200);
    const page = await signedIn(browser, { api, ready, who: officer, viewport, at: '/see-to' });
    page.setDefaultTimeout(60_000);
    const offered = page.locator('[data-offered=NX101B]');
    await offered.getByText('Robin Member offers it to Toni Taker').waitFor();
    await sound(page);
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/see-to-${name}.png`, fullPage: true });
    await offered.getByRole('button', { name: 'Take it over for Toni Taker' }).click();
    await page.getByText('No flight is offered to anybody.').waitFor();
    expect((await booking(id)).memberId).toBe(to.memberId);

    // The club suspends the member: a longer flight needs an officer's reason, and without one stays as it was.
    await api.sql("UPDATE members SET standing = 'suspended', standing_since = '2026-03-01' WHERE id = $1", [
      to.memberId,
    ]);
    await page.getByLabel('Whose').selectOption({ label: 'Toni Taker' });
    const flight = page.locator('[data-booking=NX101B]');
    await flight.getByRole('button', { name: /^Change/ }).click();
    await flight.getByRole('button', { name: '30 min longer' }).click();
    await flight.getByRole('alert').waitFor();
    expect((await booking(id)).arrives).toBe(tomorrow.arrives);
    await flight.getByLabel(/^Set the club’s rules aside/).fill('Agreed with the board this morning');
    await sound(page);
    await flight.getByRole('button', { name: '30 min longer' }).click();
    await flight.getByRole('button', { name: /to 15:30/ }).waitFor();
    expect((await booking(id)).arrives).toBe('2026-03-11T20:30:00Z');
    expect(await api.sql('SELECT reason FROM overrides WHERE booking_id = $1', [id])).toEqual([
      { reason: 'Agreed with the board this morning' },
    ]);
    await page.context().close();
  },
  180_000,
);

test('an officer hands the aircraft out with another pilot, who is judged and flies', async () => {
  const id = await bookToday(ready);
  const other = await pilot(api, ready, 'Ollie Other');
  const page = await signedIn(browser, {
    api,
    ready,
    who: officer,
    viewport: WINDOWS.phone,
    at: `/flights#${id}`,
  });
  page.setDefaultTimeout(60_000);
  await page.getByLabel(/^Pilot/).selectOption({ label: 'Ollie Other' });
  await page.getByLabel('Fuel on board').fill('30');
  const meter = page.getByLabel('Tachometer shows');
  await meter.waitFor();
  await meter.fill('1050.0');
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  await sound(page);
  await page.getByRole('button', { name: 'Take the aircraft' }).click();
  await page.getByText(/Out since/).waitFor();
  const [out] = await api.sql<{ member_id: string }>(
    "SELECT member_id FROM bookings WHERE club_id = $1 AND status = 'dispatched'",
    [ready.club.clubId],
  );
  expect(out!.member_id).toBe(other.memberId);
  await page.context().close();
}, 180_000);
