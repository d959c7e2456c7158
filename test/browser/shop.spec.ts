/** The shop in headless Chromium: a visit planned over a member's flight, begun, signed and flown for a check; what the member sees. */
import type { Browser } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let coordinator: Session;
let pilot: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  coordinator = await withPassword(
    api,
    await ready.club.signInAs('maintenance-coordinator', { name: 'Cory Coordinates' }),
  );
  pilot = await withPassword(api, ready.member);
  await insertInto(api.sql, ready.club.clubId)('signers', {
    ...{ id: newId(), name: 'R. Inspector', certificate: '77-Q', holds: 'inspection-authorization' },
    valid_from: '2020-01-01',
  });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  let aircraftId: string;
  let registration: string;
  beforeAll(async () => {
    registration = name === 'phone' ? 'NX141B' : 'NX142B';
    aircraftId = await ready.addAircraft(registration);
  });
  const open = (who: Session, at: string) => signedIn(browser, { api, ready, who, viewport, at });

  test('a visit is planned, its member told, and the aircraft signed back', async () => {
    const day = name === 'phone' ? '2026-03-12' : '2026-03-19';
    await ready.member
      .post('/bookings', {
        ...{ departs: `${day}T18:00:00Z`, arrives: `${day}T20:00:00Z`, aircraftId },
        ...{ purpose: 'solo', personsOnBoard: 1 },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    const page = await open(coordinator, `/shop#${registration}`);
    await page.getByRole('heading', { name: 'Plan a visit' }).waitFor();
    await page.getByLabel('What for').fill('Annual inspection');
    await page.getByLabel('Annual inspection', { exact: true }).check();
    await page.getByLabel('Something else').fill('New door seals');
    await page.getByLabel('First day, from 08:00').fill(day);
    await page.getByLabel('Last day, until 18:00').fill(day);
    await page.getByRole('button', { name: 'Whose flights would it move?' }).click();
    await page.getByText('A flight makes room, and everybody aboard is told:').waitFor();
    await sound(page);
    await page.getByRole('button', { name: 'Plan it so' }).click();
    const visit = page.locator('[data-order="Annual inspection"]');
    await visit.getByRole('button', { name: 'The shop has begun' }).click();
    await visit.getByRole('button', { name: 'Record the return to service' }).click();
    await visit.getByLabel('Tachometer, hours').fill('1050.0');
    await visit.getByLabel('New door seals').uncheck();
    await visit.getByLabel('Why not').fill('Not in stock');
    await visit.getByLabel('The work may have changed how it flies').check();
    await visit.getByLabel('What makes it necessary').fill('Trim cables replaced');
    await visit.getByLabel('Statement in the maintenance record').fill('Inspected and found airworthy.');
    await visit.getByRole('button', { name: 'What would it record?' }).click();
    await visit.locator('.effects').first().waitFor();
    await sound(page);
    await visit.getByRole('button', { name: 'Record the return to service' }).click();
    await visit.getByText('Check flight due').waitFor();
    expect(await visit.innerText()).toContain('Signed by R. Inspector, 77-Q on 10 Mar 2026');
    expect(await visit.innerText()).toContain('Not done: New door seals Not in stock');
    await page.context().close();

    const mine = await open(pilot, '/');
    const told = mine.locator(`[data-displaced=${registration}]`);
    await told.waitFor();
    expect(await told.innerText()).toContain('the aircraft is taken for “Annual inspection”');
    await told.getByRole('button', { name: 'Ask again' }).click();
    // It was signed meanwhile, so the same flight may be booked again: alone, it needs no check flight before it.
    await told.getByRole('button', { name: 'Book it again' }).waitFor();
    await sound(mine);
    await told.getByRole('button', { name: 'Book it again' }).click();
    await told.waitFor({ state: 'detached' });
    await mine.goto(mine.url().replace(/\/$/, `/shop#${registration}`));
    const due = mine.locator('[data-order="Annual inspection"]');
    await due.waitFor();
    expect(await mine.getByRole('button', { name: 'The shop has begun' }).count()).toBe(0);
    expect(await mine.getByText('Plan a visit').count()).toBe(0);
    await due.getByLabel('Entry in the aircraft’s records').fill('Flown, trim checked, no remarks.');
    await due.getByLabel('at', { exact: true }).fill('10:00');
    await due.getByRole('button', { name: 'Log the check flight' }).click();
    await mine.context().close();
  }, 90_000);

  test('what a visit is planned from: wishes, templates, weights, directives, signers', async () => {
    const page = await open(coordinator, `/shop#${registration}`);
    const open_ = (summary: string) => page.locator('summary', { hasText: summary }).click();
    await open_('Upgrades wished for');
    await page.getByLabel('Upgrade', { exact: true }).fill('Second navigator');
    await page.getByRole('button', { name: 'Wish for it' }).click();
    await page.getByText('Second navigator: 1 shop days').waitFor();
    await page.getByRole('button', { name: 'Strike Second navigator' }).click();
    await page.getByText('Second navigator: 1 shop days').waitFor({ state: 'detached' });
    await open_('Put items on the aircraft');
    await page.getByLabel(/^Weighing every 60/).check();
    await page.getByLabel(/^Backup battery check/).check();
    await page.getByRole('button', { name: 'Put them on' }).click();
    await page.getByText('Put on: Weighing.').waitFor();
    await page.getByText('The aircraft has no backup battery on record.').waitFor();
    await open_('Empty weight');
    await page.getByLabel('Empty weight, lb').fill('1461.5');
    await page.getByLabel('Its arm, in aft of datum').fill('39.8');
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText('1461.5 lb at 39.80 in, weighed').waitFor();
    await coordinator
      .post('/directives', {
        ...{
          issuer: 'Q',
          number: `2026-${name}`,
          title: 'Seat rails',
          effectiveOn: '2026-02-01',
          scope: 'all',
        },
        ...{ appliesTo: 'aircraft', modelIds: [ready.modelId], recurring: false, withinDays: 200 },
        serials: [{ from: 'HL-1', through: 'HL-9' }],
      })
      .expect(201);
    await page.reload();
    const directive = page.locator('.standings li', { hasText: `2026-${name}` });
    await directive.getByText('Look it up').waitFor();
    await directive.getByRole('button', { name: `Somebody has looked it up: 2026-${name}` }).click();
    await directive.getByLabel('Because').fill('Rails of the later kind');
    await directive.getByLabel('Who looked, with certificate').fill('R. Inspector, 77-Q');
    await directive.getByRole('button', { name: 'Record the finding' }).click();
    await directive.getByText('Does not apply', { exact: true }).waitFor();
    await open_('Who may sign');
    await open_('Meters against the log');
    await sound(page);
    await page.context().close();
  }, 90_000);
});
