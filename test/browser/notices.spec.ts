/** Notices on a phone and at the desk, in headless Chromium: told while the page is open, read, and set how to be told. */
import type { Browser } from 'playwright-core';
import { NoticesWorker } from '../../src/notices/notices.worker.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  browser = await launch();
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('a pilot is told while the page is open, reads it, sets mail and makes a calendar address', async () => {
    api.clock.set(NOW);
    const who = await pilot(api, ready, `Told on the ${name}`);
    const aircraftId = await ready.addAircraft(name === 'phone' ? 'NX201B' : 'NX202B');
    await who
      .post('/bookings', {
        ...{ departs: '2026-03-13T18:00:00Z', arrives: '2026-03-13T20:00:00Z', purpose: 'solo' },
        ...{ personsOnBoard: 1, aircraftId },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    const db = api.app.get(TenantDb);
    const { clubId } = ready.club;
    await rejudgeClub(db, clubId, () => api.clock.now());

    const page = await signedIn(browser, { api, ready, who, viewport });
    page.setDefaultTimeout(60_000);
    await page.getByRole('link', { name: 'Notices' }).first().waitFor();
    expect(await page.locator('.bell .count').count()).toBe(0);
    // The page stands open, and nothing is done on it.
    await insertInto(api.sql, clubId)('squawks', {
      ...{ id: newId(), aircraft_id: aircraftId, title: 'Fuel leak', state: 'grounding' },
      ...{ reported_at: '2026-03-10T15:00:00Z', reported_by: who.memberId },
    });
    await rejudgeClub(db, clubId, () => api.clock.now());
    await page.locator('.bell .count', { hasText: /^1/ }).waitFor();
    await page.getByRole('heading', { name: 'A booked flight is answered otherwise now' }).waitFor();

    // Its time of gathering over, ways have been looked for.
    api.clock.set('2026-03-10T15:03:00Z');
    await api.app.get(NoticesWorker).workOff(clubId);
    api.clock.set(NOW);
    await page.locator('.bell a').click();
    const notice = page.locator('.told article').first();
    // A way, or where the machine is too busy to find one in time, that the search stopped.
    await notice.getByText(/What would make it a yes|stopped at its limit/).waitFor();
    await page.getByLabel('The day’s mail goes out at').waitFor();
    expect(await notice.innerText()).toContain('It was answered “Yes, if”, and is answered “No” now.');
    expect(await notice.innerText()).toMatch(/Fri,? 13 Mar/);
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/notices-${name}.png`, fullPage: true });
    await sound(page);
    await notice.getByRole('button', { name: /^I have read/ }).click();
    await page.locator('.told article:not(.new)').first().waitFor();
    await page.locator('.bell:not(.waiting)').waitFor();

    await page.getByLabel('Something of yours lapses soon').selectOption('daily');
    // What a flight's safety hangs on has no "not by mail".
    expect(
      await page
        .getByLabel(/^A flight of yours is answered otherwise/)
        .locator('option')
        .allInnerTexts(),
    ).toEqual(['at once', 'with the day’s mail']);
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    const { body } = await who.get('/notice-preferences').expect(200);
    expect((body as { choices: unknown[] }).choices).toContainEqual(
      expect.objectContaining({ kind: 'lapse', delivery: 'daily' }),
    );

    await page.getByRole('button', { name: 'Make an address' }).click();
    const address = await page.getByLabel(/^Address of “My flights”/).inputValue();
    await api.http.get(new URL(address).pathname).expect(200);
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/notices-set-${name}.png`, fullPage: true });
    await sound(page);
    await page.getByRole('button', { name: 'Take back My flights' }).click();
    await page.locator('.notices .feeds li').waitFor({ state: 'detached' });
    await api.http.get(new URL(address).pathname).expect(404);
    await page.context().close();
  }, 300_000);

  test('an officer sees mail that was given up, and has it tried again', async () => {
    const officer = await withPassword(
      api,
      await ready.club.signInAs('safety-officer', { name: `Officer on the ${name}` }),
    );
    const told = await ready.club.createMember('member', { name: `Unreached on the ${name}` });
    await insertInto(api.sql, ready.club.clubId)('notice_mails', {
      ...{ id: newId(), member_id: told.memberId, digest: false, state: 'given-up', attempts: 8 },
      ...{ due_at: '2026-03-10T12:00:00Z', fault: '550 No such mailbox' },
    });
    const page = await signedIn(browser, { api, ready, who: officer, viewport, at: '/notices' });
    page.setDefaultTimeout(60_000);
    const row = page.locator('.feeds li', { hasText: `Unreached on the ${name}` });
    expect(await row.innerText()).toContain('550 No such mailbox');
    await sound(page);
    await row.getByRole('button', { name: /^Try again/ }).click();
    await row.waitFor({ state: 'detached' });
    await page.context().close();
  }, 300_000);
});
