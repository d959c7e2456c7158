/** Reporting on a phone, and deciding at the desk, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { exif, jpegWith, SECRET } from '../fleet/pictures.js';
import { launch, pilot, signedIn, WINDOWS, type Viewport, sound, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let coordinator: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  coordinator = await withPassword(
    api,
    await ready.club.signInAs('maintenance-coordinator', { name: 'Cory Coordinates' }),
  );
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const opened = async (who: Session, viewport: Viewport, registration: string): Promise<Page> => {
  const page = await signedIn(browser, { api, ready, who, viewport, at: '/squawks' });
  page.setDefaultTimeout(8000);
  await page.locator('.which select').selectOption({ label: `${registration}, Harrow Lark 160` });
  return page;
};
describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  const registration = name === 'phone' ? 'NX111B' : 'NX112B';
  let aircraftId: string;
  beforeAll(async () => {
    aircraftId = await ready.addAircraft(registration);
  });

  test('who flew reports with a photo, and is offered what is open already', async () => {
    const who = await pilot(api, ready, `Flew on the ${name}`);
    const booking = await who
      .post('/bookings', { ...tomorrow, aircraftId, purpose: 'solo', personsOnBoard: 1 })
      .set('Idempotency-Key', newId())
      .expect(201);
    await ready.member.post(`/aircraft/${aircraftId}/squawks`, { title: 'Position lights dark' }).expect(201);
    const page = await opened(who, viewport, registration);
    await page.locator('[data-squawk="Position lights dark"]').waitFor();
    await page.getByLabel('What is wrong, in a few words').fill('position lights are dark');
    expect(await page.locator('.similar li').first().innerText()).toMatch(
      /Position lights dark not looked at yet/,
    );
    await sound(page);
    await page.getByLabel('What is wrong, in a few words').fill('Left tyre worn');
    await page.locator('.similar li').waitFor({ state: 'detached' });
    await page.getByLabel('When it shows, what you tried').fill('Down to the second groove');
    await page.getByLabel('Found on this flight').selectOption(booking.body.id as string);
    await page
      .getByLabel(/^Photos/)
      .setInputFiles({ name: 'tyre.jpg', mimeType: 'image/jpeg', buffer: jpegWith(exif(6)) });
    await page.getByRole('button', { name: 'Report it' }).click();
    const card = page.locator('[data-squawk="Left tyre worn"]');
    await card.locator('img').waitFor();
    expect(
      await page
        .locator('.report')
        .getByText(/Reported: “Left tyre worn”/)
        .count(),
    ).toBe(1);
    expect(await card.locator('img').getAttribute('alt')).toContain('Left tyre worn');
    // Held upright, three by two points are two by three; and the place has not left the browser.
    expect(
      await card.locator('img').evaluate((image) => {
        const { naturalWidth, naturalHeight } = image as unknown as Record<string, number>;
        return [naturalWidth, naturalHeight];
      }),
    ).toEqual([2, 3]);
    const [kept] = await api.sql<{ content: Buffer }>(
      'SELECT a.content FROM attachments a JOIN squawks s ON s.id = a.squawk_id WHERE s.aircraft_id = $1 AND s.booking_id = $2',
      [aircraftId, booking.body.id],
    );
    expect(kept!.content.includes(SECRET)).toBe(false);
    expect(await card.getByRole('button', { name: 'Decide' }).count()).toBe(0);
    await sound(page);
    await page.context().close();
  }, 60_000);

  test('the coordinator sees what a decision does before taking it, and walks the steps of a deferral', async () => {
    const [light] = await api.sql<{ id: string }>(
      "SELECT id FROM equipment WHERE aircraft_id = $1 AND kind = 'position-lights'",
      [aircraftId],
    );
    await ready.member
      .post(`/aircraft/${aircraftId}/squawks`, { title: 'Wing tip dark', equipmentId: light!.id })
      .expect(201);
    const page = await opened(coordinator, viewport, registration);
    const card = page.locator('[data-squawk="Wing tip dark"]');
    await card.getByRole('button', { name: 'Decide' }).click();
    await card.getByLabel('Ground the aircraft').check();
    expect(await card.getByRole('button', { name: 'Ground it' }).isDisabled()).toBe(true);
    await card.getByRole('button', { name: 'See what it does' }).click();
    await card.locator('.effects').waitFor();
    expect(await card.locator('[data-kind="day-vfr"]').getAttribute('data-verdict')).toBe('no');
    expect(await card.locator('.effects').innerText()).toMatch(/1 of 1 would be answered otherwise/);
    await sound(page);

    await card.getByLabel('Defer it').check();
    await card.locator('.guide').waitFor();
    // What was looked at was another decision.
    expect(await card.locator('.effects').count()).toBe(0);
    expect(await card.locator('[data-step="kind-of-flight"]').innerText()).toMatch(
      /Yes as the rules say[^]*At night/,
    );
    const choose = (step: string, word: string) =>
      card.locator(`[data-step="${step}"]`).getByLabel(word, { exact: true }).check();
    await choose('directive', 'Yes');
    expect(await card.getByRole('alert').innerText()).toContain('repaired and not deferred');
    expect(await card.getByRole('button', { name: 'See what it does' }).count()).toBe(0);
    for (const step of ['type-design', 'equipment-list', 'directive']) await choose(step, 'No');
    for (const step of ['removed-or-deactivated', 'placarded', 'recorded']) await choose(step, 'Yes');
    await card.getByLabel('Who determined that it is no hazard').fill('Mo Wrench, mechanic 0042');
    await card.getByRole('button', { name: 'See what it does' }).click();
    await card.locator('.effects').waitFor();
    expect(await card.locator('[data-kind="night-vfr"]').getAttribute('data-verdict')).toBe('no');
    expect(await card.locator('[data-kind="day-vfr"]').getAttribute('data-verdict')).not.toBe('no');
    await sound(page);
    await card.getByRole('button', { name: 'Defer it' }).click();
    await card.getByText(/^Deferred until/).waitFor();

    await card.getByRole('button', { name: 'Decide' }).click();
    await card.getByLabel('Close or reopen it').check();
    await card.getByLabel('What was done').fill('Replaced the lamp');
    await card.getByRole('button', { name: 'Add a part' }).click();
    await card.getByLabel('Part number').fill('GL-4509');
    await card.getByLabel('Name', { exact: true }).fill('Lamp');
    await card.getByLabel('Who signed').fill('Mo Wrench');
    expect(await card.getByText(/grants nobody authority/).count()).toBe(1);
    await sound(page);
    await card.getByRole('button', { name: 'Close it' }).click();
    await card.waitFor({ state: 'detached' });
    await page.getByLabel('Closed ones too').check();
    expect(await card.innerText()).toMatch(/Fixed[^]*Replaced the lamp[^]*1 × Lamp, GL-4509/);
    await card.getByText('History').click();
    expect(await card.locator('.history li').last().innerText()).toContain(
      'Cory Coordinates recorded the fix',
    );
    await sound(page);
    await page.context().close();
  }, 60_000);
});
