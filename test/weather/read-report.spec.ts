/**
 * Reading reports and forecasts, against published examples of the code.
 *
 * - Key to aerodrome forecast (TAF) and aviation routine weather report (METAR), FAA Aeronautical Information Manual, 7-1: seen.
 * - WMO-No. 306, FM 15 (code form, 15.6, 15.9, 15.10) and FM 51: code form seen, the rest from memory.
 * - ICAO Annex 3, appendix 3 and 5 (YUDO examples): from memory.
 */
import { readReport, tidy, UnreadableReport } from '../../src/weather/decode/read-report.js';

const metar = (text: string, near = '2026-03-09T20:00:00Z') => readReport('metar', text, near);
const taf = (text: string, near = '2026-03-09T18:00:00Z') => readReport('taf', text, near);
const seen = (text: string) => metar(text).observed!;
/** A report of the ninth with these groups. */
const with_ = (groups: string) => seen(`METAR XQHB 091955Z ${groups}`);

const AIM_METAR =
  'METAR KPIT 091955Z COR 22015G25KT 3/4SM R28L/2600FT TSRA OVC010CB 18/16 A2992 RMK SLP045 T01820159';
const AIM_TAF = `TAF KPIT 091730Z 0918/1024 15005KT 5SM HZ FEW020 WS010/31022KT
  FM091930 30015G25KT 3SM SHRA OVC015 TEMPO 0920/0922 1/2SM +TSRA OVC008CB
  FM100100 27008KT 5SM SHRA BKN020 OVC040 PROB30 1004/1007 1SM -RA BR
  FM101015 18005KT 6SM -SHRA OVC020 BECMG 1013/1015 P6SM NSW SKC`;

describe('the report of the AIM’s key to the code', () => {
  it('is read group by group', () => {
    expect(metar(AIM_METAR)).toMatchObject({
      ...{ kind: 'metar', airfield: 'KPIT', issuedAt: '2026-03-09T19:55:00Z', trend: null, unread: [] },
      observed: {
        ...{ windFromDeg: 220, windKt: 15, gustKt: 25, windVaries: null },
        ...{ visibilitySm: 0.75, visibilityIs: 'exactly', ceilingFtAgl: 1000, ceilingIs: 'base' },
        ...{ phenomena: ['TSRA'], temperatureC: 18, dewPointC: 16, altimeterInHg: 29.92 },
      },
    });
  });
});

describe('the forecast of the AIM’s key to the code', () => {
  const read = taf(AIM_TAF);
  const parts = read.periods.map(({ change, probabilityPercent, from, to, conditions }) => [
    ...[change, probabilityPercent, from.slice(8, 16), to.slice(8, 16)],
    ...[conditions.windFromDeg, conditions.windKt, conditions.gustKt],
    ...[conditions.visibilitySm, conditions.ceilingFtAgl, conditions.ceilingIs],
  ]);

  it('holds from 18Z on the ninth to 24Z on the tenth', () => {
    expect(read).toMatchObject({ issuedAt: '2026-03-09T17:30:00Z', unread: [] });
    expect([read.from, read.to]).toEqual(['2026-03-09T18:00:00Z', '2026-03-11T00:00:00Z']);
  });

  it('has its parts, FM from the minute, TEMPO and PROB beside what prevails, BECMG over its two hours', () => {
    expect(parts).toEqual([
      ['prevailing', null, '09T18:00', '09T19:30', 150, 5, null, 5, 12_000, 'none-below'],
      ['prevailing', null, '09T19:30', '10T01:00', 300, 15, 25, 3, 1500, 'base'],
      ['temporary', null, '09T20:00', '09T22:00', null, null, null, 0.5, 800, 'base'],
      ['prevailing', null, '10T01:00', '10T10:15', 270, 8, null, 5, 2000, 'base'],
      ['probable', 30, '10T04:00', '10T07:00', null, null, null, 1, null, null],
      ['prevailing', null, '10T10:15', '10T15:00', 180, 5, null, 6, 2000, 'base'],
      ['prevailing', null, '10T13:00', '11T00:00', 180, 5, null, 6, 12_000, 'none-below'],
    ]);
    expect(read.periods.map(({ conditions }) => conditions.phenomena.join(' '))).toEqual([
      ...['HZ', 'SHRA', '+TSRA', 'SHRA', '-RA BR', '-SHRA', 'NSW'],
    ]);
    expect(read.periods.at(-1)!.conditions.visibilityIs).toBe('at-least');
  });
});

