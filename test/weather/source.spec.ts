/** The weather source against a stand-in on loopback. Whatever goes wrong there, asking goes on and nothing becomes a yes. */
import { FixedClock } from '../../src/platform/clock.js';
import { AppConfig } from '../../src/platform/config.js';
import { parseConfig } from '../../src/platform/config.js';
import { WeatherSource } from '../../src/weather/source/weather-source.js';
import { reportsIn } from '../../src/weather/source/texts.js';
import { WeatherStandIn } from '../support/weather-stand-in.js';

const METAR = 'METAR XQHB 101453Z 09008KT 10SM FEW045 12/02 A3001';
const TAF = 'TAF XQHB 101120Z 1012/1112 09008KT P6SM SCT050\n  FM101800 10012G20KT P6SM BKN040';
const NOW = '2026-03-10T15:00:00Z';

describe('the source', () => {
  let standIn: WeatherStandIn;
  let clock: FixedClock;
  let source: WeatherSource;
  beforeEach(async () => {
    standIn = await WeatherStandIn.start();
    standIn.texts.metar['XQHB'] = METAR;
    standIn.texts.taf['XQHB'] = TAF;
    clock = new FixedClock(NOW);
    source = of({});
  });
  afterEach(() => standIn.stop());

  const of = (settings: { cacheSeconds?: number; timeoutMs?: number }): WeatherSource => {
    const env = { BELLCRANK_SECRET: 'a secret of thirty-two characters!' };
    const weather = { url: standIn.url, timeoutMs: 400, cacheSeconds: 300, ...settings };
    const made = new WeatherSource(new AppConfig({ ...(parseConfig(env) as AppConfig), weather }), clock);
    (made as unknown as { logger: object }).logger = { warn: () => undefined };
    return made;
  };
  const got = async (...stations: string[]): Promise<string[]> =>
    (await source.reportsOf(stations)).map(({ kind, airfield }) => `${kind} ${airfield}`).sort();

  it('gives reports and forecasts, lines that go on included', async () => {
    const reports = await source.reportsOf(['XQHB', 'XQPV']);
    expect(reports.map(({ kind, airfield, periods }) => [kind, airfield, periods.length])).toEqual([
      ['metar', 'XQHB', 0],
      ['taf', 'XQHB', 2],
    ]);
    expect([...standIn.asked].sort()).toEqual(['metar XQHB,XQPV', 'taf XQHB,XQPV']);
  });

  it('asks for a station again only after a while, and for new ones alone', async () => {
    await got('XQHB');
    await got('XQHB');
    expect(standIn.asked).toHaveLength(2);
    await got('XQHB', 'XQPV');
    expect([...standIn.asked].sort()).toEqual(['metar XQHB', 'metar XQPV', 'taf XQHB', 'taf XQPV']);
    clock.set('2026-03-10T15:04:59Z');
    await got('XQHB');
    expect(standIn.asked).toHaveLength(4);
    clock.set('2026-03-10T15:05:00Z');
    await got('XQHB');
    expect(standIn.asked).toHaveLength(6);
  });

  it('answers many who ask at once with one request of each kind', async () => {
    await Promise.all(Array.from({ length: 20 }, () => got('XQHB')));
    expect(standIn.asked).toHaveLength(2);
  });

  it('tries once more', async () => {
    standIn.behaviour = 'fails-once';
    expect(await got('XQHB')).toEqual(['metar XQHB', 'taf XQHB']);
  });

  it.each(['fails', 'hangs', 'empty', 'nonsense'] as const)(
    'gives nothing where it %s',
    async (behaviour) => {
      standIn.behaviour = behaviour;
      expect(await got('XQHB')).toEqual([]);
    },
  );

  it('leaves a source that failed alone for half a minute, then asks again', async () => {
    standIn.behaviour = 'fails';
    await got('XQHB');
    const tries = standIn.asked.length;
    expect(tries).toBe(4);
    standIn.behaviour = 'answers';
    expect(await got('XQHB')).toEqual([]);
    expect(standIn.asked).toHaveLength(tries);
    clock.set('2026-03-10T15:00:30Z');
    expect(await got('XQHB')).toEqual(['metar XQHB', 'taf XQHB']);
  });

  it('passes over a malformed report and reports of other stations', async () => {
    standIn.texts.metar['XQHB'] = `METAR XQHB garbled\n${METAR.replace('XQHB', 'XQZZ')}\n${METAR}`;
    expect((await source.reportsOf(['XQHB'])).map(({ text }) => text)[0]).toBe(METAR);
    expect(await got('XQHB')).toEqual(['metar XQHB', 'taf XQHB']);
  });

  it('waits no longer than twice the time set', async () => {
    standIn.behaviour = 'hangs';
    const begun = Date.now();
    await got('XQHB');
    const took = Date.now() - begun;
    expect(took).toBeGreaterThanOrEqual(1000);
    expect(took).toBeLessThan(5000);
  });
});

it.each([
  ['A\nB\n', ['A', 'B']],
  ['A\r\n  goes on\r\n\r\nB', ['A goes on', 'B']],
  ['', []],
  ['  begins indented', ['begins indented']],
])('reports in %j', (answer, is) => {
  expect(reportsIn(answer)).toEqual(is);
});
