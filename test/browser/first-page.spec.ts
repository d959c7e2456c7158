/** The first page as a member uses it, in headless Chromium, on a phone-sized and on a desk-sized window. */
import type { Browser, Page } from 'playwright-core';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import * as chromium from './chromium.js';
import { addressOf, ask, launch, overflow, violations, WINDOWS, type Viewport } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const grounded = await ready.addAircraft('NX102B');
  await insertInto(api.sql, ready.club.clubId)('squawks', {
    id: newId(),
    aircraft_id: grounded,
    reported_at: '2026-03-09T12:00:00Z',
    reported_by: ready.member.memberId,
    title: 'Left brake soft',
    state: 'grounding',
  });
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const pilot = (name: string): Promise<Session> => chromium.pilot(api, ready, name);
const signedIn = (who: Session, viewport: Viewport): Promise<Page> =>
  chromium.signedIn(browser, { api, ready, who, viewport });

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  const [from, to] = name === 'phone' ? ['09:00', '11:00'] : ['13:00', '15:00'];

  test('tomorrow with two passengers: which aircraft and why not the others; book; the next is told who has it', async () => {
    const first = await pilot(`First on the ${name}`);
    const page = await signedIn(first, viewport);
    await ask(page, from, to);

    const free = page.locator('[data-registration=NX101B]');
    const grounded = page.locator('[data-registration=NX102B]');
    expect(await free.getAttribute('data-answer')).toMatch(/^yes/);
    expect(await free.locator('.horizon').innerText()).toMatch(/^Holds for a departure before \w{3} \d/);
    expect(await grounded.getAttribute('data-answer')).toBe('no');
    expect(await grounded.locator('[data-rule="squawk.grounding"]').innerText()).toContain('Left brake soft');
    expect(await page.locator('.caution').innerText()).toContain('pilot in command decides');
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);

    await free.getByText(/rules met/).click();
    expect(await free.locator('[data-rule="recency.passengers.day"]').innerText()).toContain(
      'good through 21 May 2026',
    );

    await page.getByRole('button', { name: 'Book NX101B' }).click();
    await free.locator('.booked').waitFor();
    // The club's zone is Chicago's, whatever zone the phone is in.
    await page.locator('.flight', { hasText: `NX101B Wed 11 Mar ${from} to ${to}` }).waitFor();

    const second = await signedIn(await pilot(`Second on the ${name}`), viewport);
    await ask(second, from, to);
    const taken = second.locator('[data-registration=NX101B]');
    expect(await taken.getAttribute('data-answer')).toBe('no');
    const why = await taken.locator('[data-rule="calendar.aircraft_free"]').innerText();
    expect(why).toContain(`First on the ${name}`);
    expect(why).toContain(to);
    expect(await violations(second)).toEqual([]);

    await page.getByRole('button', { name: /^Cancel NX101B/ }).click();
    // Within a day of departure the club asks why.
    await page.getByRole('textbox', { name: /^Why/ }).fill('Weather');
    await page.getByRole('button', { name: 'Give it back' }).click();
    await page.getByText('Nothing booked.').waitFor();
    await page.context().close();
    await second.context().close();
  }, 60_000);

  test('a wrong password, and a slot lost while looking, are told', async () => {
    const context = await browser.newContext({ viewport });
    const page = await context.newPage();
    await page.goto(addressOf(api));
    expect(await violations(page)).toEqual([]);
    await page.getByLabel('Club').fill(ready.club.slug);
    await page.getByLabel('E-mail').fill('nobody@larkfield.example');
    await page.getByLabel('Password').fill('not the password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    expect(await page.getByRole('alert').innerText()).not.toBe('');
    await context.close();

    const slow = await signedIn(await pilot(`Slow on the ${name}`), viewport);
    const quick = await pilot(`Quick on the ${name}`);
    const [leaving, back] = name === 'phone' ? ['16:00', '17:00'] : ['11:30', '12:30'];
    await ask(slow, leaving, back);
    const departs = name === 'phone' ? '2026-03-11T21:00:00Z' : '2026-03-11T16:30:00Z';
    await quick
      .post('/bookings', {
        aircraftId: ready.aircraftId,
        departs,
        arrives: departs.replace(/T(\d\d)/, (_all, hour: string) => `T${Number(hour) + 1}`),
        purpose: 'solo',
        personsOnBoard: 1,
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    await slow.getByRole('button', { name: 'Book NX101B' }).click();
    expect(await slow.getByRole('alert').innerText()).toContain(
      `Quick on the ${name} has NX101B from ${leaving} to ${back}`,
    );
    await slow.context().close();
  }, 60_000);

  test('an officer asks for a member, and sets a rule of the club aside with a reason that stays', async () => {
    const member = await pilot(`Suspended on the ${name}`);
    await api.sql("UPDATE members SET standing = 'suspended', standing_since = '2026-03-01' WHERE id = $1", [
      member.memberId,
    ]);
    const [leaving, back] = name === 'phone' ? ['17:00', '17:45'] : ['15:00', '15:45'];
    const officer = await chromium.withPassword(
      api,
      await ready.club.signInAs('safety-officer', { name: `Officer of the ${name}` }),
    );
    const page = await signedIn(officer, viewport);
    await page.getByLabel('Who flies').selectOption({ label: `Suspended on the ${name} wants` });
    await page.getByLabel('What kind of flight').selectOption('solo');
    await ask(page, leaving, back);
    const aircraft = page.locator('[data-registration=NX101B]');
    expect(await aircraft.getAttribute('data-answer')).toBe('ask-officer');
    expect(await page.locator('.answers h2').innerText()).toContain(`Suspended on the ${name}, `);
    expect(await page.getByRole('button', { name: 'Book NX101B', exact: true }).count()).toBe(0);

    await aircraft.getByText('Set the club’s rules aside for NX101B').click();
    const all = aircraft.getByRole('button', { name: 'Book NX101B all the same' });
    expect(await all.isDisabled()).toBe(true);
    const reason = aircraft.getByLabel(/^Set the club’s rules aside this once/);
    await reason.fill('Paid');
    await all.click();
    // Too short a reason is no reason; the form stays as it is.
    expect(await aircraft.getByRole('alert').innerText()).toContain('10');
    await reason.fill('Paid at the desk this morning, standing follows');
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await all.click();
    await aircraft.locator('.booked').waitFor();
    const kept = await api.sql(
      `SELECT o.reason, o.rule_id AS rule, b.member_id = $2 AS theirs FROM overrides o
         JOIN bookings b ON b.club_id = o.club_id AND b.id = o.booking_id WHERE o.officer_id = $1`,
      [officer.memberId, member.memberId],
    );
    expect(kept).toEqual([
      { reason: 'Paid at the desk this morning, standing follows', rule: 'club.standing', theirs: true },
    ]);
    await page.context().close();

    // To the member the same answer says whom to ask, and offers nothing to set aside.
    const own = await signedIn(member, viewport);
    expect(await own.getByLabel('Who flies').count()).toBe(0);
    await ask(own, name === 'phone' ? '18:00' : '16:30', name === 'phone' ? '18:30' : '17:00');
    expect(await own.locator('.all-the-same').count()).toBe(0);
    await own.context().close();
  }, 60_000);
});
