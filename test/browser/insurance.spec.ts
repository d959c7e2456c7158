/** Insurance terms entered at the shop; checks recorded at the desk; and one's own papers with their last days, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, pilot, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let coordinator: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const { club } = ready;
  coordinator = await withPassword(
    api,
    await club.signInAs('maintenance-coordinator', { name: 'Cory Coordinates' }),
  );
  officer = await withPassword(api, await club.signInAs('safety-officer', { name: 'Sam Safety' }));
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('terms are entered, told, and taken back', async () => {
    const registration = name === 'phone' ? 'NX161B' : 'NX162B';
    await ready.addAircraft(registration);
    const who = await pilot(api, ready, `Wren on the ${name}`);
    const page = await signedIn(browser, {
      api,
      ready,
      who: coordinator,
      viewport,
      at: `/shop#${registration}`,
    });
    page.setDefaultTimeout(15_000);
    const card = page.locator('details.insurance');
    await card.getByText('none on record').waitFor();
    await card.getByText('Pilots the insurance covers').click();
    await card.getByText('Enter the terms of a policy').click();
    await card.getByLabel('Where it stands (policy and clause)').fill('Hull policy, clause 7');
    await card.getByLabel('First day').fill('2026-01-01');
    await card.getByLabel('Last day').fill('2026-12-31');
    await card.getByLabel('Certificate, at least').selectOption('private');
    await card.getByLabel('Hours in make and model').fill('12.5');
    await card.getByLabel('Hours lately').fill('10');
    await sound(page);
    await card.getByRole('button', { name: 'Enter the terms' }).click();
    await card.getByText('minimums.recentDays: Hours lately go with the days').waitFor();
    await card.getByLabel('… within so many days').fill('90');
    await card.getByLabel('Pilots it names').selectOption({ label: `Wren on the ${name}` });
    await card.getByRole('button', { name: 'Enter the terms' }).click();
    const terms = card.locator('[data-terms="Hull policy, clause 7"]');
    await terms.waitFor();
    const says = await terms.innerText();
    expect(says).toContain('private pilot certificate or higher');
    expect(says).toContain('12.5 h in the make and model');
    expect(says).toContain('10 h in 90 days');
    expect(says).toContain(`Names Wren on the ${name}.`);
    expect(await card.locator('.chip').first().innerText()).toContain('31 Dec 2026');
    await sound(page);

    const mine = await signedIn(browser, { api, ready, who, viewport, at: `/shop#${registration}` });
    mine.setDefaultTimeout(15_000);
    await mine.getByText('Pilots the insurance covers').click();
    await mine
      .getByText('Names one pilot, you among them.')
      .or(mine.getByText(`Names Wren on the ${name}.`))
      .waitFor();
    expect(await mine.getByText('Enter the terms of a policy').count()).toBe(0);
    await mine.context().close();

    await terms.getByText('End or take back').click();
    await terms.getByLabel('Because').fill('Of another aircraft');
    await sound(page);
    await terms.getByRole('button', { name: 'Take them back' }).click();
    await terms.waitFor({ state: 'detached' });
    await card.getByText('No terms are on record.').waitFor();
    await page.context().close();
  }, 120_000);

  test('papers say until when, and what an officer has seen', async () => {
    const who = await withPassword(api, await ready.club.signInAs('member', { name: `Ada on the ${name}` }));
    await api.sql("UPDATE members SET birth_date = '1990-06-01' WHERE id = $1", [who.memberId]);
    await who.post(`/members/${who.memberId}/medicals`, { class: 1, examOn: '2025-01-15' }).expect(201);

    const desk = await signedIn(browser, { api, ready, who: officer, viewport, at: '/papers' });
    desk.setDefaultTimeout(15_000);
    const checks = desk.getByRole('region', { name: 'Identity and citizenship' });
    await checks.getByLabel('Member').selectOption({ label: `Ada on the ${name}` });
    await checks.getByText('None on record.').waitFor();
    await checks.getByLabel('Kind').selectOption('identity');
    await checks.getByLabel('Holds through, if it names an end').fill('2031-05-05');
    await sound(desk);
    await checks.getByRole('button', { name: 'I have seen the original' }).click();
    await checks.getByText('Identity document: seen on').waitFor();
    await sound(desk);

    const page = await signedIn(browser, { api, ready, who, viewport, at: '/papers' });
    page.setDefaultTimeout(15_000);
    const holds = page.getByRole('list', { name: 'Until when: Class 1, examined 2025-01-15' });
    await holds.waitFor();
    // 14 CFR 61.23(d), under 40: twelve calendar months, and sixty.
    expect((await holds.innerText()).split('\n')).toEqual([
      'airline transport privileges: ended 31 Jan 2026',
      'commercial privileges: ended 31 Jan 2026',
      'private, recreational, student or instructor privileges: through 31 Jan 2030',
    ]);
    const own = page.getByRole('region', { name: 'Seen by an officer' });
    await own.getByText('Identity document: seen on').waitFor();
    expect(await own.innerText()).toContain('good through 5 May 2031');
    await sound(page);
    await page.context().close();

    await checks.getByLabel('To take one back: why').fill('Of her sister');
    await checks.getByRole('button', { name: /^Take back: Identity document/ }).click();
    await checks.getByText('Taken back: Of her sister').waitFor();
    await desk.context().close();
  }, 120_000);
});
