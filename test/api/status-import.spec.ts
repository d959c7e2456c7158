/** An existing status taken over from CSV: looked at, written whole or not at all, and given back the same. */
import type { ImportResult, ImportRow } from '../../src/maintenance/records/import/import.dto.js';
import type { StatusView } from '../../src/maintenance/records/status.dto.js';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { NOBODY, problemOf } from './fleet-scene.js';

const FILE = `section,Kind,Title,Ref.,Calendar months,Interval (hours),Last done,Last done (h),Signed by,Next due,Basis,P/N,S/N,Weight (kg),Arm (mm),Required,Installed,Reading (h),Date read
meter,tach,,,,,,,,,,,,,,,,812.4,2026-03-01
equipment,GPS navigator,Navigator,,,,,,,,STC,NV-100,0042,2.5,-254,no,12 May 2019,,
directive,,Seat rails,AD 2000-01-01,,100,14 Jan 2026,790,"Mo Wrench, mechanic 0042",,,,,,,,,,
item,Annual inspection,Annual inspection,,12,,2025-11-05,780.2,,2026-11-05,,,,,,,,,
item,,Oil change,,,50,2026-02-10,801.0,Mo Wrench,,,,,,,,,,
squawk,,Landing light out,,,,,,,,,,,,,,,,
`;

