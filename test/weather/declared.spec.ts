/** Reports put where told weather stands, and what was pasted as single reports. The code's groups: AIM 7-1, key to the code. */
import { withReports, type FlightFacts, type WeatherReport } from '../../src/rules/index.js';
import { baseSheet, HOME_FIELD } from '../../src/rules/workshop/base-sheet.js';
import { readReport } from '../../src/weather/decode/read-report.js';
import { pastedReports } from '../../src/web/page/ask/pasted.js';

const report = (kind: 'metar' | 'taf', text: string, more: Partial<WeatherReport> = {}): WeatherReport => ({
  ...readReport(kind, text, '2027-03-01T17:00:00Z'),
  ...{ id: text.slice(0, 20), source: 'fetched', obtainedAt: '2027-03-01T17:00:00Z', ...more },
});
const AWAY = { ...HOME_FIELD, id: 'away', code: 'XQPV' };
/** 18:00 to 19:00, home and away. */
const flight = (more: Partial<FlightFacts> = {}): FlightFacts => ({
  ...baseSheet().flight,
  ...{ route: [HOME_FIELD, AWAY], weather: null, destinationForecast: null, ...more },
});
const METAR = report('metar', 'METAR XQHB 011653Z 12010G18KT 1/2SM RA OVC004 08/07 A2992');

describe('a report of the field of departure', () => {
  it('is the weather told', () => {
    expect(withReports(flight(), [METAR]).weather).toEqual({
      ...{ observedAt: '2027-03-01T16:53:00Z', windFromDeg: 120, windKt: 10, gustKt: 18 },
      ...{ visibilitySm: 0.5, ceilingFtAgl: 400, temperatureC: 8, altimeterInHg: 29.92, wet: true },
    });
  });
  it.each([
    [
      'a wind between two directions may come from either',
      '18010KT 150V210 10SM CLR',
      { windFromDeg: null, windKt: 10 },
    ],
    [
      'less than a quarter promises nothing',
      '00000KT M1/4SM FG VV001',
      { visibilitySm: 0, ceilingFtAgl: 100 },
    ],
    ['whether it rained before is not told', '18010KT 10SM CLR', { wet: null, gustKt: null }],
    ['rain in the vicinity wets no runway', '18010KT 10SM VCSH CLR', { wet: null }],
    ['snow does', '18010KT 2SM -SN OVC012', { wet: true }],
    [
      'what is missing stays unknown',
      '18010KT',
      { visibilitySm: null, ceilingFtAgl: null, temperatureC: null },
    ],
  ])('%s', (_, groups, is) => {
    expect(withReports(flight(), [report('metar', `METAR XQHB 011653Z ${groups}`)]).weather).toMatchObject(
      is,
    );
  });
  it('says nothing where it is NIL', () => {
    expect(withReports(flight(), [report('metar', 'METAR XQHB 011653Z NIL')]).weather).toBeNull();
  });
  it('does not go before what was told by hand', () => {
    const told = { ...withReports(flight(), [METAR]).weather!, visibilitySm: 7 };
    expect(withReports(flight({ weather: told }), [METAR]).weather).toBe(told);
  });
  it('is laid under what was told of the runways alone', () => {
    const nothing = Object.fromEntries(
      Object.keys(withReports(flight(), [METAR]).weather!).map((key) => [key, null]),
    );
    const told = { ...nothing, observedAt: '2027-03-01T17:30:00Z', wet: false } as never;
    expect(withReports(flight({ weather: told }), [METAR]).weather).toMatchObject({
      ...{ wet: false, visibilitySm: 0.5, observedAt: '2027-03-01T16:53:00Z' },
    });
  });
  it('of another place is left out', () => {
    const elsewhere = report('metar', 'METAR XQZZ 011653Z 18010KT 10SM CLR');
    const before = flight();
    expect(withReports(before, [elsewhere])).toBe(before);
  });
});

describe('the forecast for the destination', () => {
  const TAF =
    'TAF XQPV 011130Z 0112/0212 09008KT P6SM BKN040 TEMPO 0118/0120 2SM TSRA BKN008CB FM012000 18010KT 1SM BKN003';
  const of = (text: string, more: Partial<FlightFacts> = {}) =>
    withReports(flight(more), [report('taf', text)]).destinationForecast;

  it('is the worst that prevails from an hour before the arrival to an hour after', () => {
    // Arrives at 19:00: FM at 20:00 is within, since both ends count (14 CFR 91.167(b)(2)(i), from memory).
    expect(of(TAF)).toEqual({
      ...{ from: '2027-03-01T18:00:00Z', to: '2027-03-01T20:00:00Z', approachPublished: null },
      ...{ ceilingFtAgl: 300, visibilitySm: 1 },
    });
    expect(of(TAF.replace('FM012000', 'FM012001'))).toMatchObject({ ceilingFtAgl: 4000, visibilitySm: 6 });
  });
  it('counts what may pass through under IFR', () => {
    const later = TAF.replace('FM012000', 'FM012001');
    expect(of(later, { flightRules: 'IFR' })).toMatchObject({ ceilingFtAgl: 800, visibilitySm: 2 });
  });
  it('keeps the approach that was told, and a forecast told by hand', () => {
    const told = { from: null, to: null, ceilingFtAgl: null, visibilitySm: null, approachPublished: true };
    expect(of(TAF, { destinationForecast: told })).toMatchObject({
      approachPublished: true,
      visibilitySm: 1,
    });
    const byHand = { ...told, from: '2027-03-01T17:00:00Z', to: '2027-03-01T21:00:00Z' };
    expect(of(TAF, { destinationForecast: byHand })).toBe(byHand);
  });
  it('is none where it does not reach the hour after, or a part leaves it open', () => {
    expect(of('TAF XQPV 011130Z 0112/0119 09008KT P6SM BKN040')).toBeNull();
    expect(of('TAF XQPV 011130Z 0112/0212 09008KT P6SM')).toMatchObject({
      ceilingFtAgl: null,
      visibilitySm: 6,
    });
    expect(of('TAF XQPV 011130Z 0112/0212 CNL')).toBeNull();
  });
});

describe('pasted text', () => {
  it.each<[string, object | null]>([
    ['', null],
    [' \n ', null],
    ['METAR XQHB 011653Z 18010KT', { metar: ['METAR XQHB 011653Z 18010KT'], taf: [] }],
    [
      'xqhb 011653z 18010kt\nxqpv 011655z 09005kt',
      { metar: ['xqhb 011653z 18010kt', 'xqpv 011655z 09005kt'], taf: [] },
    ],
    [
      'TAF XQPV 011130Z 0112/0212 09008KT\n  FM012000 18010KT\nSPECI XQHB 011700Z 00000KT=',
      { metar: ['SPECI XQHB 011700Z 00000KT'], taf: ['TAF XQPV 011130Z 0112/0212 09008KT FM012000 18010KT'] },
    ],
    ['XQPV 011130Z 0112/0212 09008KT P6SM', { metar: [], taf: ['XQPV 011130Z 0112/0212 09008KT P6SM'] }],
    ['nothing of the kind', { metar: ['nothing of the kind'], taf: [] }],
  ])('%j', (text, is) => {
    expect(pastedReports(text)).toEqual(is);
  });
});
