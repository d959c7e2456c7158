/** A booked flight whose answer changed, on the first page in headless Chromium: what changed, why, and the ways to yes. */
import type { Browser } from 'playwright-core';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let pilot: Session;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  pilot = await withPassword(api, ready.member);
  await ready.addAircraft('NX102B');
  const body = { ...tomorrow, aircraftId: ready.aircraftId, purpose: 'solo', personsOnBoard: 1 };
  await ready.member.post('/bookings', body).set('Idempotency-Key', newId()).expect(201);
  const rejudge = () => rejudgeClub(api.app.get(TenantDb), ready.club.clubId, () => api.clock.now());
  await rejudge();
  await insertInto(api.sql, ready.club.clubId)('squawks', {
    ...{
      id: newId(),
      aircraft_id: ready.aircraftId,
      title: 'Fuel leak at the gascolator',
      state: 'grounding',
    },
    ...{ reported_at: '2026-03-10T14:00:00Z', reported_by: ready.member.memberId },
  });
  await rejudge();
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

test.each(Object.entries(WINDOWS))(
  'on a %s: told, with reason, cause and ways',
  async (_name, viewport) => {
    const page = await signedIn(browser, { api, ready, who: pilot, viewport, at: '/' });
    const section = page.getByRole('region', { name: 'A booked flight is answered otherwise now' });
    await section.getByText('Fuel leak at the gascolator').waitFor();
    expect(await section.innerText()).toMatch(/NX101B.*Booked as .*now No/s);
    await section.getByRole('button', { name: 'What changed it?' }).click();
    await section.getByText(/after a change of open squawks/).waitFor();
    await section.getByRole('button', { name: 'What would make it a yes?' }).click();
    await section.getByText('NX102B').first().waitFor();
    await sound(page);
  },
  60_000,
);
