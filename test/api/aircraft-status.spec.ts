/** An aircraft's status over HTTP: what it says as of a day, as JSON, CSV and PDF. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { StatusItem, StatusView } from '../../src/maintenance/records/status.dto.js';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { NOBODY, problemOf } from './fleet-scene.js';

interface PdfText {
  pages: { text: string; fonts: { name: string; embedded: boolean }[]; width: number; height: number }[];
  info: Record<string, unknown>;
}

describe('the status of an aircraft', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator', { name: 'Cory Coordinates' });
  });
  afterAll(() => api.stop());

  const path = (below = '') => `/aircraft/${ready.aircraftId}${below}`;
  const status = async (query = '', who = ready.member): Promise<StatusView> =>
    (await who.get(path(`/status${query}`)).expect(200)).body as StatusView;
  const item = (of: StatusView, kind: string): StatusItem =>
    [...of.items, ...of.directives].find((one) => one.kind === kind)!;
  const row = (table: string, values: Record<string, unknown>) =>
    insertInto(api.sql, ready.club.clubId)(table, { id: newId(), ...values });
  const bytes = async (below: string): Promise<{ body: Buffer; headers: Record<string, string> }> => {
    const answer = await ready.member
      .get(path(below))
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      })
      .expect(200);
    return { body: answer.body as Buffer, headers: answer.headers as Record<string, string> };
  };
  const textOf = (pdf: Buffer): PdfText => {
    const folder = mkdtempSync(join(tmpdir(), 'bellcrank-pdf-'));
    const file = join(folder, 'status.pdf');
    writeFileSync(file, pdf);
    const reader = join(__dirname, '../support/pdf-text.mjs');
    const told = execFileSync(process.execPath, [reader, file], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    return JSON.parse(told) as PdfText;
  };

  it('tells times, items with last and next, directives, equipment, weight and squawks', async () => {
    await row('airworthiness_items', {
      ...{
        aircraft_id: ready.aircraftId,
        kind: 'directive',
        title: 'Seat rails',
        reference: 'AD 2000-01-01',
      },
      ...{ scope: 'all', interval_tenths: 1000 },
    });
    await ready.member.post(path('/squawks'), { title: 'Landing light out' }).expect(201);
    const found = await status();
    expect(found).toMatchObject({
      ...{ on: '2026-03-10', zone: ready.club.zone, printedBy: 'Robin Member' },
      printedAt: '2026-03-10T15:00:00Z',
      aircraft: { registration: 'NX101B', makeModel: 'Harrow Lark 160', manufacturedOn: '1985-06-01' },
      times: [{ kind: 'tachometer', shownH: 1050, totalH: 1050, countsForInspections: true }],
      weight: { emptyWeightLb: 1450, emptyArmIn: null, usefulLoadLb: 950, source: 'as-entered' },
      squawks: [{ title: 'Landing light out', state: 'reported' }],
    });
    // All last done on 2025-11-05 at 1020.0 h. 14 CFR 91.409(a)(1): annual, 12 calendar months, so to the end of November 2026.
    expect(item(found, 'annual')).toMatchObject({
      last: { doneOn: '2025-11-05', doneH: 1020, signedBy: 'A mechanic' },
      ...{ nextDueOn: '2026-11-30', nextDueH: null, leftDays: 265, state: 'running' },
    });
    // 14 CFR 91.409(b): 100 hours of time in service, 1020.0 + 100.0, with the meter at 1050.0.
    expect(item(found, 'hours-100')).toMatchObject({ nextDueOn: null, nextDueH: 1120, leftH: 70 });
    // 14 CFR 91.411(a)(1), 91.413(a): 24 calendar months. 14 CFR 91.207(d): 12 calendar months.
    expect(item(found, 'altimeter-static').nextDueOn).toBe('2027-11-30');
    expect(item(found, 'transponder').nextDueOn).toBe('2027-11-30');
    expect(item(found, 'elt-inspection').nextDueOn).toBe('2026-11-30');
    expect(found.items.some(({ kind }) => kind === 'directive')).toBe(false);
    expect(found.directives).toMatchObject([
      { title: 'Seat rails', last: null, state: 'never-done', nextDueOn: null, nextDueH: null },
    ]);
    expect(found.cautions).toEqual(
      expect.arrayContaining([
        'Never done, as far as the records go: Seat rails.',
        'The inspection meter was last read on 2026-03-09; hours flown since then are not counted.',
        'Squawks not yet judged by the coordinator: 1.',
      ]),
    );
    expect(found.caution).toContain('the maintenance records themselves decide');
  });

  it('agrees with the forecast, which reads the same limits', async () => {
    const found = await status();
    const { body } = await ready.member
      .post('/maintenance/forecast', { aircraftIds: [ready.aircraftId] })
      .expect(200);
    const ahead = body.aircraft[0].items as Record<string, unknown>[];
    expect(ahead.length).toBe(found.items.length);
    for (const one of found.items)
      expect(ahead.find(({ id }) => id === one.id)).toMatchObject({
        ...{ throughOn: one.nextDueOn, throughH: one.nextDueH, leftDays: one.leftDays, leftH: one.leftH },
        state: one.state,
      });
  });

  it('is of any past day, with what was done, read, installed and open by then', async () => {
    const { aircraftId } = ready;
    const annual = (
      await api.sql<{ id: string }>(
        "SELECT id FROM airworthiness_items WHERE aircraft_id = $1 AND kind = 'annual'",
        [aircraftId],
      )
    )[0]!.id;
    const done = { item_id: annual, statement: 'Inspected', signed_by: 'Mo Wrench' };
    await row('compliances', { ...done, done_on: '2024-10-20', done_tenths: 9200 });
    await row('compliances', { ...done, done_on: '2025-09-01', voided_at: '2025-09-02T00:00:00Z' });
    await row('meter_readings', {
      ...{ aircraft_id: aircraftId, kind: 'tachometer', shown_tenths: 10_000, source: 'coordinator' },
      read_at: '2025-10-01T20:00:00Z',
    });
    const piece = { aircraft_id: aircraftId, kind: 'clock', name: 'Old clock', installed_on: '2012-01-01' };
    await row('equipment', { ...piece, removed_on: '2025-12-01' });
    await row('weighings', {
      ...{ aircraft_id: aircraftId, effective_on: '2025-06-01', empty_weight_lb: 1448.5, empty_arm_in: 39.5 },
      source: 'weighing',
    });
    await row('squawks', {
      ...{ aircraft_id: aircraftId, reported_by: ready.member.memberId, title: 'Tyre worn', state: 'fixed' },
      ...{ reported_at: '2025-10-10T15:00:00Z', closed_at: '2025-12-12T15:00:00Z', closed_from: 'grounding' },
      ...{ corrective_action: 'Changed', signed_by: 'Mo Wrench' },
    });
    const then = await status('?on=2025-11-01');
    // 14 CFR 91.409(a)(1): done in October 2024, good through October 2025; the voided record never counted.
    expect(item(then, 'annual')).toMatchObject({
      last: { doneOn: '2024-10-20', doneH: 920 },
      ...{ nextDueOn: '2025-10-31', leftDays: -1, state: 'overdue' },
    });
    expect(item(then, 'transponder')).toMatchObject({ last: null, state: 'never-done' });
    expect(then.times).toMatchObject([{ totalH: 1000, readAt: '2025-10-01T20:00:00Z' }]);
    expect(then.equipment.map(({ name }) => name)).toContain('Old clock');
    // 1448.5 lb at 39.5 in: 57215.75 lb-in.
    expect(then.weight).toMatchObject({ emptyMomentLbIn: 57215.75, usefulLoadLb: 951.5, source: 'weighing' });
    expect(then.squawks).toMatchObject([{ title: 'Tyre worn', state: 'grounding' }]);
    expect(then.cautions[0]).toBe('Grounded by a squawk: Tyre worn.');
    expect(then.cautions.at(-1)).toContain('status of a past day, 2025-11-01');
    const now = await status();
    expect(now.equipment.map(({ name }) => name)).not.toContain('Old clock');
    expect(now.squawks).toEqual([]);
    expect(item(now, 'annual').last!.doneOn).toBe('2025-11-05');
    // Before anything was read, hours left are not known rather than plenty.
    const before = await status('?on=2025-01-01');
    expect(before.times).toEqual([]);
    expect(before.weight).toBeNull();
    expect(before.cautions).toContain(
      'No reading of the inspection meter is on record: hours left cannot be told for any item.',
    );
    expect(item(before, 'hours-100')).toMatchObject({ nextDueH: 1020, leftH: null, state: 'unknown' });
  });

  it('refuses days to come, other clubs and strangers', async () => {
    expect(problemOf(await coordinator.get(path('/status?on=2026-03-11')).expect(422))).toEqual({
      ...{ code: 'value-refused', field: 'on' },
    });
    await coordinator.get(path('/status?on=soon')).expect(400);
    await coordinator.get(path('/status/pdf?paper=a3')).expect(400);
    await coordinator.get(`/aircraft/${NOBODY}/status`).expect(404);
    const abroad = await readyClub(api);
    await abroad.member.get(path('/status')).expect(404);
    await abroad.member.get(path('/status/pdf')).expect(404);
    await abroad.member.get(path('/status/csv')).expect(404);
    await api.http.get(`/api/v1${path('/status')}`).expect(401);
  });

  it('prints as PDF with embedded fonts and text a second library reads, on as many pages as it takes', async () => {
    const short = await bytes('/status/pdf');
    expect(short.headers['content-type']).toBe('application/pdf');
    expect(short.headers['content-disposition']).toBe('attachment; filename="status-NX101B-2026-03-10.pdf"');
    expect((await bytes('/status/pdf')).body.equals(short.body)).toBe(true);
    const one = textOf(short.body);
    // ISO 216 and ANSI/ASME Y14.1, in points: Letter in the United States, A4 where asked for.
    expect([one.pages[0]!.width, one.pages[0]!.height]).toEqual([612, 792]);
    const a4 = textOf((await bytes('/status/pdf?paper=a4')).body).pages[0]!;
    expect([Math.round(a4.width), Math.round(a4.height)]).toEqual([595, 842]);
    const whole = one.pages.map(({ text }) => text).join('\n');
    for (const words of [
      ...['NX101B', 'Harrow Lark 160', 'Status as of 2026-03-10', 'Annual inspection', '2026-11-30'],
      ...[
        '1120.0 h',
        '70.0 h',
        '1450 lb',
        'Printed by Robin Member',
        'the maintenance records themselves decide',
      ],
    ])
      expect(whole.replace(/\s+/g, ' ')).toContain(words);

    await row('airworthiness_items', {
      ...{ aircraft_id: ready.aircraftId, kind: 'club', scope: 'all', days: 30 },
      title: 'Prüfung der Zündkerzen, łożyska и свечи',
    });
    for (let number = 1; number <= 120; number += 1)
      await row('equipment', {
        ...{ aircraft_id: ready.aircraftId, kind: 'other', installed_on: '2020-01-01' },
        ...{
          name: `Piece ${String(number).padStart(3, '0')}`,
          part_number: `P-${number}`,
          weight_lb: 1.5,
          arm_in: -12.5,
        },
      });
    const long = textOf((await bytes('/status/pdf')).body);
    expect(long.pages.length).toBeGreaterThan(3);
    const all = long.pages.map(({ text }) => text).join('\n');
    for (let number = 1; number <= 120; number += 1)
      expect(all).toContain(`Piece ${String(number).padStart(3, '0')}`);
    expect(all.replace(/\s+/g, ' ')).toContain('Prüfung der Zündkerzen, łożyska и свечи');
    for (const [index, page] of long.pages.entries()) {
      const text = page.text.replace(/\s+/g, ' ');
      expect(text).toContain(`Page ${index + 1} of ${long.pages.length}`);
      expect(text).toContain('NX101B, status as of 2026-03-10. Printed by Robin Member, 2026-03-10');
      expect(page.fonts.length).toBeGreaterThan(0);
      expect(page.fonts.filter(({ embedded, name }) => !embedded || !name.includes('DejaVu'))).toEqual([]);
    }
    expect(long.info).toMatchObject({ Title: 'Status of NX101B, 2026-03-10', Author: 'Robin Member' });
  }, 60_000);

  it('exports one tidy CSV in which no word begins like a formula', async () => {
    // OWASP, CSV Injection: fields beginning with =, +, -, @, tab or carriage return.
    const evil = ['=HYPERLINK("http://x.example","y")', '+1+1', '-2+3', '@SUM(A1)', "'=1", '＝1'];
    for (const title of evil)
      await row('airworthiness_items', {
        ...{ aircraft_id: ready.aircraftId, kind: 'club', scope: 'all', title, days: 30 },
      });
    await row('equipment', {
      ...{ aircraft_id: ready.aircraftId, kind: 'clock', name: 'Clock, "new"', installed_on: '2020-01-01' },
      ...{ weight_lb: 1.5, arm_in: -12.5 },
    });
    const { body, headers } = await bytes('/status/csv');
    expect(headers['content-type']).toBe('text/csv; charset=utf-8');
    // UTF-8's byte order mark (RFC 3629, section 6), by which spreadsheets know it.
    expect([...body.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    const records: Record<string, string>[] = parse(body, { columns: true, bom: true });
    const cells = records.flatMap((record) => Object.values(record));
    expect(
      cells.filter((cell) => /^\s*[=+\-@＝＋－＠\t\r]/.test(cell) && !/^-\d+(\.\d+)?$/.test(cell)),
    ).toEqual([]);
    expect(records.map(({ title }) => title)).toEqual(
      expect.arrayContaining(['\'=HYPERLINK("http://x.example","y")', "''=1"]),
    );
    expect(records.find(({ title }) => title === 'Clock, "new"')).toMatchObject({
      weight_lb: '1.5',
      arm_in: '-12.5',
    });
    expect(records[0]).toMatchObject({ section: 'aircraft', registration: 'NX101B', as_of: '2026-03-10' });
    expect(records.find(({ kind }) => kind === 'annual')).toMatchObject({
      ...{ section: 'item', last_done_on: '2025-11-05', last_done_h: '1020', next_due_on: '2026-11-30' },
    });
  });
});
