/** The loading and the runways of a flight, told on the form and worked out on the page, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { BODIES } from '../api/hostile/bodies.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { ask, launch, pilot, signedIn, sound, WINDOWS } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const administrator = await ready.club.signInAs('administrator');
  await api.sql('UPDATE aircraft_models SET fuel_burn_us_gal_per_hour = 9 WHERE id = $1', [ready.modelId]);
  await administrator.post(`/models/${ready.modelId}/loading`, BODIES['addModelLoading']!({})).expect(201);
  await administrator
    .post(`/models/${ready.modelId}/performance`, BODIES['addModelPerformance']!({}))
    .expect(201);
  await insertInto(api.sql, ready.club.clubId)('weighings', {
    ...{ id: newId(), aircraft_id: ready.aircraftId, effective_on: '2026-01-05', source: 'weighing' },
    ...{ empty_weight_lb: 1450, empty_arm_in: 84 },
  });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

test.each(Object.entries(WINDOWS))(
  'on a %s: by row and compartment, with the envelope in words and as a picture',
  async (name, viewport) => {
    const who = await pilot(api, ready, `Loader on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport });
    await page.getByText('Loading, weather, route: settle the conditions now').click();
    await page.getByLabel('Front seats, lb').fill('340.5');
    await page.getByLabel('Baggage, lb').fill('20');
    await page.getByLabel('Fuel, US gal').fill('30');
    await page.getByLabel('Temperature, °C').fill('-4');
    await page.getByLabel('Altimeter, inHg').fill('29.92');
    await page.getByLabel('Runways wet').selectOption('no');
    await ask(page, '13:00', '15:00');
    const answer = page.locator('[data-registration=NX101B]');
    await answer.getByText('Loading and runways of NX101B').click();
    await answer.locator('.loading table').waitFor();
    const told = await answer.locator('.loading').innerText();
    // 1,450 + 340.5 + 20 + 180 lb.
    expect(told).toContain('1990.5');
    expect(told).toMatch(/within normal|outside the limits/);
    // Weather of now says nothing of tomorrow.
    expect(told).toContain('Not worked out: no recent weather is declared for the flight.');
    expect(await answer.locator('svg.envelope').getAttribute('aria-label')).toMatch(
      /^Centre of gravity: Take-off 199[01] lb at \d+\.\d in/,
    );
    await sound(page);
    await page.context().close();
  },
  60_000,
);
