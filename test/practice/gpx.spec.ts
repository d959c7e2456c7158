/** Reading GPX 1.1: the schema at topografix.com/GPX/1/1 (from memory); bad files are named by line and field. */
import fc from 'fast-check';
import { GPX_BOUNDS, readGpx, type GpxReading } from '../../src/practice/track/gpx.js';
import { Flight, gpxOf } from './flight.js';

const file = (points: string, version = '1.1', xmlns = 'http://www.topografix.com/GPX/1/1'): string =>
  `<?xml version="1.0"?>\n<gpx version="${version}" creator="t" xmlns="${xmlns}">\n<trk><trkseg>\n${points}\n</trkseg></trk>\n</gpx>`;
const point = (lat: string, lon: string, inner: string): string =>
  `<trkpt lat="${lat}" lon="${lon}">${inner}</trkpt>`;
const at = (second: number): string => `<ele>300.5</ele><time>2026-06-20T15:00:0${second}Z</time>`;
const good = (second: number): string => point('46.5', '-93.3', at(second));
const problemsOf = (reading: GpxReading) => (reading.ok ? [] : reading.problems);

test('points with instant, position and elevation; extensions and waypoints are passed over', () => {
  const reading = readGpx(
    file(
      [
        point('46.5', '-93.3', `${at(0)}<extensions><x:time xmlns:x="y">no time</x:time></extensions>`),
        point('-1e1', '+12.', '<time>2026-06-20T17:00:01.250+02:00</time>'),
      ].join('\n'),
    ),
  );
  expect(reading).toEqual({
    ok: true,
    points: [
      { atSeconds: 1781967600, latitudeDeg: 46.5, longitudeDeg: -93.3, elevationM: 300.5, segment: 0 },
      { atSeconds: 1781967601.25, latitudeDeg: -10, longitudeDeg: 12, elevationM: null, segment: 0 },
    ],
    notes: { repeatedInstants: 0, withoutElevation: 1 },
  });
});

test('segments and tracks are told apart, an instant given twice is read once', () => {
  const reading = readGpx(
    file(`${good(0)}${good(0)}</trkseg><trkseg>${good(1)}</trkseg></trk><trk><trkseg>${good(2)}`),
  );
  if (!reading.ok) throw new Error('not read');
  expect(reading.points.map(({ segment }) => segment)).toEqual([0, 1, 2]);
  expect(reading.notes.repeatedInstants).toBe(1);
});

test.each([
  ['latitude', point('91', '0', at(1)), 'lat', '91'],
  ['latitude', point('', '0', at(1)), 'lat', ''],
  ['longitude', point('1', '180.001', at(1)), 'lon', '180.001'],
  ['longitude', point('1', 'east', at(1)), 'lon', 'east'],
  ['longitude', `<trkpt lat="1">${at(1)}</trkpt>`, 'lon', null],
  ['elevation', point('1', '2', '<ele>NaN</ele><time>2026-06-20T15:00:01Z</time>'), 'ele', 'NaN'],
  ['elevation', point('1', '2', '<ele>0x10</ele><time>2026-06-20T15:00:01Z</time>'), 'ele', '0x10'],
  ['elevation', point('1', '2', '<ele>1&amp;2</ele><time>2026-06-20T15:00:01Z</time>'), 'ele', '1&amp;2'],
  ['time-missing', point('1', '2', '<ele>1</ele>'), 'time', null],
  ['time', point('1', '2', '<time>2026-06-20T15:00:01</time>'), 'time', '2026-06-20T15:00:01'],
  ['time', point('1', '2', '<time>2026-04-31T15:00:01Z</time>'), 'time', '2026-04-31T15:00:01Z'],
  ['time', point('1', '2', '<time>20 June 2026</time>'), 'time', '20 June 2026'],
  ['time', point('1', '2', `${at(1)}${at(2)}`), 'time', 'more than one, or an element'],
  ['time-backwards', point('1', '2', '<time>2026-06-20T14:59:59Z</time>'), 'time', '2026-06-20T14:59:59Z'],
])('%s: %s', (code, bad, name, found) => {
  const problems = problemsOf(readGpx(file(`${good(0)}\n${bad}\n${good(3)}`)));
  const named = problems.find((one) => one.field.endsWith(`.${name}`));
  expect(named).toEqual({ code, line: 5, field: `trk[0].trkseg[0].trkpt[1].${name}`, found });
});

