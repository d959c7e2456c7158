/** Practice on a phone and at the desk, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { FIELD, Flight, gpxOf } from '../practice/flight.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const row = insertInto(api.sql, ready.club.clubId);
  const airfieldId = newId();
  await row('airfields', {
    ...{ id: airfieldId, code: FIELD.code, name: 'Heron Bluff', zone: 'America/Chicago' },
    ...{ latitude_deg: FIELD.latitudeDeg, longitude_deg: FIELD.longitudeDeg },
    elevation_ft: FIELD.elevationFt,
  });
  for (const { designator, trueHeadingDeg, lengthFt } of FIELD.runways)
    await row('runways', {
      ...{ id: newId(), airfield_id: airfieldId, designator, true_heading_deg: trueHeadingDeg },
      ...{ length_ft: lengthFt, surface: 'paved', lit: true },
    });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot records, plans, and takes over a recorded track', async () => {
    const who = await pilot(api, ready, `Practises on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/practice' });
    page.setDefaultTimeout(15_000);
    const turns = page.locator('[data-key="steep_turn|any"]');
    expect(await turns.innerText()).toContain('not on record');
    await sound(page);

    await page.getByLabel('Day flown').fill('2026-03-01');
    await page
      .locator('label', { hasText: /^Manoeuvre/ })
      .locator('select')
      .selectOption('steep_turn');
    const measured = {
      'Altitude off, ft': [-60, 80],
      'Airspeed off, kt': [-4, 6],
      'Bank, °': [42, 48],
      'Roll-out off, °': [-3, 3],
    };
    for (const [label, [least, most]] of Object.entries(measured)) {
      await page.getByLabel(`${label}, least`).fill(String(least));
      await page.getByLabel(`${label}, most`).fill(String(most));
    }
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText('Recorded: steep turn. Within FAA-S-ACS-6C.').waitFor();
    await page.locator('.records li').first().waitFor();
    expect(await page.locator('.records li').first().innerText()).toContain('Own record.');

    // A wrong record is corrected by another, or withdrawn with a reason; both stay to be seen.
    const list = page.getByRole('region', { name: 'On record' });
    await list.getByRole('button', { name: /^Correct steep turn/i }).click();
    const correct = page.getByRole('form', { name: /^Correct steep turn/i });
    expect(await correct.getByLabel('Bank, °, most').inputValue()).toBe('48');
    await correct.getByLabel('Gusts over the wind, kt').fill('12');
    await correct.getByLabel(/^Equipment used/).fill('autopilot, moving map');
    await correct.getByLabel('Held against').selectOption('commercial');
    await correct.getByLabel(/^Why it is corrected/).fill('Forgot the gusts');
    await sound(page);
    await correct.getByRole('button', { name: 'Put it in its place' }).click();
    await correct.waitFor({ state: 'detached' });
    await list.getByText('gusts 12 kt over the wind, with autopilot, moving map').waitFor();
    expect(await list.locator('li').count()).toBe(1);
    expect(
      await api.sql(
        'SELECT level, gust_spread_kt::float8 AS gust, equipment, corrects IS NOT NULL AS corrects FROM practice_records WHERE member_id = $1 ORDER BY recorded_at DESC LIMIT 1',
        [who.memberId],
      ),
    ).toEqual([{ level: 'commercial', gust: 12, equipment: ['autopilot', 'moving map'], corrects: true }]);
    await list.getByRole('button', { name: /^Withdraw steep turn/i }).click();
    await list.getByLabel(/^Why it is withdrawn/).fill('Was somebody else');
    await list.getByRole('button', { name: 'Withdraw it' }).click();
    await list.getByText('Nothing is recorded yet.').waitFor();
    await list.getByLabel(/^Show corrected/).check();
    await list.getByText('Was somebody else').waitFor();
    expect(await list.locator('li').count()).toBe(3);
    expect(await list.getByRole('button', { name: /^Correct/ }).count()).toBe(0);
    await sound(page);

    await page.getByText(/^Wind, runway, equipment/).click();
    const planning = page.getByRole('region', { name: 'The next practice flight' });
    await planning.getByLabel('Crosswind, kt').fill('12');
    await planning.getByLabel('Runway, ft').fill('1900');
    await planning.getByLabel('Minutes to the practice area and back').fill('5');
    await page.getByLabel('An instructor is aboard').check();
    await page.getByRole('button', { name: 'Plan it' }).click();
    await page.locator('.plan ol > li').first().waitFor();
    expect(await page.locator('.plan').innerText()).toMatch(/is not on record as done to standard/);
    expect(await page.locator('.plan').innerText()).toContain('5 of them to the practice area');
    await sound(page);

    const flight = new Flight({ fromDeg: 240, kt: 12 }, Date.parse('2026-03-08T16:00:00Z') / 1000);
    flight.rest(60).takeOff().touchAndGo().fullStop().taxiBack(7).rest(40);
    await page.getByLabel('GPX file of one flight').setInputFiles({
      ...{ name: 'flight.gpx', mimeType: 'application/gpx+xml' },
      buffer: Buffer.from(gpxOf(flight.points())),
    });
    await page.locator('svg.track').waitFor();
    const events = page.locator('.events > li');
    expect(await events.count()).toBe(4);
    const landing = events.filter({ hasText: 'touch-and-go' });
    await landing.locator('summary').click();
    await landing.getByText(/^Multiplied, they give/).waitFor();
    const factors = (await landing.locator('details li').allInnerTexts()).map((text) =>
      Number(/: ([\d.]+)$/.exec(text)![1]),
    );
    const sure = Number(/How sure: ([\d.]+)/.exec(await landing.innerText())![1]);
    expect(factors.reduce((product, one) => product * one, 1)).toBeCloseTo(sure, 1);
    await page.getByText('How each figure for the log was counted').click();
    await page.getByText(/^Landings: 2, from no\. \d, no\. \d/).waitFor();
    await page
      .locator('label', { hasText: /^Aircraft/ })
      .locator('select')
      .selectOption({ index: 1 });
    await sound(page);
    await page.getByRole('button', { name: 'Enter what is chosen' }).click();
    await page.getByText('Entered: the flight and 2 practice records.').waitFor();
    const [logged] = await api.sql<{ landings: number }>(
      "SELECT landings FROM log_entries WHERE member_id = $1 AND from_airfield = 'ZZHB'",
      [who.memberId],
    );
    expect(logged!.landings).toBe(2);
    await page.context().close();
  }, 90_000);
});
