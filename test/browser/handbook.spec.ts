/** What the coordinator enters from paper, in headless Chromium: loading sheet, distance tables, directives, templates of the club's own. */
import type { Browser } from 'playwright-core';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let coordinator: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  coordinator = await withPassword(api, await ready.club.signInAs('maintenance-coordinator'));
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const GROUND = 'ft\t0\t20\t40\n0\t800\t900\t1000\n4,000\t1,100\t1,250\t1,400';
const OVER = 'ft\t0\t20\t40\n0\t1500\t1700\t1900\n4,000\t2,100\t2,400\t2,700';

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  let aircraftId: string;
  let registration: string;
  beforeAll(async () => {
    registration = name === 'phone' ? 'NX151H' : 'NX152H';
    aircraftId = await ready.addAircraft(registration);
  });
  const open = (at: string) => signedIn(browser, { api, ready, who: coordinator, viewport, at });

  test('a loading sheet and distance tables are copied from the handbook', async () => {
    const page = await open(`/handbook#${aircraftId}`);
    await page.locator('.which select').selectOption({ label: `${registration} alone` });
    const loading = page.locator('form[aria-labelledby=loading]');
    await loading.getByLabel('Document and section').fill('Handbook, section 6');
    const first = loading.getByRole('group', { name: 'Station 1' });
    await first.getByLabel('Name').fill('Front seats');
    await first.getByLabel('Arm, in aft of datum').fill('38.5');
    await first.getByLabel('Seats').fill('2');
    await loading.getByRole('button', { name: 'Another station' }).click();
    const second = loading.getByRole('group', { name: 'Station 2' });
    await second.getByLabel('Name').fill('Tank');
    await second.getByLabel('Holds').selectOption('fuel');
    await second.getByLabel('Arm, in aft of datum').fill('42');
    await second.getByLabel('Usable, US gal').fill('26');
    const corners = loading.getByLabel(/^Limits of the normal category/);
    await corners.fill('31 1100\n36.5 1670');
    await loading.getByRole('button', { name: 'Keep the loading sheet' }).click();
    // Two corners make no limits: the refusal names the field, and nothing typed is lost.
    await page.getByText(/envelopes\[0\]\.points/).waitFor();
    await corners.fill('31 1100\n31 1350\n32.6 1670\n36.5 1670\n36.5 1100');
    expect(await loading.locator('polygon.limits').count()).toBe(1);
    await loading.getByRole('button', { name: 'Keep the loading sheet' }).click();
    await loading.getByRole('button', { name: 'Put it in place of the old one' }).waitFor();
    const { body: kept } = await coordinator.get(`/aircraft/${aircraftId}/loading`).expect(200);
    expect(kept.stations).toMatchObject([
      { name: 'Front seats', kind: 'seats', armIn: 38.5, seats: 2 },
      { name: 'Tank', kind: 'fuel', armIn: 42, usableUsGal: 26 },
    ]);

    const tables = page.locator('form[aria-labelledby=performance]');
    await tables.getByLabel('Document and section').fill('Handbook, section 5');
    for (const what of ['Take-off', 'Landing']) {
      const table = tables.getByRole('group', { name: `${what}, table 1` });
      await table.getByLabel('At a weight of, lb').fill('1670');
      await table.getByLabel('Ground roll').fill(GROUND);
      await table.getByLabel('Whole distance over 50 ft').fill(what === 'Landing' ? OVER : 'ft 0\n0 no');
    }
    await tables.getByRole('button', { name: 'Keep the tables' }).click();
    await page.getByText('Take-off, over 50 ft at 1670 lb: A table has a line of temperatures').waitFor();
    await tables
      .getByRole('group', { name: 'Take-off, table 1' })
      .getByLabel('Whole distance over 50 ft')
      .fill(OVER);
    await tables.getByText('What the handbook adds for wind, surface and slope').first().click();
    await tables.getByLabel('Dry grass, %').first().fill('15');
    await tables.getByRole('button', { name: 'Keep the tables' }).click();
    await tables.getByRole('button', { name: 'Put them in place of the old ones' }).waitFor();
    await sound(page);
    const { body: sheet } = await coordinator.get(`/aircraft/${aircraftId}/performance`).expect(200);
    expect(sheet.takeoff).toMatchObject({
      tables: [
        {
          weightLb: 1670,
          pressureAltitudesFt: [0, 4000],
          groundRollFt: [
            [800, 900, 1000],
            [1100, 1250, 1400],
          ],
        },
      ],
      factors: { grassPercent: 15, gravelPercent: null },
    });
    await tables.getByRole('button', { name: 'Take them off the record' }).click();
    await page.getByText('None on record.').waitFor();
    await coordinator.get(`/aircraft/${aircraftId}/performance`).expect(404);
    await page.context().close();
  }, 90_000);

  test('a directive is looked at before it is entered, and withdrawn; a template is kept and deleted', async () => {
    const page = await open(`/shop#${registration}`);
    const number = `2026-${name}-7`;
    await page.locator('summary', { hasText: 'Enter or correct a directive' }).click();
    await page.getByRole('button', { name: 'Enter another' }).click();
    const form = page.getByRole('form', { name: 'A directive' });
    await form.getByLabel('Issued by').fill('Q');
    await form.getByLabel('Number', { exact: true }).fill(number);
    await form.getByLabel('Title').fill('Seat rails');
    await form.getByLabel('In force since').fill('2026-02-01');
    await form.getByLabel('Serial numbers, with commas (none: any)').fill('HL-1 to HL-9, HL-20');
    await form.getByLabel('Days after it took effect').fill('200');
    await form.getByRole('button', { name: 'What would it do?' }).click();
    await form.getByText('due until somebody looks it up').first().waitFor();
    await sound(page);
    await form.getByRole('button', { name: 'Enter it so' }).click();
    await page.getByRole('button', { name: `Correct it: ${number}` }).click();
    const correction = page.getByRole('form', { name: `Correct ${number}` });
    expect(await correction.getByLabel('Serial numbers, with commas (none: any)').inputValue()).toBe(
      'HL-1 to HL-9, HL-20',
    );
    await correction.getByLabel('Withdrawn on (leave empty while in force)').fill('2026-03-01');
    await correction.getByRole('button', { name: 'Keep the correction' }).click();
    await page
      .locator('.card li', { hasText: number })
      .getByText(/withdrawn/)
      .waitFor();
    const { body } = await coordinator.get('/directives').expect(200);
    const kept = (body.items as { number: string }[]).find((one) => one.number === number);
    expect(kept).toMatchObject({
      withdrawnOn: '2026-03-01',
      withinDays: 200,
      serials: [
        { from: 'HL-1', through: 'HL-9' },
        { from: 'HL-20', through: 'HL-20' },
      ],
    });

    await page.locator('summary', { hasText: 'Put items on the aircraft' }).click();
    const own = page.getByRole('form', { name: 'A template of the club’s own' });
    await own.getByLabel('What is done').fill(`Tie-downs looked at, ${name}`);
    await own.getByLabel('Every so many days').fill('30');
    await own.getByLabel('When it lapses it binds').selectOption('advice');
    await own.getByRole('button', { name: 'Keep the template' }).click();
    await page.getByLabel(new RegExp(`^Tie-downs looked at, ${name}`)).waitFor();
    await page.getByRole('button', { name: `Delete the template Tie-downs looked at, ${name}` }).click();
    await page.getByLabel(new RegExp(`^Tie-downs looked at, ${name}`)).waitFor({ state: 'detached' });

    // A phase of a progressive programme, next to the complete inspection that is there to be chosen.
    await page.getByLabel(/^Progressive programme: complete inspection every 12 calendar months/).waitFor();
    await own.getByLabel('It is').selectOption('progressive');
    await own.getByLabel('What is done').fill(`Phase 1, ${name}`);
    await own.getByLabel('Every so many hours').fill('50');
    await own.getByRole('button', { name: 'Keep the template' }).click();
    await page.getByLabel(new RegExp(`^Phase 1, ${name} every 50 h`)).waitFor();
    await page.getByRole('button', { name: `Delete the template Phase 1, ${name}` }).click();
    await page.getByLabel(new RegExp(`^Phase 1, ${name}`)).waitFor({ state: 'detached' });
    await page.context().close();
  }, 90_000);
});
