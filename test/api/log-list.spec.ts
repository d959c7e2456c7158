/** Narrowing a log, what is flagged in it, and taking it out. */
import { parse } from 'csv-parse/sync';
import { unguarded } from '../../src/platform/csv/spreadsheet-cell.js';
import { newId } from '../../src/platform/ids.js';
import { LOG_COLUMNS } from '../../src/logbook/columns.js';
import { type Api, type Session, startApi, type TestClub } from '../support/api.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';

let api: Api;
let club: TestClub;
let fleet: SeededFleet;
let pilot: Session;

interface Entry {
  id: string;
  departedAt: string;
  checks: { check: string; field: string; outcome: string; says: string; computed: string | null }[];
}

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  fleet = await seedFleet(api.sql, club.clubId);
  await api.sql(
    `INSERT INTO airfields (club_id, id, code, name, latitude_deg, longitude_deg, elevation_ft, zone)
     VALUES ($1, $2, 'YLF', 'Far Larkfield', 42.9, -88.3, 720, 'America/Chicago')`,
    [club.clubId, newId()],
  );
});
beforeEach(async () => {
  pilot = await club.signInAs('member');
});
afterAll(() => api.stop());

const log = () => `/members/${pilot.memberId}/log`;
const flight = (values: object = {}) => ({
  ...{ aircraftId: fleet.aircraftId, departedAt: '2026-03-09T16:00:00Z', arrivedAt: '2026-03-09T17:30:00Z' },
  ...{ fromAirfield: 'XLF', toAirfield: 'XLF', role: 'pilot-in-command', soleManipulator: true },
  ...{
    takeoffs: 1,
    landings: 1,
    fullStopLandings: 1,
    nightTakeoffs: 0,
    nightFullStopLandings: 0,
    totalH: 1.5,
  },
  ...values,
});
const create = async (values: object = {}): Promise<Entry> =>
  (await pilot.post(log(), flight(values)).expect(201)).body as Entry;
const list = async (query: string): Promise<Entry[]> => pilot.all<Entry>(`${log()}?${query}`);
const ids = (entries: Entry[]) => entries.map(({ id }) => id);
const at = (day: string, values: object = {}) => ({
  ...{ departedAt: `${day}T16:00:00Z`, arrivedAt: `${day}T17:30:00Z` },
  ...values,
});

describe('flags', () => {
  it('stand beside what was written and change nothing; each other value fits', async () => {
    // By day, in Illinois at ten in the morning.
    const entry = await create({ nightH: 1.2, crossCountryH: 1.5 });
    const flagged = entry.checks.filter(({ outcome }) => outcome === 'flagged');
    expect(flagged.map(({ check, field }) => [check, field])).toEqual([
      ['night-hours', 'nightH'],
      ['cross-country', 'crossCountryH'],
    ]);
    expect(entry).toMatchObject({ nightH: 1.2, crossCountryH: 1.5 });
    expect(new Set(entry.checks.map(({ outcome }) => outcome))).toEqual(new Set(['fits', 'flagged']));
    const mended = (
      await pilot.patch(`${log()}/${entry.id}`, { nightH: 0, crossCountryH: 0 }, '"1"').expect(200)
    ).body as Entry;
    expect(mended.checks.every(({ outcome }) => outcome === 'fits')).toBe(true);
  });

  it('are not made of what the club cannot know, and say so', async () => {
    const entry = await create({ toAirfield: 'faraway strip', nightH: 1.2 });
    const night = entry.checks.find(({ check }) => check === 'night-hours')!;
    expect(night).toMatchObject({ outcome: 'not-checkable', computed: null });
    expect(night.says).toContain('faraway strip');
    await api.sql(
      `INSERT INTO airfields (club_id, id, code, name, latitude_deg, longitude_deg, elevation_ft, zone)
       VALUES ($1, $2, 'STRIP', 'A strip', 41.5, -88.3, 720, 'America/Chicago')`,
      [club.clubId, newId()],
    );
    const near = await create({ toAirfield: ' strip ', nightH: 1.2 });
    expect(near.checks.find(({ check }) => check === 'night-hours')!.outcome).toBe('flagged');
  });

  it('tell the distance: a degree of latitude at 42 N is 59.98 NM (WGS 84, from memory)', async () => {
    const { checks } = await create({ toAirfield: 'YLF', crossCountryH: 1.5 });
    expect(checks.find(({ check }) => check === 'cross-country')).toMatchObject({
      outcome: 'fits',
      computed: '60.0 NM',
    });
    expect(checks.find(({ check }) => check === 'speed')).toMatchObject({
      outcome: 'fits',
      computed: '40 kt',
    });
  });
});

