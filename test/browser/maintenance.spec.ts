/** The coordinator's pages in headless Chromium: hours and days left, the season's plan, a change of equipment with its preview. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, WINDOWS, sound, withPassword } from './chromium.js';

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
  await api.sql(
    `UPDATE compliances SET done_on = '2025-05-20' WHERE club_id = $1 AND item_id IN
      (SELECT id FROM airworthiness_items WHERE club_id = $1 AND kind = 'annual')`,
    [ready.club.clubId],
  );
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('what is left is told, and the season is planned with its reasons', async () => {
    const page = await signedIn(browser, { api, ready, who: coordinator, viewport, at: '/maintenance' });
    const left = page.locator('[data-registration=NX101B]');
    await left.waitFor();
    expect(await left.locator('[data-item=annual]').innerText()).toContain('good through 31 May 2026');
    expect(await left.locator('[data-item=hours-100]').innerText()).toContain('70.0 h left, 0.0 h booked');
    await left.getByText('How the hours are reckoned').click();
    expect(await left.locator('.reckoning tbody tr').count()).toBe(13);
    await sound(page);
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await page.locator('.season .visit').first().click();
    const detail = page.locator('.visit-detail');
    expect(await detail.innerText()).toContain(
      'Annual inspection (4 shop days), due in the week of 25 May 2026',
    );
    expect(await detail.innerText()).toMatch(/It displaces/);
    expect(await page.locator('.compared').innerText()).toContain('proven the least');
    await sound(page);
    await page.getByRole('button', { name: 'Whose flights would it move?' }).click();
    await page.getByText('No flight has to make room.').waitFor();
    await sound(page);
    if (name === 'desk') {
      await page.getByRole('button', { name: /^Put .* into the calendar$/ }).click();
      await page.getByText('Every visit of the plan is in the calendar.').waitFor();
    }
    await page.context().close();
  }, 60_000);

  test('a change of equipment shows what it does before it is recorded, and is taken back', async () => {
    const aircraftId = await ready.addAircraft(name === 'phone' ? 'NX121B' : 'NX122B');
    await insertInto(api.sql, ready.club.clubId)('equipment', {
      ...{ id: newId(), aircraft_id: aircraftId, kind: 'air-pump', name: 'Engine-driven air pump' },
      ...{ installed_on: '2015-05-01', weight_lb: 2.5, arm_in: 10 },
    });
    const at = `/equipment#${aircraftId}`;
    const page = await signedIn(browser, { api, ready, who: coordinator, viewport, at });
    await page.getByLabel('What was done').fill('Electronic attitude display');
    await page.getByLabel('Entry in the maintenance record').fill('Installed per the alteration record');
    await page.getByLabel('Signed by, with certificate').fill('Mo Wrench, mechanic 0042');
    await page.getByLabel('Engine-driven air pump').check();
    await page.getByLabel('Name').fill('Attitude display');
    await page.getByLabel('Weight, lb (empty: negligible)').fill('3.5');
    await page.getByLabel('Arm, in aft of datum').fill('25');
    await page.getByRole('button', { name: 'What would it do?' }).click();
    const preview = page.locator('.preview');
    await preview.waitFor();
    expect(await preview.innerText()).toMatch(/Empty weight\s+1450 lb\s+1451 lb/);
    expect(await preview.innerText()).toContain('No more: air pump.');
    expect(await preview.innerText()).toContain('None of 0 booked flights is answered otherwise.');
    await sound(page);
    await page.getByRole('button', { name: 'Record the change' }).click();
    const change = page.locator('.changes li');
    await change.waitFor();
    expect(await change.innerText()).toContain('out: Engine-driven air pump · in: Attitude display');
    await change.getByRole('button', { name: 'Take back' }).click();
    await change.getByLabel('Why (at least 10 characters)').fill('Entered for the wrong aircraft');
    await change.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('taken back: Entered for the wrong aircraft').waitFor();
    await sound(page);
    await page.context().close();
  }, 60_000);
});
