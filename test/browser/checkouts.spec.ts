/** A checkout from the officer's desk to the instructor's phone beside the aircraft, in headless Chromium. */
import type { Browser, Page } from 'playwright-core';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { launch, signedIn, sound, WINDOWS, withPassword } from './chromium.js';

let api: Api;
let ready: ReadyClub;
let browser: Browser;
let officer: Session;
let teacher: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  officer = await withPassword(api, await ready.club.signInAs('safety-officer', { name: 'Sam Safety' }));
  teacher = await withPassword(api, await ready.club.signInAs('instructor', { name: 'Tess Teacher' }));
  browser = await launch();
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const CASES = [
  ['phone', 'night', 'Night'],
  ['desk', 'mountain', 'Mountains'],
] as const;

test.each(CASES)(
  'on a %s a checkout is laid down, its quiz taken, its items signed in two taps each, and the whole',
  async (name, condition, inList) => {
    const viewport = WINDOWS[name];
    const title = `Checkout by ${condition}`;
    const desk = await open(officer, viewport, '/checkouts#asked');
    await layDown(desk, { title, condition, inList });

    const learner = `Lee on the ${name}`;
    const member = await withPassword(api, await ready.club.signInAs('member', { name: learner }));
    await quizTaken(await open(member, viewport, '/checkouts'), title);

    const page = await open(teacher, viewport, '/students');
    await page.getByLabel('Another member').selectOption({ label: learner });
    // Another checkout is not begun on the second window.
    const student = page
      .getByRole('region', { name: learner })
      .getByRole('article')
      .filter({ hasText: title });
    await student.getByText('Left: 2 items.').waitFor();
    await sound(page);

    // Two taps, and it is signed.
    await student.getByRole('button', { name: /^Lights and landings/ }).click();
    await student.getByText('Three landings without a landing light').waitFor();
    await sound(page);
    const sign = student.getByRole('button', { name: 'To standard: sign' });
    expect((await sign.boundingBox())!.height).toBeGreaterThanOrEqual(56);
    await sign.click();
    await page.getByText(`Signed: Lights and landings, ${learner}.`).waitFor();
    expect(await marks(member)).toEqual(['signed']);
    await sound(page);

    // A tap by mistake is taken back by a record of its own.
    await page.getByRole('button', { name: 'Take back' }).click();
    await student.getByText('Left: 2 items.').waitFor();
    expect(await marks(member)).toEqual([]);
    const kept = await api.sql('SELECT 1 FROM checkout_marks WHERE member_id = $1', [member.memberId]);
    expect(kept).toHaveLength(2);

    await student.getByRole('button', { name: /^Way out/ }).click();
    await student.getByRole('button', { name: 'Not yet' }).click();
    await student.getByLabel('What is missing').fill('Told only one of the two ways');
    await student.getByRole('button', { name: 'Note it' }).click();
    await page.getByText(`Not yet: Way out, ${learner}.`).waitFor();
    await student.getByRole('button', { name: /^Way out Not yet to standard/ }).waitFor();
    expect(await student.getByRole('button', { name: 'Sign the whole checkout' }).count()).toBe(0);

    for (const item of ['Lights and landings', 'Way out']) {
      await student.getByRole('button', { name: new RegExp(`^${item}`) }).click();
      await student.getByRole('button', { name: 'To standard: sign' }).click();
      await page.getByText(`Signed: ${item}, ${learner}.`).waitFor();
    }
    await student.getByRole('button', { name: 'Sign the whole checkout' }).click();
    await sound(page);
    await student.getByRole('button', { name: 'Sign it off' }).click();
    await page.getByText(`Checkout signed: ${title}, ${learner}.`).waitFor();
    await sound(page);
    await page.context().close();
    const { body } = await teacher.get(`/members/${member.memberId}/checkouts`).expect(200);
    const items = (body as { items: { kind: string; condition: string; signedBy: string }[] }).items;
    expect(items).toMatchObject([{ kind: 'condition', condition, signedBy: teacher.memberId }]);

    const after = await open(member, viewport, '/checkouts');
    const standing = after.getByRole('region', { name: 'Standing' });
    await standing.getByRole('heading', { name: new RegExp(`^${title}.*Stands`) }).waitFor();
    await standing.getByText('Asked for the next time: 2 items').click();
    await sound(after);
    await after.context().close();
  },
  120_000,
);

