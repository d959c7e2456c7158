/** The officer's board in headless Chromium, with three hundred invented members, and reports told on it. */
import type { Browser, Page } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { fillClub } from '../support/full-club.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

const MEMBERS = 300;
let api: Api;
let ready: ReadyClub;
let browser: Browser;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  await fillClub(api, ready, MEMBERS);
  officer = await withPassword(api, await ready.club.signInAs('safety-officer', { name: 'Olga Officer' }));
  await withPassword(api, ready.member);
  // In June the landings of February no longer count.
  for (const day of ['11', '12', '13'])
    await ready.member
      .post('/decisions', {
        ...{ aircraftIds: [ready.aircraftId], purpose: 'passengers', personsOnBoard: 2 },
        ...{ departs: `2026-06-${day}T18:00:00Z`, arrives: `2026-06-${day}T19:00:00Z` },
      })
      .expect(200);
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env['BELLCRANK_TEST_PICTURES'];
  if (folder) await page.screenshot({ path: `${folder}/board-${name}.png`, fullPage: true });
};

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('the officer sees who lapses next, and narrows it', async () => {
    const page = await signedIn(browser, { api, ready, who: officer, viewport, at: '/board' });
    const board = page.getByRole('region', { name: 'Who lapses next' });
    const picture = board.getByRole('img', { name: /^Lapses of \d+ members/ });
    await picture.waitFor();
    const counted = async (): Promise<number[]> =>
      (await board.locator('p[aria-live]').innerText()).match(/\d+/g)!.map(Number);
    const [people, of, lapses, lost] = await counted();
    expect(of).toBeGreaterThan(MEMBERS);
    expect(people).toBeGreaterThan(100);
    expect(lapses).toBeGreaterThanOrEqual(people!);
    expect(lost).toBeGreaterThan(0);
    const refusals = page.getByRole('region', { name: 'Refusals by rule' });
    // Nobody is named among the gaps: that list is in numbers alone.
    const gaps = page.getByRole('region', { name: 'Practice gaps' });
    const turns = gaps.getByRole('row').filter({ hasText: /^steep turn/i });
    const [never, rusty, fresh] = (await turns.locator('td').allInnerTexts()).map(Number);
    expect(never! + rusty! + fresh!).toBe(MEMBERS + 1);
    expect(rusty).toBeGreaterThan(20);
    const gapsFile = page.waitForEvent('download');
    await gaps.getByRole('button', { name: 'CSV' }).click();
    expect((await gapsFile).suggestedFilename()).toBe('practice-gaps-2026-03-10.csv');
    const landings = refusals.getByRole('row').filter({ hasText: 'Recent take-offs and landings' });
    expect(await landings.innerText()).toMatch(/3\s+1/);
    await sound(page);
    await look(page, name);

    await board.getByLabel('only where booked flights are lost').check();
    const [hit] = await counted();
    expect(hit).toBeLessThan(people!);
    const rows = board.getByRole('row');
    expect(await rows.nth(1).innerText()).toMatch(/NX101B/);
    await board.getByLabel('only where booked flights are lost').uncheck();

    await board.getByRole('button', { name: '30 days' }).click();
    await picture.waitFor();
    expect((await counted())[2]).toBeLessThan(lapses!);
    await board.getByLabel('Flying').selectOption('day-solo');
    await picture.or(board.getByText(/^0 of/)).first().waitFor();
    const file = page.waitForEvent('download');
    await board.getByRole('button', { name: 'CSV' }).click();
    expect((await file).suggestedFilename()).toBe('lapses-2026-03-10.csv');
    await page.context().close();
  }, 60_000);

  test('a member tells in confidence, the officer follows it up, and the receipt opens what came of it', async () => {
    const title = `Deer on the ${name}`;
    const own = await signedIn(browser, { api, ready, who: ready.member, viewport, at: '/board' });
    expect(await own.getByText('Who lapses next').count()).toBe(0);
    await own.getByText('Write a report').click();
    await own.getByLabel(/^Aircraft, if one/).selectOption('NX101B');
    await own.getByLabel('In a few words').fill(title);
    await own.getByLabel('What happened').fill('Two deer crossed the runway during the roll.');
    await own.getByLabel(/^In confidence/).check();
    await sound(own);
    await own.getByRole('button', { name: 'Send the report' }).click();
    const receipt = await own.locator('.receipt code').innerText();
    await look(own, `told-${name}`);

    const page = await signedIn(browser, { api, ready, who: officer, viewport, at: '/board' });
    const card = page.locator('.cards > li').filter({ hasText: title });
    expect(await card.innerText()).toContain('told in confidence');
    expect(await card.innerText()).toContain('NX101B');
    expect(await card.innerText()).not.toContain('Robin Member');
    await card.getByText('Follow up').click();
    await card.getByLabel('What is to be done').fill('Mend the fence');
    await card.getByRole('button', { name: 'Add the step' }).click();
    await card.getByText('Mend the fence, ').waitFor();
    await sound(page);
    await card.getByLabel('What came of it').fill('Mended');
    await card.getByRole('button', { name: 'Done today' }).click();
    await card.getByText('Mended').waitFor();
    await card.getByLabel('Finding').fill('The fence was down; it stands again.');
    await card.getByRole('button', { name: 'Close with this finding' }).click();
    await card.getByText('Closed: The fence was down').waitFor();
    await page.context().close();

    await own.getByText('What came of my confidential report?').click();
    await own.getByLabel('Receipt').fill(receipt);
    await own.getByRole('button', { name: 'Look' }).click();
    await own.getByText('The fence was down; it stands again.').waitFor();
    await own.context().close();
  }, 60_000);

  test('the officer sets when an override is looked at again', async () => {
    const [booking] = await api.sql<{ id: string; decision_id: string }>(
      'SELECT id, decision_id FROM bookings WHERE club_id = $1 LIMIT 1',
      [ready.club.clubId],
    );
    const reason = `Agreed with the ${name} officer`;
    await api.sql(
      `INSERT INTO overrides (club_id, id, booking_id, decision_id, rule_id, weight, officer_id, reason)
       VALUES ($1, $2, $3, $4, $5, 'club', $6, $7)`,
      [
        ready.club.clubId,
        newId(),
        booking!.id,
        booking!.decision_id,
        `club.of-${name}`,
        officer.memberId,
        reason,
      ],
    );
    const page = await signedIn(browser, { api, ready, who: officer, viewport, at: '/board' });
    const card = page.locator('.cards > li').filter({ hasText: reason });
    await card.getByText('Review', { exact: true }).click();
    await card.getByLabel(/^Look at it again/).fill('2026-04-01');
    await card.getByRole('button', { name: 'Record the review' }).click();
    await card.getByText('Review on').waitFor();
    await sound(page);
    await page.context().close();
  }, 60_000);
});