describe('the examples of ICAO Annex 3', () => {
  it('a report in metres and metres a second, with what it adds about the next two hours', () => {
    const read = metar(
      'METAR YUDO 221630Z 24004MPS 0600 R12/1000U DZ FG SCT010 OVC020 17/16 Q1018 BECMG TL1700 0800 FG BECMG AT1800 9999 NSW',
      '2026-03-22T17:00:00Z',
    );
    expect(read.unread).toEqual([]);
    // 4 m/s are 7.8 kt; 600 m are 0.373 SM, rounded down; 1018 hPa are 30.06 inHg.
    expect(read.observed).toMatchObject({
      ...{ windFromDeg: 240, windKt: 7.8, visibilitySm: 0.37, ceilingFtAgl: 2000 },
      ...{ phenomena: ['DZ', 'FG'], temperatureC: 17, dewPointC: 16, altimeterInHg: 30.06 },
    });
    expect(read.trend).toBe('BECMG TL1700 0800 FG BECMG AT1800 9999 NSW');
  });

  it('a forecast that keeps what BECMG does not name', () => {
    const read = taf(
      'TAF YUDO 151800Z 1600/1618 13005MPS 9000 BKN020 BECMG 1606/1608 SCT015CB BKN020 TEMPO 1608/1612 17006G12MPS 1000 TSRA SCT010CB BKN020 FM161230 15004MPS 9999 BKN020',
      '2026-03-15T18:00:00Z',
    );
    expect(read.unread).toEqual([]);
    // 9000 m are 5.59 SM, 10 km 6.21 SM.
    expect(
      read.periods.map(({ change, from, to, conditions }) => [change, from, to, conditions.visibilitySm]),
    ).toEqual([
      ['prevailing', '2026-03-16T00:00:00Z', '2026-03-16T08:00:00Z', 5.59],
      ['prevailing', '2026-03-16T06:00:00Z', '2026-03-16T12:30:00Z', 5.59],
      ['temporary', '2026-03-16T08:00:00Z', '2026-03-16T12:00:00Z', 0.62],
      ['prevailing', '2026-03-16T12:30:00Z', '2026-03-16T18:00:00Z', 6.21],
    ]);
    expect(read.periods[1]!.conditions.windKt).toBe(9.7);
    expect(read.periods[2]!.conditions).toMatchObject({ windKt: 11.7, gustKt: 23.3, phenomena: ['TSRA'] });
  });
});

describe('wind', () => {
  it.each<[string, object]>([
    ['VRB03KT', { windFromDeg: null, windKt: 3, windVaries: 'any' }],
    ['21010KT 180V240', { windFromDeg: 210, windKt: 10, windVaries: { fromDeg: 180, toDeg: 240 } }],
    ['00000KT', { windFromDeg: 0, windKt: 0, windVaries: null }],
    ['27036KMH', { windFromDeg: 270, windKt: 19.4 }],
    ['24015G25MPS', { windKt: 29.2, gustKt: 48.6 }],
    // Not measured, or beyond what is told: unknown.
    ['/////KT', { windFromDeg: null, windKt: null, gustKt: null, windVaries: null }],
    ['240P99KT', { windKt: null }],
    ['2401KT', { windKt: null }],
  ])('%s', (wind, is) => {
    expect(with_(`${wind} 10SM CLR 10/05 A3000`)).toMatchObject(is);
  });
});

describe('visibility', () => {
  it.each<[string, number | null, string | null]>([
    ['10SM', 10, 'exactly'],
    ['P6SM', 6, 'at-least'],
    ['M1/4SM', 0.25, 'less-than'],
    ['1 1/2SM', 1.5, 'exactly'],
    ['1/2SM', 0.5, 'exactly'],
    ['9999', 6.21, 'at-least'],
    ['0800', 0.49, 'exactly'],
    ['5000', 3.1, 'exactly'],
    // Where it is worse to one side, the worse.
    ['2000 1200NE', 0.74, 'exactly'],
    ['////', null, null],
    ['15KM', null, null],
    ['', null, null],
  ])('%s', (written, visibilitySm, visibilityIs) => {
    expect(with_(`09008KT ${written} OVC030 10/05 A3000`)).toMatchObject({ visibilitySm, visibilityIs });
  });
  it('CAVOK is ten kilometres and no cloud below 5,000 ft (FM 15, 15.10)', () => {
    expect(with_('09008KT CAVOK 10/05 Q1013')).toMatchObject({
      ...{ visibilitySm: 6.21, visibilityIs: 'at-least', ceilingFtAgl: 5000, ceilingIs: 'none-below' },
    });
  });
});

describe('ceiling', () => {
  it.each<[string, number | null, string | null]>([
    ['BKN009 OVC020', 900, 'base'],
    ['FEW005 SCT009 OVC020', 2000, 'base'],
    ['VV002', 200, 'base'],
    ['VV///', null, null],
    ['CLR', 12_000, 'none-below'],
    ['SKC', 12_000, 'none-below'],
    ['NSC', 5000, 'none-below'],
    ['NCD', 5000, 'none-below'],
    ['FEW045 SCT080', 12_000, 'none-below'],
    ['BKN///', null, null],
    ['OVC/// BKN010', null, null],
    ['///015', null, null],
    ['//////', null, null],
    ['///', null, null],
    ['', null, null],
  ])('%s', (clouds, ceilingFtAgl, ceilingIs) => {
    expect(with_(`09008KT 10SM ${clouds} 10/05 A3000`)).toMatchObject({ ceilingFtAgl, ceilingIs });
  });
  it('in a report in metres few clouds promise nothing above 5,000 ft', () => {
    expect(with_('09008KT 9999 FEW015 10/05 Q1013')).toMatchObject({ ceilingFtAgl: 5000 });
  });
});