describe('the list', () => {
  it('is narrowed by days, model, role and flags, page by page', async () => {
    const words = {
      aircraftId: null,
      aircraftWords: 'Heron 2',
      category: 'airplane',
      class: 'single-engine-land',
      tailwheel: false,
    };
    const a = await create(at('2026-02-01'));
    const b = await create(at('2026-02-02', { role: 'instructor', nightH: 1 }));
    const c = await create(at('2026-02-03', { ...words, nightH: 1 }));
    const d = await create(at('2026-02-04'));
    expect(ids(await list('from=2026-02-02&to=2026-02-03'))).toEqual([c.id, b.id]);
    expect(ids(await list(`modelId=${fleet.modelId}`))).toEqual([d.id, b.id, a.id]);
    expect(ids(await list('role=instructor'))).toEqual([b.id]);
    expect(ids(await list('flagged=true&limit=1'))).toEqual([c.id, b.id]);
    expect(ids(await list('flagged=false'))).toEqual([d.id, a.id]);
    expect(ids(await list(`modelId=${fleet.modelId}&flagged=true`))).toEqual([b.id]);
  });

  it('finds flags beyond the first piece looked through', async () => {
    await create(at('2026-02-01', { nightH: 1 }));
    await api.sql(
      `INSERT INTO log_entries (club_id, id, member_id, aircraft_words, category, class, tailwheel, departed_at, arrived_at,
         flown_on, from_airfield, to_airfield, role, sole_manipulator, takeoffs, landings, full_stop_landings, night_takeoffs,
         night_full_stop_landings, total_tenths)
       SELECT club_id, gen_random_uuid(), member_id, aircraft_words, category, class, tailwheel,
         departed_at + make_interval(hours => n * 2), arrived_at + make_interval(hours => n * 2), flown_on, 'ELSEWHERE', 'ELSEWHERE',
         role, sole_manipulator, takeoffs, landings, full_stop_landings, 0, 0, total_tenths
         FROM log_entries, generate_series(1, 230) n WHERE club_id = $1 AND member_id = $2`,
      [club.clubId, pilot.memberId],
    );
    const found = await list('flagged=true&limit=5');
    expect(found).toHaveLength(1);
    expect(found[0]!.departedAt).toBe('2026-02-01T16:00:00Z');
  });

  it('opens what a finding counted by id, also what was voided since, and nobody else’s', async () => {
    const [a, b] = [await create(at('2026-02-01')), await create(at('2026-02-02'))];
    await create(at('2026-02-03'));
    await pilot.post(`${log()}/${a.id}/void`).set('If-Match', '"1"').expect(200);
    const asked = `ids=${a.id.toUpperCase()},${b.id},${newId()}`;
    expect(ids(await list(asked))).toEqual([b.id, a.id]);
    expect(ids(await list(`${asked}&voided=false`))).toEqual([b.id]);
    const other = await club.signInAs('member');
    expect(await other.all(`/members/${other.memberId}/log?${asked}`)).toEqual([]);
  });

  it.each([
    ['ids=x', 'ids'],
    [`ids=${Array.from({ length: 101 }, newId).join(',')}`, 'ids'],
    ['ids=', 'ids'],
    ['flagged=maybe', 'flagged'],
    ['role=passenger', 'role'],
    ['from=2026-02-30', 'from'],
    ['modelId=x', 'modelId'],
  ])('refuses %.20s', async (query, field) => {
    const { body } = await pilot.get(`${log()}?${query}`).expect(400);
    expect(body.errors.map((one: { field: string }) => one.field)).toEqual([field]);
  });
});

