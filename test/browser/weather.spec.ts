/** Weather reports pasted with a question, and what was made of them, on a phone and at the desk, in headless Chromium. */
import type { Browser } from 'playwright-core';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { ask, launch, pilot, signedIn, sound, WINDOWS } from './chromium.js';

const PICTURES = process.env['BELLCRANK_TEST_PICTURES'];
let api: Api;
let ready: ReadyClub;
let browser: Browser;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await api?.stop();
});

const METAR = 'METAR XQHB 101453Z 27012G20KT 10SM SCT045 12/02 A3001';
/** Holds for the flight, 18:00Z to 20:00Z of the 11th; copied over two lines, as they come. */
const TAF = 'TAF XQHB 101440Z 1015/1121 27010KT P6SM SCT050\n  FM111700 18014G22KT P6SM BKN040';

describe.each(Object.entries(WINDOWS))('on a %s', (name, viewport) => {
  test('pasted reports are read, told phase by phase, and shown word for word', async () => {
    const who = await pilot(api, ready, `Looks up on the ${name}`);
    const page = await signedIn(browser, { api, ready, who, viewport });
    page.setDefaultTimeout(60_000);
    await page.getByText('Loading, weather, route').click();
    await page.getByLabel(/^Reports and forecasts/).fill(`${METAR}\n${TAF}`);
    await ask(page, '13:00', '15:00');
    const card = page.locator('[data-registration=NX101B]');
    await card.getByText('Weather for NX101B').click();
    const work = card.locator('details.weather');
    await work.locator('.phases li').first().waitFor();
    const phases = await work.locator('.phases').innerText();
    // What the forecast says of the time of the flight, not of the time of asking.
    expect(phases).toContain('14 kt');
    expect(phases).not.toContain('10 kt');
    // The report's wind, and the forecast's on each runway, told once though it is the same at both ends.
    const captions = await work.locator('table caption').allInnerTexts();
    expect(captions).toHaveLength(2);
    expect(captions[1]).toBe('XQHB, forecast for the departure and the arrival');
    expect(await work.locator('table').nth(1).innerText()).toContain('gusts');
    const reports = await work.locator('figure code').allInnerTexts();
    expect(reports).toEqual([METAR, TAF.replace(/\s+/g, ' ')]);
    for (const caption of await work.locator('figcaption').allInnerTexts())
      expect(caption).toContain('pasted');
    expect(await work.locator('.caution').innerText()).not.toBe('');
    await sound(page);
    if (PICTURES) await page.screenshot({ path: `${PICTURES}/weather-${name}.png`, fullPage: true });

    // A report of nowhere, or of no form, is refused in words beside the form.
    await page.getByLabel(/^Reports and forecasts/).fill(METAR.replace('XQHB', 'XQZZ'));
    await page.getByRole('button', { name: 'Ask the club' }).click();
    expect(await page.locator('form.ask').getByRole('alert').innerText()).toContain('XQZZ');
    await sound(page);
    await page.context().close();
  }, 120_000);
});
