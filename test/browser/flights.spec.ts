/**
 * From a phone at the aircraft: dispatch and return in headless Chromium, over a line that is cut before the request, before
 * the answer, and within it. What it must come to, once, is what test/api/flight-faults.spec.ts holds the service to.
 */
import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { lookForOverdue } from '../../src/bookings/overdue/look-for-overdue.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { bookToday, goOut, written } from '../api/flight-scene.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';
import { cuttingLine, type Cut, type CuttingLine } from './cutting-line.js';

jest.setTimeout(300_000);

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];

let api: Api;
let browser: Browser;
let ready: ReadyClub;
let line: CuttingLine;
/** The service as the phone reaches it. */
let far: Api;

beforeAll(async () => {
  api = await startApi();
  line = await cuttingLine((api.app.getHttpServer().address() as AddressInfo).port);
  far = {
    ...api,
    app: { getHttpServer: () => ({ address: () => ({ port: line.port }) }) },
  } as unknown as Api;
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  await line?.stop();
  await api?.stop();
});
beforeEach(async () => {
  api.clock.set(NOW);
  ready = await readyClub(api);
  await withPassword(api, ready.member);
});

const open = (at: string, of: Api = api, viewport = WINDOWS.phone): Promise<Page> =>
  signedIn(browser, { api: of, ready, who: ready.member, viewport, at });
const picture = (page: Page, name: string) =>
  PICTURES ? page.screenshot({ path: `${PICTURES}/flights-${name}.png`, fullPage: true }) : undefined;

/** Fills the return in, but for the last button. Times in the club's zone. */
async function fillReturn(page: Page): Promise<void> {
  await page.clock.setFixedTime('2026-03-10T17:40:00Z');
  await page.getByLabel('Off blocks').fill('11:05');
  await page.getByLabel('On blocks').fill('12:35');
  await page.getByLabel('Landings', { exact: true }).first().fill('3');
  await page.getByLabel(/Tachometer \(out/).fill('1051.3');
  await page.getByLabel('Fuel left').fill('18');
  await page.getByText('Something wrong with it?').click();
  await page.getByLabel('What is wrong').fill('Left brake soft');
  await page.getByRole('button', { name: 'Go on to the log' }).click();
  await page.getByText('Into the log of Robin Member').waitFor();
}

test.each(Object.entries(WINDOWS))(
  'dispatch on a %s: judged now, squawks and conditions ticked, a gap explained',
  async (name, viewport) => {
    const id = await bookToday(ready);
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, title: 'Landing light flickers', state: 'reported' },
      ...{ reported_at: '2026-03-10T14:00:00Z', reported_by: ready.member.memberId },
    });
    const page = await open('/', api, viewport);
    await page.getByRole('link', { name: 'Dispatch' }).click();
    await page.getByText('Landing light flickers', { exact: true }).waitFor();
    await page.getByLabel('Fuel on board').fill('30');
    await page.getByLabel('Tachometer shows').fill('1050.4');
    await page.getByLabel(/0.4 h not accounted for/).selectOption('engine-run');
    await page.getByLabel('In a few words').fill('Ground run after the oil change');
    const take = page.getByRole('button', { name: 'Take the aircraft' });
    expect(await take.isDisabled()).toBe(true);
    for (const box of await page.getByRole('checkbox').all()) await box.check();
    await sound(page);
    await picture(page, `dispatch-${name}`);
    await take.click();
    await page.getByText(/Out since/).waitFor();
    const { body } = await ready.member.get(`/flights/${id}`).expect(200);
    expect(body.dispatch.meters[0]).toMatchObject({ gapH: 0.4, gapBecause: 'engine-run' });
    await sound(page);
    await page.close();
  },
);

test('an answer that is no shows why, and no way to take the aircraft', async () => {
  await bookToday(ready);
  await api.sql("UPDATE medicals SET exam_on = '2019-01-01' WHERE member_id = $1", [ready.member.memberId]);
  const page = await open('/');
  await page.getByRole('link', { name: 'Dispatch' }).click();
  await page
    .getByText(/Medical/)
    .first()
    .waitFor();
  expect(await page.getByRole('button', { name: 'Take the aircraft' }).isDisabled()).toBe(true);
  await sound(page);
  await picture(page, 'refused');
  await page.close();
});

const CUTS: Cut[] = ['before', 'unanswered', 'within the answer'];

test.each(CUTS)('return over a line that is cut %s: kept, told, sent again, written once', async (at) => {
  const id = await goOut(api, ready);
  api.clock.set('2026-03-10T17:40:00Z');
  const page = await open(`/flights#${id}`, far);
  await page.getByText(/Out since/).waitFor();
  await fillReturn(page);
  if (at === 'before') {
    await sound(page);
    await picture(page, 'return');
  }
  const before = line.count();
  line.cut(`POST /api/v1/flights/${id}/return HTTP`, at, 3);
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await page
    .getByText(/not answered yet|Sending the return/)
    .first()
    .waitFor();
  await page.getByText(/Log, meters and squawks are written/).waitFor({ timeout: 120_000 });
  expect(line.count() - before).toBe(3);
  expect(await written(api, ready.club.clubId)).toEqual({
    dispatches: 1,
    returns: 1,
    entries: 1,
    readings: 1,
    squawks: 1,
  });
  expect(await page.evaluate("localStorage.getItem('bellcrank.returns')")).toBe('[]');
  await sound(page);
  await picture(page, 'back');
  await page.close();
});

