/** Entering a paper with a scan on a phone, and verifying it at the desk, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { exif, jpegWith, SECRET } from '../fleet/pictures.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  officer = await withPassword(api, await ready.club.signInAs('safety-officer', { name: 'Sam Safety' }));
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

test.each(Object.entries(WINDOWS))(
  'on a %s a paper is entered with its scan, and verified',
  async (name, viewport) => {
    const who = await withPassword(api, await ready.club.signInAs('member', { name: `Wren on the ${name}` }));
    const page = await signedIn(browser, { api, ready, who, viewport, at: '/papers' });
    page.setDefaultTimeout(8000);
    const medicals = page.getByRole('region', { name: 'Medical certificates' });
    await medicals.getByText('None on record.').waitFor();
    await medicals.getByText('Enter one').click();
    await medicals.getByLabel('Class').selectOption('3');
    await medicals.getByLabel('Examined on').fill('2025-05-05');
    await medicals.getByLabel(/^Limitations/).fill('Must wear corrective lenses');
    await sound(page);
    await medicals.getByRole('button', { name: 'Save' }).click();
    const paper = page.locator('[data-paper="Class 3, examined 2025-05-05"]');
    expect(await paper.innerText()).toContain('Not verified: an officer has to see the original.');
    await paper
      .getByLabel(/^Add a photo or PDF/)
      .setInputFiles({ name: 'medical.jpg', mimeType: 'image/jpeg', buffer: jpegWith(exif(1)) });
    await paper.getByRole('button', { name: /^Open document 1/ }).waitFor();
    const [kept] = await api.sql<{ content: Buffer }>('SELECT content FROM documents WHERE member_id = $1', [
      who.memberId,
    ]);
    expect(kept!.content.includes(SECRET)).toBe(false);
    await sound(page);
    const certificates = page.getByRole('region', { name: 'Pilot certificates' });
    await certificates.getByText('Enter one').click();
    await certificates.getByLabel('Level').selectOption('private');
    await certificates.getByLabel('Issued on').fill('2019-06-01');
    await certificates.getByLabel('airplane, single-engine land').check();
    await certificates.getByRole('button', { name: 'Save' }).click();
    await page.locator('[data-paper="private certificate of 2019-06-01"]').waitFor();
    const ratings = await api.sql(
      'SELECT r.category, r.class FROM certificate_ratings r JOIN certificates c ON c.id = r.certificate_id WHERE c.member_id = $1',
      [who.memberId],
    );
    expect(ratings).toEqual([{ category: 'airplane', class: 'single-engine-land' }]);
    await certificates.getByRole('button', { name: /^Change private certificate/ }).click();
    const change = page.getByRole('form', { name: /^Change: private certificate/ });
    expect(await change.getByLabel('airplane, single-engine land').isChecked()).toBe(true);
    await change.getByLabel('airplane, multi-engine land').check();
    await change.getByLabel(/^Limitations/).fill('No night flying');
    await sound(page);
    await change.getByRole('button', { name: 'Save' }).click();
    await change.waitFor({ state: 'detached' });
    const [changed] = await api.sql<{ limitations: string[]; ratings: number; issued_on: string }>(
      `SELECT c.limitations, c.issued_on::text, (SELECT count(*)::int FROM certificate_ratings r WHERE r.certificate_id = c.id) AS ratings
         FROM certificates c WHERE c.member_id = $1`,
      [who.memberId],
    );
    expect(changed).toEqual({ limitations: ['No night flying'], ratings: 2, issued_on: '2019-06-01' });
    await certificates.getByRole('button', { name: /^Delete private certificate/ }).click();
    await sound(page);
    await certificates.getByRole('button', { name: 'Delete for good' }).click();
    await certificates.getByText('None on record.').waitFor();
    await page.context().close();

    const desk = await signedIn(browser, { api, ready, who: officer, viewport, at: '/papers' });
    desk.setDefaultTimeout(8000);
    const waiting = desk.locator(`[data-waiting="Medical certificates of Wren on the ${name}"]`);
    await waiting.getByRole('button', { name: /^Look at/ }).click();
    await waiting.getByText('Must wear corrective lenses').waitFor();
    const read = desk.waitForEvent('download');
    await waiting.getByRole('button', { name: /^Open document 1/ }).click();
    await read;
    await sound(desk);
    await waiting.getByRole('button', { name: 'I have seen the original' }).click();
    await waiting.waitFor({ state: 'detached' });
    await desk.context().close();
    const rows = await api.sql('SELECT verified_by FROM medicals WHERE member_id = $1', [who.memberId]);
    expect(rows).toEqual([{ verified_by: officer.memberId }]);

    // What an officer has verified is the member's to change, and not to delete; once changed it is verified no more.
    const again = await signedIn(browser, { api, ready, who, viewport, at: '/papers' });
    again.setDefaultTimeout(8000);
    const verified = again.locator('[data-paper="Class 3, examined 2025-05-05"]');
    await verified.getByText(/^Verified/).waitFor();
    expect(await verified.getByRole('button', { name: /^Delete Class/ }).count()).toBe(0);
    await verified.getByRole('button', { name: /^Change Class/ }).click();
    await verified.getByText(/^Once you change it/).waitFor();
    await verified.getByLabel('Examined on').fill('2025-05-06');
    await verified.getByRole('button', { name: 'Save' }).click();
    const later = again.locator('[data-paper="Class 3, examined 2025-05-06"]');
    await later.getByText('Not verified').waitFor();
    await again.context().close();
  },
  60_000,
);