describe('taken out', () => {
  it('is whole in both forms: every field of each entry that counts, oldest first, safe to open in a spreadsheet', async () => {
    await create(at('2026-02-02', { remarks: '=HYPERLINK("x")', nightH: 0.1, actualInstrumentH: 0.4 }));
    const heron = {
      aircraftId: null,
      aircraftWords: 'Heron 2, “ours”',
      category: 'airplane',
      class: 'single-engine-land',
      tailwheel: true,
    };
    await create(at('2026-02-01', { ...heron, holding: true, simulatedInstrumentH: 0.3, device: null }));
    const { id } = await create(at('2026-02-03'));
    await pilot.post(`${log()}/${id}/void`).set('If-Match', '"1"').expect(200);

    const csv = await pilot
      .get(`${log()}/export.csv`)
      .expect(200)
      .expect('content-type', /text\/csv/);
    expect(csv.headers['content-disposition']).toContain('log.csv');
    const rows = parse(csv.text, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.map((row) => row['Date'])).toEqual(['2026-02-01', '2026-02-02']);
    expect(Object.keys(rows[0]!)).toEqual(LOG_COLUMNS.map(({ heading }) => heading));
    expect(rows[0]).toMatchObject({
      ...{
        'Aircraft of the club': '',
        'Aircraft in words': 'Heron 2, “ours”',
        Tailwheel: 'yes',
        Holding: 'yes',
      },
      ...{
        'Simulated instrument (h)': '0.3',
        'Off blocks (UTC)': '2026-02-01T16:00:00Z',
        'Training device': '',
      },
    });
    expect(rows[1]).toMatchObject({
      ...{
        'Aircraft of the club': 'N-100',
        'Model of the club': 'Sparrow 150',
        'Night (h)': '0.1',
        Tailwheel: 'no',
      },
      ...{ Remarks: `'=HYPERLINK("x")`, 'Actual instrument (h)': '0.4' },
    });
    expect(unguarded(rows[1]!['Remarks']!)).toBe('=HYPERLINK("x")');

    const json = await pilot.get(`${log()}/export.json`).expect(200);
    const data = JSON.parse(json.text) as { schema: string; entries: Record<string, unknown>[] };
    expect(data.schema).toBe('bellcrank.log/1');
    expect(data.entries.map((one) => Object.keys(one))).toEqual(
      data.entries.map(() => LOG_COLUMNS.map(({ field }) => field)),
    );
    expect(data.entries[1]).toMatchObject({
      registration: 'N-100',
      remarks: '=HYPERLINK("x")',
      totalH: 1.5,
      holding: false,
    });
    // Every cell of the table is the value of the data.
    for (const [index, row] of rows.entries())
      for (const { field, heading, unit } of LOG_COLUMNS) {
        const value = data.entries[index]![field];
        const cell = unit === 'flag' ? (value ? 'yes' : 'no') : value === null ? '' : String(value);
        expect([heading, unguarded(row[heading]!)]).toEqual([heading, cell]);
      }
  });

  it('holds every column of the table of entries that is the member’s', async () => {
    const columns = await api.sql<{ name: string }>(
      "SELECT attname AS name FROM pg_attribute WHERE attrelid = 'log_entries'::regclass AND attnum > 0 AND NOT attisdropped",
    );
    const kept = [
      'import_id',
      'booking_id',
      'times_known',
      'club_id',
      'id',
      'member_id',
      'row_version',
      'recorded_at',
      'voided_at',
    ];
    const snake = (field: string) =>
      ({ registration: 'aircraft_id', makeModel: 'model_id' })[field] ??
      field.replace(/H$/, 'Tenths').replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
    expect([...LOG_COLUMNS.map(({ field }) => snake(field)), ...kept].sort()).toEqual(
      columns.map(({ name }) => name).sort(),
    );
  });
});