test('a return survives the page: closed while the line is dead, it goes out when the page is opened again', async () => {
  const id = await goOut(api, ready);
  api.clock.set('2026-03-10T17:40:00Z');
  const page = await open(`/flights#${id}`, far);
  await page.getByText(/Out since/).waitFor();
  await fillReturn(page);
  line.cut(`POST /api/v1/flights/${id}/return HTTP`, 'unanswered', 1000);
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await page.getByText(/not answered yet/).waitFor();
  await sound(page);
  await picture(page, 'waiting');
  await page.reload();
  await page
    .getByText(/not answered yet|Sending the return/)
    .first()
    .waitFor();
  line.cut('nothing', 'before', 0);
  await page.getByText(/Log, meters and squawks are written/).waitFor({ timeout: 120_000 });
  expect(await written(api, ready.club.clubId)).toEqual({
    dispatches: 1,
    returns: 1,
    entries: 1,
    readings: 1,
    squawks: 1,
  });
  await page.close();
});

test('a refused return stays to be put right; one that went wrong is corrected with a reason', async () => {
  const id = await goOut(api, ready);
  api.clock.set('2026-03-10T17:40:00Z');
  const page = await open(`/flights#${id}`);
  await page.getByText(/Out since/).waitFor();
  await fillReturn(page);
  await page.getByLabel(/Tachometer \(out/).fill('1049.0');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await page
    .getByRole('alert')
    .getByText(/It showed 1050.0 h before departure/)
    .waitFor();
  expect(await page.getByLabel('On blocks').inputValue()).toBe('12:35');
  await page.getByLabel(/Tachometer \(out/).fill('1051.3');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await page.getByText(/Log, meters and squawks are written/).waitFor();
  await page.getByRole('button', { name: 'Something in it is wrong' }).click();
  await page.getByLabel(/Tachometer \(out/).fill('1051.5');
  await page.getByLabel('Why it is corrected').fill('Misread by two tenths');
  await page.getByRole('button', { name: 'Correct the return' }).click();
  await page.getByText('1051.5 h, 1.5 h flown').waitFor();
  await sound(page);
  await page.close();
});

test('a crew that will be late says so: the time due back is put off, the calendar with it', async () => {
  const id = await goOut(api, ready);
  api.clock.set('2026-03-10T17:40:00Z');
  const page = await open(`/flights#${id}`);
  await page.getByText(/Out since/).waitFor();
  await page.clock.setFixedTime('2026-03-10T17:40:00Z');
  await page.getByText('Back at another time?').click();
  expect(await page.getByLabel('Expected back at').inputValue()).toBe('13:00');
  await page.getByLabel('Expected back at').fill('14:30');
  await page.getByRole('button', { name: 'Say so' }).click();
  await page.getByText(/The aircraft is kept in the calendar until then/).waitFor();
  expect(await page.getByText(/Out since/).textContent()).toContain('due back Tue 10 Mar, 14:30');
  await sound(page);
  await picture(page, 'due-back');
  const { body } = await ready.member.get(`/flights/${id}`).expect(200);
  expect(body).toMatchObject({ dueBackAt: '2026-03-10T19:30:00Z', overdue: false });
  await page.close();
});

test('an aircraft that is not back: told on the first page, in the list, and its flight still there to return', async () => {
  const id = await goOut(api, ready);
  api.clock.set('2026-03-10T18:45:00Z');
  await api.app
    .get(TenantDb)
    .run(ready.club.clubId, (em) => lookForOverdue(em, ready.club.clubId, api.clock.now()));
  const page = await open('/');
  await page.clock.setFixedTime('2026-03-10T18:45:00Z');
  const alerts = page.getByRole('region', { name: 'Not back' });
  await alerts.getByText(/no flight following/).waitFor();
  await sound(page);
  await picture(page, 'overdue');
  await page
    .getByRole('complementary', { name: 'My flights' })
    .getByRole('link', { name: 'Return' })
    .waitFor();
  await alerts.getByRole('button', { name: /Seen to/ }).click();
  await alerts.waitFor({ state: 'detached' });
  await page.goto(page.url() + 'flights');
  await page.getByText('overdue', { exact: true }).waitFor();
  expect(await page.getByRole('link', { name: 'Return it' }).getAttribute('href')).toBe(`/flights#${id}`);
  await sound(page);
  await picture(page, 'out');
  await page.close();
});