async function open(who: Session, viewport: { width: number; height: number }, at: string): Promise<Page> {
  const page = await signedIn(browser, { api, ready, who, viewport, at });
  page.setDefaultTimeout(10_000);
  return page;
}

/** What instructors signed of a member and nobody corrected. */
async function marks({ memberId }: Session): Promise<string[]> {
  const { body } = await teacher.get(`/members/${memberId}/checkout-marks`).expect(200);
  return (body as { items: { outcome: string }[] }).items.map(({ outcome }) => outcome);
}

async function layDown(page: Page, of: { title: string; condition: string; inList: string }): Promise<void> {
  await page.getByRole('button', { name: 'Lay another checkout down' }).click();
  const form = page.getByRole('region', { name: 'Another checkout' });
  await form.getByLabel('What it is for').selectOption('condition');
  await form.getByLabel('Condition').selectOption({ label: of.inList });
  await form.getByLabel('Title').fill(of.title);
  await form.getByLabel('Days it is good for; empty: no end').fill('365');
  await form.getByLabel('A written quiz is passed first').check();
  await form.getByLabel('Questions drawn').fill('1');
  const first = form.getByRole('group', { name: 'Item 1' });
  await first.getByLabel('What is shown').fill('Lights and landings');
  await first.getByLabel('To standard means').fill('Three landings without a landing light');
  await form.getByRole('button', { name: 'Another item' }).click();
  const second = form.getByRole('group', { name: 'Item 2' });
  await second.getByLabel('What is shown').fill('Way out');
  await second.getByLabel('To standard means').fill('Names two ways out from any point of the route');
  await sound(page);
  await form.getByRole('button', { name: 'Keep it as a draft' }).click();
  const card = page.getByRole('region', { name: of.title });
  await card.getByText('Nothing is in force yet').waitFor();
  await card.getByRole('button', { name: /^Questions/ }).click();
  await card.getByRole('button', { name: 'Write a question' }).click();
  await card.getByLabel('Question', { exact: true }).fill('How long does the standby battery last?');
  await card.getByLabel('Kind of answer').selectOption('number');
  await card.getByLabel('Right number').fill('30');
  await card.getByLabel('Give or take').fill('2');
  await card.getByLabel('Unit, if any').fill('minutes');
  await card.getByLabel('Where the answer is written').fill('Flight manual, section 3');
  await sound(page);
  await card.getByRole('button', { name: 'Keep the question' }).click();
  await card.getByRole('button', { name: /^Publish “How long/ }).click();
  await card.getByText('Limits, drawn').waitFor();
  await card.getByRole('button', { name: /^Publish the draft/ }).click();
  await card.getByText(/^In force: version 1 since/).click();
  await card.getByText('Names two ways out').waitFor();
  await sound(page);
  await page.context().close();
}

async function quizTaken(page: Page, title: string): Promise<void> {
  await page.getByText(/^Not begun: \d/).click();
  await sound(page);
  const requests: string[] = [];
  page.on('response', (response) => {
    if (response.url().endsWith('/quiz')) void response.text().then((text) => requests.push(text));
  });
  await page.getByRole('link', { name: `Take the quiz of ${title}` }).click();
  await page.getByRole('heading', { name: `Quiz: ${title}` }).waitFor();
  await page.getByRole('button', { name: 'Hand in with 1 left out' }).waitFor();
  expect(requests).toHaveLength(1);
  expect(requests[0]).not.toContain('Flight manual, section 3');
  await sound(page);
  await page.getByLabel('Your answer, minutes').fill('31');
  await page.getByRole('button', { name: 'Hand in', exact: true }).click();
  await page.getByText('1 of 1 right').waitFor();
  expect(await page.locator('main').getByRole('group').innerText()).toContain(
    'Where it is written: Flight manual, section 3',
  );
  await sound(page);
  await page.context().close();
}