describe('a status taken over from a file', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;
  let emptyId: string;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
    emptyId = await empty('NX900B');
  });
  afterAll(() => api.stop());

  /** Another aircraft of the model, of which nothing is on record. */
  const empty = async (registration: string): Promise<string> => {
    const id = newId();
    await api.sql(
      `INSERT INTO aircraft (club_id, id, registration, model_id, home_airfield_id, seats, occupants_certificated,
          certificated_after_1996_03_11, instruction_for_hire, carries_for_hire, inspection_meter)
       SELECT club_id, $2, $3, model_id, home_airfield_id, seats, occupants_certificated,
          certificated_after_1996_03_11, instruction_for_hire, carries_for_hire, inspection_meter FROM aircraft WHERE id = $1`,
      [ready.aircraftId, id, registration],
    );
    return id;
  };
  const path = (id = emptyId, below = '') => `/aircraft/${id}/status/import${below}`;
  const preview = async (csv: string, more: object = {}, id = emptyId): Promise<ImportResult> =>
    (await coordinator.post(path(id, '/preview'), { csv, ...more }).expect(200)).body as ImportResult;
  const send = (body: object, key = newId(), id = emptyId, who = coordinator) =>
    who.post(path(id), body).set('Idempotency-Key', key);
  const take = async (csv: string, more: object = {}, id = emptyId): Promise<ImportResult> => {
    const { preview: digest } = await preview(csv, more, id);
    return (await send({ csv, ...more, preview: digest }, newId(), id).expect(201)).body as ImportResult;
  };
  const status = async (id: string): Promise<StatusView> =>
    (await ready.member.get(`/aircraft/${id}/status`).expect(200)).body as StatusView;
  const exported = async (id: string): Promise<string> =>
    (await ready.member.get(`/aircraft/${id}/status/csv`).expect(200)).text;
  const at = ({ rows }: ImportResult, line: number): ImportRow => rows.find((row) => row.line === line)!;
  const only = (section: string, headings: string, ...rows: string[]): string =>
    [`section,${headings}`, ...rows.map((row) => `${section},${row}`)].join('\n');
  const rowsOf = async (): Promise<string> => {
    const [found] = await api.sql<{ all: string }>(
      `SELECT concat_ws(' ', (SELECT count(*) FROM airworthiness_items WHERE club_id = $1),
         (SELECT count(*) FROM compliances WHERE club_id = $1), (SELECT count(*) FROM equipment WHERE club_id = $1),
         (SELECT count(*) FROM meter_readings WHERE club_id = $1), (SELECT count(*) FROM weighings WHERE club_id = $1),
         (SELECT count(*) FROM idempotency_keys WHERE club_id = $1)) AS all`,
      [ready.club.clubId],
    );
    return found!.all;
  };

  it('is looked at row by row, and nothing is kept of that', async () => {
    const before = await rowsOf();
    const shown = await preview(FILE);
    expect(shown.counts).toEqual({ added: 5, doneAgain: 0, unchanged: 0, leftOut: 1, refused: 0 });
    // A day alone is its beginning in the club's zone; weight and arm as NIST SP 811 converts them: 2.5 kg, 254 mm.
    expect(at(shown, 2).writes[0]).toMatch(/^tachometer: 812\.4 h, read 2026-03-01T0\d:00:00Z$/);
    expect(at(shown, 3).writes).toEqual([
      'Navigator (gps-navigator, stc), part NV-100, serial 0042, 5.51 lb at -10 in, there since 2019-05-12',
    ]);
    expect(at(shown, 4).writes).toEqual([
      'Seat rails (directive, AD 2000-01-01), every 100.0 h, binds: all',
      'last done 2026-01-14 at 790.0 h, signed by: Mo Wrench, mechanic 0042',
    ]);
    // 14 CFR 91.409(a)(1): to the end of November, not to the day. Both are told; neither is chosen in silence.
    expect(at(shown, 5).warnings).toEqual([
      'It does not say which flights it binds: taken as all.',
      'Who signed is not said, and is recorded so.',
      'The file says next due on 2026-11-05; by the records it is 2026-11-30. Find out which is right before relying on either.',
    ]);
    expect(at(shown, 6).warnings[0]).toContain('taken as the club’s own, which meets no rule of the law');
    expect(at(shown, 7)).toMatchObject({ section: 'squawk', outcome: 'left-out' });
    const column = (heading: string) => shown.columns.find((one) => one.heading === heading);
    expect(column('Weight (kg)')).toEqual({
      ...{ heading: 'Weight (kg)', fields: ['weight_lb'], unit: 'kg', note: 'Converted from kg to lb.' },
    });
    expect(column('Next due')!.note).toBe('Worked out here from the records, and compared with the file.');
    expect(column('Ref.')!.fields).toEqual(['reference']);
    expect(shown.caution).not.toBe('');
    expect(await rowsOf()).toBe(before);
    expect((await status(emptyId)).items).toEqual([]);
  });

  it('is written as previewed, once for one key, and adds nothing when sent again', async () => {
    const shown = await preview(FILE);
    const key = newId();
    const body = { csv: FILE, preview: shown.preview };
    const { body: made } = await send(body, key).expect(201);
    expect(made).toEqual(shown);
    const after = await rowsOf();
    expect((await send(body, key).expect(201)).body).toEqual(shown);
    expect(problemOf(await send({ ...body, dates: 'day-first' }, key).expect(422)).code).toBe(
      'idempotency-key-reused',
    );
    expect(await rowsOf()).toBe(after);
    const found = await status(emptyId);
    expect(found.times).toMatchObject([{ kind: 'tachometer', totalH: 812.4 }]);
    // 14 CFR 91.409(a)(1); and 790.0 + 100.0 with the meter at 812.4.
    expect(found.items.find(({ kind }) => kind === 'annual')).toMatchObject({ nextDueOn: '2026-11-30' });
    expect(found.directives).toMatchObject([{ nextDueH: 890, leftH: 77.6 }]);
    expect(found.equipment).toMatchObject([{ name: 'Navigator', basis: 'stc', weightLb: 5.51, armIn: -10 }]);
    const audited = await api.sql<{ actor_id: string }>(
      "SELECT DISTINCT actor_id FROM audit_log WHERE club_id = $1 AND table_name = 'airworthiness_items' AND after ->> 'aircraft_id' = $2",
      [ready.club.clubId, emptyId],
    );
    expect(audited).toEqual([{ actor_id: coordinator.memberId }]);
    expect((await preview(FILE)).counts).toEqual({
      added: 0,
      doneAgain: 0,
      unchanged: 5,
      leftOut: 1,
      refused: 0,
    });
    // The same preview does not serve twice: by now it would do something else.
    expect(problemOf(await send(body).expect(409)).code).toBe('preview-stale');
  });

  it('is taken over whole or not at all', async () => {
    const before = await rowsOf();
    const csv = `${FILE}equipment,DME,Distance,,,,,,,,,,,,,,2019-05-12,,
item,,Magnetos,,,500,2026-02-30,700,,,,,,,,,,,
meter,hobbs,,,,,,,,,,,,,,,,many,2026-03-01
item,hours-100,100-hour,,,100,2026-02-10,,,,,,,,,,,,
directive,,Fuel lines,AD 2001-02-03,,,2026-02-10,801,,,,,,,,,,,
item,,Spark plugs,,,100,2026-02-10,850,,,,,,,,,,,
`;
    const shown = await preview(csv);
    expect(shown.counts).toMatchObject({ added: 5, refused: 6 });
    const reasons = shown.rows
      .filter(({ outcome }) => outcome === 'refused')
      .map(({ line, because }) => [line, because]);
    expect(reasons).toEqual([
      [8, expect.stringContaining('on what basis the piece is there')],
      [9, 'Last done: “2026-02-30” is no date of the calendar.'],
      [10, expect.stringContaining('“many” is no number')],
      [11, expect.stringContaining('does not say what the inspection meter stood at')],
      [12, expect.stringContaining('An item that recurs says when')],
      [
        13,
        'It was done at 850.0 h, but the tachometer stood at 812.4 h on 2026-03-01, later. One of the two is wrong.',
      ],
    ]);
    const { body } = await send({ csv, preview: shown.preview }).expect(422);
    expect(body.code).toBe('import-rows-refused');
    expect(body.errors.map(({ line }: { line: number }) => line)).toEqual([8, 9, 10, 11, 12, 13]);
    expect(await rowsOf()).toBe(before);
  });

  it('is refused when it would do something else than was previewed', async () => {
    const shown = await preview(FILE);
    await coordinator
      .post(`/aircraft/${emptyId}/items`, { kind: 'club', title: 'Oil change', scope: 'all', intervalH: 50 })
      .expect(201);
    const before = await rowsOf();
    expect(problemOf(await send({ csv: FILE, preview: shown.preview }).expect(409)).code).toBe(
      'preview-stale',
    );
    expect(await rowsOf()).toBe(before);
    const again = await preview(FILE);
    expect(at(again, 6)).toMatchObject({
      outcome: 'done-again',
      writes: ['last done 2026-02-10 at 801.0 h, signed by: Mo Wrench'],
    });
  });

  it('changes nothing that is on record', async () => {
    await take(FILE);
    const other = FILE.replace('Oil change,,,50', 'Oil change,,,25').replace('NV-100', 'NV-200');
    expect(at(await preview(other), 6).because).toContain('intervalTenths 500, here 250');
    expect(at(await preview(other), 3).because).toContain('partNumber NV-100, here NV-200');
    const older = FILE.replace('2026-02-10,801.0', '2026-01-10,795.0');
    expect(at(await preview(older), 6)).toMatchObject({
      ...{
        outcome: 'unchanged',
        warnings: ['On record it was last done on 2026-02-10, later than the file says.'],
      },
    });
    expect(at(await preview(FILE.replace('801.0', '802.0')), 6).because).toContain('at other hours');
  });

  it('gives back the same status: export, import into an empty aircraft, export', async () => {
    const { aircraftId } = ready;
    const row = (table: string, values: Record<string, unknown>) =>
      insertInto(api.sql, ready.club.clubId)(table, { id: newId(), aircraft_id: aircraftId, ...values });
    const pieceId = newId();
    await row('equipment', {
      ...{
        id: pieceId,
        kind: 'backup-battery',
        name: '=Battery; "B"',
        installed_on: '2024-01-01',
        basis: 'stc',
      },
      ...{ document: 'STC 0001', part_number: '-12', serial_number: '+7', weight_lb: 3.25, arm_in: -12.5 },
      ...{ required_by_type_design: true, satisfies: ['clock', 'dme'] },
    });
    await row('equipment', {
      kind: 'dme',
      name: 'Tablet',
      installed_on: '2024-01-01',
      basis: 'portable',
      portable: true,
    });
    // Two alike stay two.
    for (const _one of [1, 2])
      await row('equipment', { kind: 'shoulder-harness', name: 'Harness', installed_on: '2010-01-01' });
    const batteryId = newId();
    await row('airworthiness_items', {
      ...{
        id: batteryId,
        kind: 'club',
        title: 'Battery check\nsecond line',
        scope: 'ifr',
        plain_months: 6,
        days: 200,
      },
      ...{ equipment_id: pieceId, since: '2024-01-01' },
    });
    await row('airworthiness_items', {
      ...{ kind: 'directive', title: 'Exhaust', reference: "'AD, 2003", scope: 'all', recurring: false },
      ...{ fixed_due_on: '2026-06-01', fixed_due_tenths: 11_000, ferry_prohibited: true },
    });
    const vorId = newId();
    await row('airworthiness_items', { id: vorId, kind: 'vor-check', title: 'VOR check', scope: 'ifr' });
    for (const [itemId, detail] of [
      [batteryId, null],
      [
        vorId,
        JSON.stringify({
          vorMethod: 'dual',
          vorErrorDeg: -2,
          vorPlace: 'Harrow Bench',
          vorSignedBy: 'R. Member',
        }),
      ],
    ] as const)
      await insertInto(api.sql, ready.club.clubId)('compliances', {
        ...{
          id: newId(),
          item_id: itemId,
          done_on: '2026-02-20',
          done_tenths: 10_400,
          due_tenths: 10_390,
          detail,
        },
        ...{ statement: 'Checked, "good"', signed_by: '@Mo' },
      });
    await row('meter_readings', {
      ...{ kind: 'airframe', shown_tenths: 1204, offset_tenths: 30_000, read_at: '2026-03-09T20:00:00Z' },
      source: 'replacement',
    });
    await row('weighings', {
      effective_on: '2025-06-01',
      empty_weight_lb: 1448.5,
      empty_arm_in: 39.5,
      source: 'weighing',
      note: '-see record',
    });
    const first = await exported(aircraftId);
    const done = await take(first);
    expect(done.counts).toMatchObject({ refused: 0, unchanged: 0, doneAgain: 0 });
    expect(done.rows.find(({ section }) => section === 'aircraft')!.warnings).toEqual([
      'The file is of NX101B; it would be taken over for NX900B.',
    ]);
    const facts = ({ times, items, directives, equipment, weight, cautions }: StatusView) => ({
      ...{ times, weight, cautions },
      items: items.map(withoutId),
      directives: directives.map(withoutId),
      equipment: equipment.map(withoutId),
    });
    const withoutId = <T extends { id: string }>({ id: _id, ...rest }: T) => rest;
    const [original, copy] = [await status(aircraftId), await status(emptyId)];
    expect(original.equipment.length).toBeGreaterThan(4);
    expect(original.items.find(({ title }) => title.startsWith('Battery'))!.equipment!.serialNumber).toBe(
      '+7',
    );
    expect(facts(copy)).toEqual(facts(original));
    const plain = (csv: string) => csv.split('\r\n').filter((line) => !line.startsWith('aircraft,'));
    expect(plain(await exported(emptyId))).toEqual(plain(first));
    const old = await preview(first.replace(/(aircraft,.*)2026-03-10,/, '$12026-02-10,'), {}, aircraftId);
    expect(old.rows.find(({ section }) => section === 'aircraft')!.warnings).toEqual([
      'The file is of 2026-02-10: what was done, read or found since then is not in it.',
    ]);
    // And once more into the same aircraft: all of it is there.
    expect((await preview(first)).counts).toMatchObject({ added: 0, refused: 0, doneAgain: 0 });
  });

  it('reads a list without sections, with semicolons, and dates only in the order it is told', async () => {
    const csv =
      '\ufeffItem;Interval (months);Last complied with;Hangs on\r\n"ELT; battery";24;09/03/2026;\r\n\r\nStatic;12;3 Mar 2026;Radio\r\n';
    expect(problemOf(await coordinator.post(path(emptyId, '/preview'), { csv }).expect(422))).toEqual({
      ...{ code: 'import-unreadable', field: 'section' },
    });
    const unsaid = await preview(csv, { section: 'item' });
    expect(at(unsaid, 2).because).toContain('can be read two ways');
    const told = await preview(csv, { section: 'item', dates: 'day-first' });
    expect(at(told, 2).writes[1]).toContain('last done 2026-03-09');
    expect(at(told, 2)).toMatchObject({ outcome: 'added', title: 'ELT; battery' });
    expect(at(told, 4).because).toContain('It hangs on “Radio”, which is not in the aircraft');
    const american = await preview(csv, { section: 'item', dates: 'month-first' });
    // The third of September is still to come.
    expect(at(american, 2).because).toContain('2026-09-03 is still to come');
    expect(told.columns[1]).toMatchObject({ fields: ['months'], unit: 'months' });
  });

  it('refuses what is no such file, and is bounded', async () => {
    const refusal = async (csv: string, more: object = {}) =>
      problemOf(await coordinator.post(path(emptyId, '/preview'), { csv, ...more }).expect(422));
    const unreadable = { code: 'import-unreadable', field: 'csv' };
    expect(await refusal('')).toEqual(unreadable);
    expect(await refusal('section,title')).toEqual(unreadable);
    expect(await refusal('section,title\nitem,"open')).toEqual(unreadable);
    expect(await refusal('colour,shape\nred,round', { section: 'item' })).toEqual(unreadable);
    expect(await refusal(only('item', 'title', ...Array.from({ length: 501 }, () => 'x')))).toEqual(
      unreadable,
    );
    expect(await refusal(only('item', 'title', 'x'.repeat(30_000)))).toEqual(unreadable);
    await coordinator.post(path(emptyId, '/preview'), { csv: 'x'.repeat(120_001) }).expect(400);
    const odd = await preview(only('rocket', 'title', 'x'));
    expect(at(odd, 2).because).toContain('There is no section “rocket”');
    const more = await preview(`${only('item', 'title,days', 'Wash,30')},,surplus`);
    expect(at(more, 2).because).toContain('more cells than there are headings');
    const twice = await preview(
      only('equipment', 'kind,title,name,basis,installed', 'clock,A,B,stc,2020-01-01'),
    );
    expect(at(twice, 2).because).toBe('Two columns give its title.');
  });

  it('holds meters to what is on record', async () => {
    const csv = only(
      'meter',
      'kind,shown_h,total_h,read_at',
      'tach,1000,,2026-03-10T10:00:00Z',
      'tach,1055,2055,2026-03-10T10:00:00Z',
    );
    const shown = await preview(csv, {}, ready.aircraftId);
    expect(at(shown, 2).because).toContain('The tachometer showed 1050.0 h');
    expect(at(shown, 3).because).toContain('does not go on from the readings on record');
    const later = only(
      'meter',
      'kind,shown_h,read_at',
      'tach,1051.2,2026-03-10T10:00:00Z',
      'tach,1051.25,2026-03-10T11:00:00Z',
      'tach,1052,2027-01-01',
    );
    const told = await preview(later, {}, ready.aircraftId);
    expect(at(told, 2).outcome).toBe('added');
    expect(at(told, 3).because).toContain('hours to a tenth');
    expect(at(told, 4).because).toContain('still to come');
  });

  it('tells which booked flights are answered otherwise by it', async () => {
    const { body: booked } = await ready.member
      .post('/bookings', {
        ...{ departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z', purpose: 'passengers' },
        ...{ personsOnBoard: 2, flightRules: 'VFR', aircraftId: ready.aircraftId },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    // 14 CFR 39.3: a directive never complied with stops every flight.
    const shown = await preview(
      only('directive', 'title,reference,interval_h', 'Wing spar,AD 2002-03-04,100'),
      {},
      ready.aircraftId,
    );
    expect(shown).toMatchObject({
      bookingsJudged: 1,
      bookings: [{ bookingId: booked.id, after: 'no', because: [{ rule: 'ad.recurring' }] }],
    });
  });

  it('is for the coordinator and officers', async () => {
    for (const role of ['member', 'instructor'] as const) {
      const who = await ready.club.signInAs(role);
      await who.post(path(emptyId, '/preview'), { csv: FILE }).expect(403);
      await send({ csv: FILE, preview: 'x' }, newId(), emptyId, who).expect(403);
    }
    for (const role of ['safety-officer', 'administrator'] as const) {
      const who = await ready.club.signInAs(role);
      await who.post(path(emptyId, '/preview'), { csv: FILE }).expect(200);
    }
    await coordinator.post(path(NOBODY, '/preview'), { csv: FILE }).expect(404);
    const abroad = await readyClub(api);
    await coordinator.post(path(abroad.aircraftId, '/preview'), { csv: FILE }).expect(404);
    expect(problemOf(await coordinator.post(path(), { csv: FILE, preview: 'x' }).expect(400)).field).toBe(
      'Idempotency-Key',
    );
    await coordinator.post(path(), { csv: FILE }).expect(400);
  });
});