describe('what is mistyped or missing is unknown, never a clear sky', () => {
  it('a layer written with the letter O', () => {
    const read = metar('METAR XQHB 091955Z 09008KT 10SM FEW020 BKN0O9 10/05 A3000');
    expect(read.unread).toEqual(['BKN0O9']);
    expect(read.observed).toMatchObject({
      ceilingFtAgl: null,
      visibilitySm: null,
      windKt: 8,
      altimeterInHg: 30,
    });
  });
  it('in a forecast only of the part it stands in', () => {
    const read = taf('TAF XQHB 091730Z 0918/1018 09008KT P6SM SCT040 FM092200 09010KT P6SM BKN0X0');
    expect(read.unread).toEqual(['BKN0X0']);
    expect(read.periods.map(({ conditions }) => conditions.ceilingFtAgl)).toEqual([12_000, null]);
  });
  it.each<[string, object]>([
    ['M05/M10 A3012', { temperatureC: -5, dewPointC: -10, altimeterInHg: 30.12 }],
    ['10/ A3000', { dewPointC: null }],
    ['///// A////', { temperatureC: null, dewPointC: null, altimeterInHg: null }],
    ['10/05 Q////', { altimeterInHg: null }],
    ['10/05 A0000', { altimeterInHg: null }],
    ['', { temperatureC: null, altimeterInHg: null }],
  ])('%s', (groups, is) => {
    expect(with_(`09008KT 10SM CLR ${groups}`)).toMatchObject(is);
  });
  it('remarks tell nothing that counts', () => {
    expect(with_('AUTO 09008KT 10SM CLR 10/05 A3000 RMK AO2 CIG 005V008 BKN003')).toMatchObject({
      ceilingFtAgl: 12_000,
    });
  });
  it('NIL and a cancelled forecast say nothing, and take the place of what was', () => {
    expect(metar('METAR XQHB 091955Z NIL')).toMatchObject({
      observed: null,
      issuedAt: '2026-03-09T19:55:00Z',
    });
    expect(taf('TAF XQHB 091730Z 0918/1018 CNL')).toMatchObject({ periods: [], from: null });
    expect(taf('TAF XQHB 091730Z NIL')).toMatchObject({ periods: [] });
  });
});

describe('what is no report is refused in words', () => {
  it.each<['metar' | 'taf', string, RegExp]>([
    ['metar', 'hello world', /begins with its station/],
    ['metar', 'METAR XQHB NIL', /begins with its station/],
    ['metar', 'METAR XQHB 321955Z 09008KT 10SM', /no time 321955Z/],
    ['metar', 'METAR XQHB 092455Z 09008KT 10SM', /no time 092455Z/],
    ['metar', AIM_TAF, /is a forecast/],
    ['taf', AIM_METAR, /is a report/],
    ['taf', 'TAF XQHB 091730Z', /cannot be read/],
    ['taf', 'TAF XQHB 091730Z 0918/0918 09008KT P6SM SKC', /span/],
    ['taf', 'TAF XQHB 091730Z 0918/1412 09008KT P6SM SKC', /span/],
    ['metar', '', /begins with its station/],
  ])('%s %s', (kind, text, says) => {
    const reading = () => readReport(kind, text, '2026-03-09T20:00:00Z');
    expect(reading).toThrow(UnreadableReport);
    expect(reading).toThrow(says);
  });
});

describe('days of the month', () => {
  it.each([
    ['of yesterday, over the end of a month', '282355Z', '2026-03-01T00:10:00Z', '2026-02-28T23:55:00Z'],
    ['of tomorrow by a few minutes', '010005Z', '2026-02-28T23:58:00Z', '2026-03-01T00:05:00Z'],
    ['of a leap day', '292300Z', '2028-03-01T01:00:00Z', '2028-02-29T23:00:00Z'],
    ['over the end of a year', '312350Z', '2027-01-01T00:20:00Z', '2026-12-31T23:50:00Z'],
  ])('%s', (_, time, near, is) => {
    expect(metar(`METAR XQHB ${time} 09008KT 10SM CLR`, near).issuedAt).toBe(is);
  });
  it('a forecast over the end of a month', () => {
    const read = taf(
      'TAF XQHB 282330Z 0100/0206 09008KT P6SM SKC FM010600 09010KT P6SM SKC',
      '2026-02-28T23:40:00Z',
    );
    expect([read.from, read.to]).toEqual(['2026-03-01T00:00:00Z', '2026-03-02T06:00:00Z']);
    expect(read.periods[1]!.from).toBe('2026-03-01T06:00:00Z');
  });
});

it('a text is kept in one line of capitals without its closing sign', () => {
  expect(tidy(' metar xqhb 091955z\n  09008kt 10sm  clr= ')).toBe('METAR XQHB 091955Z 09008KT 10SM CLR');
});