test.each([
  ['not-gpx-1.1', file(good(0), '1.0'), 'gpx.version', 1, '1.0'],
  ['not-gpx-1.1', file(good(0), '1.1', 'http://www.topografix.com/GPX/1/0'), 'gpx.xmlns', 1, undefined],
  ['not-gpx-1.1', '<kml/>', 'gpx', 1, undefined],
  ['not-xml', '<gpx>\n<trk>\n</gpx>', 'gpx', 3, undefined],
  ['not-xml', '', 'gpx', undefined, undefined],
  ['too-few-points', file(good(0)), 'trk', null, '1'],
  ['too-few-points', file(''), 'trk', null, '0'],
  ['document-type', `<!DOCTYPE gpx [<!ENTITY a "b">]>${file(good(0))}`, 'gpx', 1, null],
])('the whole file: %s', (code, text, field, line, found) => {
  const [problem] = problemsOf(readGpx(text));
  expect(problem).toMatchObject({ code, field });
  if (line !== undefined) expect(problem?.line).toBe(line);
  if (found !== undefined) expect(problem?.found).toBe(found);
});

test('entities are not expanded, so a number made of one is no number', () => {
  const problems = problemsOf(readGpx(file(`${point('&#52;&#54;', '2', at(0))}${good(1)}`)));
  expect(problems.map(({ code }) => code)).toEqual(['latitude']);
});

test('size is bounded: characters, points, depth, and how many problems are told', () => {
  const bounds = { ...GPX_BOUNDS, mostPoints: 2 };
  expect(problemsOf(readGpx(file(`${good(0)}${good(1)}${good(2)}`), bounds))).toMatchObject([
    { code: 'too-many-points', field: 'trk[0].trkseg[0].trkpt[2]', line: 4 },
  ]);
  expect(readGpx(file(`${good(0)}${good(1)}`), bounds).ok).toBe(true);
  const text = file(good(0));
  expect(problemsOf(readGpx(text, { ...GPX_BOUNDS, mostCharacters: text.length - 1 }))).toMatchObject([
    { code: 'too-large' },
  ]);
  const deep = '<a>'.repeat(60) + '</a>'.repeat(60);
  expect(problemsOf(readGpx(file(point('1', '2', deep))))).toMatchObject([{ code: 'not-xml' }]);
  const many = Array.from({ length: 100 }, () => point('99', '2', at(1))).join('\n');
  expect(problemsOf(readGpx(file(many)))).toHaveLength(GPX_BOUNDS.mostProblems);
});

test('what a recorder wrote comes back as it was', () => {
  const points = Flight.inTheAir({ fromDeg: 40, kt: 12 }, 90).straight(20).turn(90, 20).points({ whiteM: 2 });
  const reading = readGpx(gpxOf(points));
  if (!reading.ok) throw new Error('not read');
  expect(reading.points).toHaveLength(points.length);
  reading.points.forEach((one, index) => {
    expect(one.atSeconds).toBeCloseTo(points[index]!.atSeconds, 3);
    expect(one.latitudeDeg).toBeCloseTo(points[index]!.latitudeDeg, 6);
    expect(one.elevationM).toBeCloseTo(points[index]!.elevationM!, 1);
  });
});

test('no text whatever makes it throw, and what is read is in order and on the earth', () => {
  const scrap = fc.constantFrom(
    '<',
    '>',
    '</trkpt>',
    '<trkpt lat="1" lon="2">',
    '"',
    '&amp;',
    '&x;',
    'ele',
    '\n',
  );
  const seed = file([0, 1, 2].map(good).join('\n'));
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.tuple(fc.nat(seed.length), fc.nat(12), fc.oneof(scrap, fc.string())).map(([from, cut, put]) => {
          return seed.slice(0, from) + put + seed.slice(from + cut);
        }),
      ),
      (text) => {
        const reading = readGpx(text);
        if (!reading.ok) return expect(reading.problems.length).toBeGreaterThan(0);
        reading.points.forEach((one, index) => {
          if (index > 0) expect(one.atSeconds).toBeGreaterThan(reading.points[index - 1]!.atSeconds);
          expect(Math.abs(one.latitudeDeg)).toBeLessThanOrEqual(90);
        });
      },
    ),
    { numRuns: 400, seed: 20261126 },
  );
});
