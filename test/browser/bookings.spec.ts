/** Flights changed, handed over and repeated on the first page, and blocks, in headless Chromium on the phone and at the desk. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let member: Session;
let other: Session;
let coordinator: Session;
let browser: Browser;
const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];

beforeAll(async () => {
  api = await startApi();
  browser = await launch();
}, 240_000);
beforeEach(async () => {
  ready = await readyClub(api);
  member = await withPassword(api, ready.member);
  other = await pilot(api, ready, 'Sam Second');
  coordinator = await withPassword(
    api,
    await ready.club.signInAs('maintenance-coordinator', { name: 'Gus Keeper' }),
  );
  const body = { ...tomorrow, aircraftId: ready.aircraftId, purpose: 'solo', personsOnBoard: 1 };
  await ready.member.post('/bookings', body).set('Idempotency-Key', newId()).expect(201);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  const shot = async (page: { screenshot(of: object): Promise<unknown> }, what: string) => {
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/bookings-${what}-${name}.png`, fullPage: true });
  };

  test('a flight is made longer, offered, and taken by the other member', async () => {
    const page = await signedIn(browser, { api, ready, who: member, viewport, at: '/' });
    const flights = page.getByRole('complementary', { name: 'My flights' });
    await flights.getByRole('button', { name: /^Change NX101B/ }).click();
    await flights.getByLabel('Back at').waitFor();
    await sound(page);
    await shot(page, 'change');
    await flights.getByRole('button', { name: '30 min longer' }).click();
    // Until 20:30 UTC, which is 15:30 in the club.
    await flights
      .getByText(/to 15:30/)
      .first()
      .waitFor();
    await flights.getByRole('button', { name: /^History NX101B/ }).click();
    await flights.getByText(/back: .*15:00 → .*15:30/).waitFor();
    await flights.getByRole('button', { name: /^Hand over NX101B/ }).click();
    await flights.getByRole('combobox').first().selectOption({ label: 'Sam Second' });
    await flights.getByRole('button', { name: 'Offer it' }).click();
    await flights.getByText('Offered to Sam Second.').waitFor();
    await sound(page);

    const theirs = await signedIn(browser, { api, ready, who: other, viewport, at: '/' });
    await theirs.getByText(/Robin Member offers you/).waitFor();
    await shot(theirs, 'offer');
    await theirs.getByRole('button', { name: 'Take it' }).click();
    await theirs.getByRole('button', { name: /^Change NX101B/ }).waitFor();
    await sound(theirs);
  }, 240_000);

  test('a flight is booked as a series, each looked at first', async () => {
    const page = await signedIn(browser, { api, ready, who: other, viewport, at: '/' });
    await page.getByLabel('What kind of flight').selectOption('solo');
    await page.getByLabel('Leaving at').fill('16:00');
    await page.getByLabel('Back at').first().fill('17:00');
    await page.getByRole('button', { name: 'Ask the club' }).click();
    await page.getByText('Book it as a series').first().click();
    await page.getByLabel('How many times').fill('3');
    await page.getByRole('button', { name: 'Which of them can be had?' }).click();
    await page.getByRole('button', { name: 'Book all 3' }).waitFor();
    await sound(page);
    await shot(page, 'series');
    await page.getByRole('button', { name: 'Book all 3' }).click();
    await page.getByText('✓ booked').first().waitFor();
    const { body } = await other.get(`/bookings?memberId=${other.memberId}`).expect(200);
    expect(body.items).toHaveLength(3);
  }, 240_000);

  test('a block shows whose flight is in its way before that is cancelled', async () => {
    const page = await signedIn(browser, { api, ready, who: coordinator, viewport, at: '/blocks' });
    await page.getByLabel('What for').fill('Open day');
    await page.getByRole('button', { name: 'Block it' }).click();
    await page.getByRole('listitem').filter({ hasText: 'Robin Member' }).waitFor();
    await sound(page);
    await shot(page, 'block');
    await page.getByRole('button', { name: /^Cancel this flight/ }).click();
    await page.getByText('Made room and are told:').waitFor();
    await page.getByRole('button', { name: /^Change NX101B/ }).waitFor();
    await sound(page);
  }, 240_000);
});
