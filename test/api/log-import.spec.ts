import { newId } from '../../src/platform/ids.js';
import { NOW, type Api, type Session, startApi } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

let api: Api;
let ready: ReadyClub;
let member: Session;
let other: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  await ready.addAircraft('N-0001');
  const { club } = ready;
  [member, other] = [await club.signInAs('member'), await club.signInAs('member')];
  officer = await club.signInAs('safety-officer');
});
afterAll(() => api.stop());

type Choices = Record<string, unknown>;
interface Preview {
  preview: string | null;
  choices: Choices;
  [name: string]: any; // eslint-disable-line @typescript-eslint/no-explicit-any -- answers are looked at as they come
}

const at = (who: Session) => `/api/v1/members/${who.memberId}/log/import`;
const send = (path: string, by: Session, file: string | Buffer, fields: Record<string, string> = {}) => {
  const request = api.http
    .post(path)
    .set('Authorization', `Bearer ${by.token}`)
    .set('Idempotency-Key', newId())
    .buffer(true)
    .parse((response, done) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => (text += part));
      response.on('end', () => done(null, text));
    });
  for (const [name, value] of Object.entries(fields)) void request.field(name, value);
  return request.attach('file', Buffer.from(file), 'flights.csv');
};
const linesOf = (body: unknown): Preview[] =>
  String(body)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Preview);
const lookAt = async (file: string | Buffer, choices?: Choices, by = member): Promise<Preview> => {
  const answer = await send(
    `${at(by)}/preview`,
    by,
    file,
    choices ? { choices: JSON.stringify(choices) } : {},
  );
  expect([answer.status, answer.type]).toEqual([200, 'application/x-ndjson']);
  return linesOf(answer.body).at(-1)!;
};
const take = (file: string | Buffer, { choices, preview }: Preview, by = member) =>
  send(at(by), by, file, { choices: JSON.stringify(choices), preview: preview ?? 'none' });
const problem = (answer: { body: unknown }) => JSON.parse(String(answer.body));
const logOf = (who: Session) =>
  api.sql<Record<string, unknown>>(
    'SELECT * FROM log_entries WHERE member_id = $1 ORDER BY departed_at, id',
    [who.memberId],
  );

const SHEET = [
  'Date;From;To;Off;On;Registration;Total;Night;Landings;PIC;Remarks',
  '28.02.2026;XQHB;XQHB;14:00;15:30;N-0001;1,5;0,0;3;1,5;Pattern',
  '01.03.2026;XQHB;ZZQQ;20:00;21:12;N-0001;1,2;0,4;1;1,2;"To the lake; and over"',
  ';;;;;Total;2,7;0,4;4;2,7;',
].join('\r\n');

describe('a sheet of flights', () => {
  it('is read as it is written, asked about where it can be read two ways, and writes nothing', async () => {
    const before = await logOf(member);
    const first = await lookAt(SHEET);
    expect(first).toMatchObject({ preview: null, delimiter: ';', encoding: 'utf-8', remembered: false });
    expect(first.choices).toMatchObject({ dates: 'day-first', decimal: 'comma' });
    expect(first.questions.map(({ choice }: { choice: string }) => choice)).toEqual(['clock']);
    const second = await lookAt(SHEET, { ...first.choices, clock: 'zone', soleManipulator: true });
    expect(second).toMatchObject({
      questions: [],
      counts: { rows: 3, toWrite: 2, bad: 0, sums: 1, untimed: 0 },
    });
    expect(second.totals).toMatchObject({
      before: { flights: 0 },
      added: { flights: 2, totalH: 2.7, nightH: 0.4, landings: 4 },
    });
    expect(second.preview).toMatch(/^[0-9a-f]{64}$/);
    expect(await logOf(member)).toEqual(before);
  });

  it('is taken over as previewed, once, and remembered for the next with the same headings', async () => {
    const preview = await lookAt(SHEET, { clock: 'zone', soleManipulator: true, takeoffsAsLandings: true });
    const stale = await take(SHEET, { ...preview, choices: { ...preview.choices, soleManipulator: false } });
    expect([stale.status, problem(stale).code]).toEqual([409, 'log-preview-stale']);
    const key = newId();
    const [one, again] = [
      await take(SHEET, preview).set('Idempotency-Key', key),
      await take(SHEET, preview).set('Idempotency-Key', key),
    ];
    expect([one.status, again.status]).toEqual([201, 201]);
    expect(again.body).toEqual(one.body);
    expect(problem(one)).toMatchObject({ entries: 2, fileRows: 3, unreadableRows: 0, repeatedRows: 0 });
    const log = await logOf(member);
    // 14:00 in Chicago in February, UTC−6 (tz database, America/Chicago).
    expect(log.map(({ departed_at }) => (departed_at as Date).toISOString())).toEqual([
      ...['2026-02-28T20:00:00.000Z', '2026-03-02T02:00:00.000Z'],
    ]);
    expect(log[0]).toMatchObject({
      ...{ role: 'pilot-in-command', sole_manipulator: true, total_tenths: 15, landings: 3, takeoffs: 3 },
      ...{ model_id: ready.modelId, aircraft_words: 'Harrow Lark 160, N-0001', times_known: true },
      ...{ full_stop_landings: 0, remarks: 'Pattern' },
    });
    expect(log[1]).toMatchObject({ remarks: 'To the lake; and over', flown_on: expect.anything() });
    const next = await lookAt(SHEET);
    expect(next).toMatchObject({ remembered: true, preview: null, counts: { toWrite: 0, same: 2 } });
    expect(next.choices).toMatchObject({ clock: 'zone', soleManipulator: true });
    const refused = await take(SHEET, next);
    expect([refused.status, problem(refused).code]).toEqual([422, 'log-import-not-ready']);
  });

  it('is taken back whole, once, unless practice rests on it', async () => {
    const { body } = await member.get(`/members/${member.memberId}/log/import`).expect(200);
    const [{ id }] = body.items;
    const [entry] = await logOf(member);
    await insertInto(api.sql, ready.club.clubId)('practice_records', {
      ...{ id: newId(), member_id: member.memberId, flown_on: '2026-02-28', manoeuvre: 'steep_turn' },
      ...{ seen_by: 'self', recorded_by: member.memberId, measured: '{}', level: 'private' },
      ...{ verdict: '{"status":"not-judged"}', log_entry_id: entry!['id'] },
    });
    const path = `/members/${member.memberId}/log/import/${id}/take-back`;
    expect((await member.post(path).expect(409)).body.code).toBe('log-import-in-use');
    await api.sql('ALTER TABLE practice_records DISABLE TRIGGER practice_records_append_only');
    await api.sql('DELETE FROM practice_records WHERE member_id = $1', [member.memberId]);
    await api.sql('ALTER TABLE practice_records ENABLE TRIGGER practice_records_append_only');
    await other.post(path).expect(403);
    const back = (await member.post(path).expect(200)).body;
    expect(back.takenBackAt).not.toBeNull();
    expect((await logOf(member)).map(({ voided_at }) => voided_at === null)).toEqual([false, false]);
    expect((await member.post(path).expect(409)).body.code).toBe('log-import-taken-back');
    expect(await lookAt(SHEET)).toMatchObject({ counts: { toWrite: 2, same: 0 } });
  });
});

describe('what cannot be taken over', () => {
  const ISO = ['Date,Registration,Total,From,To', '2026-02-01,N-0001,1.0,XQHB,XQHB'];

  it('stops all of it, each row named, unless it is chosen to be left out', async () => {
    const file = [...ISO, '2026-02-30,N-0001,1.0,XQHB,XQHB', '2026-02-03,N-0001,lots,XQHB,XQHB'].join('\n');
    const preview = await lookAt(file, { role: 'pilot-in-command' }, other);
    expect(preview).toMatchObject({ preview: null, counts: { toWrite: 1, bad: 2 } });
    expect(preview.bad).toEqual([
      { line: 3, because: 'Date: “2026-02-30” is no date of the calendar.' },
      { line: 4, because: 'Total: “lots” is no number that can be read. Write it as 1040.5.' },
    ]);
    const refused = await take(file, preview, other);
    expect([refused.status, problem(refused).code]).toEqual([422, 'log-import-not-ready']);
    expect(problem(refused).errors.map(({ line }: { line: number }) => line)).toEqual([3, 4]);
    expect(await logOf(other)).toEqual([]);
    const left = await lookAt(file, { ...preview.choices, leaveOutBad: true }, other);
    const done = await take(file, left, other);
    expect([done.status, problem(done).entries, problem(done).unreadableRows]).toEqual([201, 1, 2]);
  });

  it('tells of flights that may be in the log already, where times are not known', async () => {
    const file = [...ISO, '2026-02-02,N-0001,1.0,XQHB,XQHB', '2026-02-02,N-0001,1.0,XQHB,XQHB'].join('\n');
    const preview = await lookAt(file, { role: 'pilot-in-command' }, other);
    expect(preview.counts).toMatchObject({ toWrite: 1, alike: 2, same: 0, untimed: 1 });
    expect(preview.repeated).toMatchObject([
      { line: 2, kind: 'alike', entryId: expect.any(String), earlierLine: null },
      { line: 4, kind: 'alike', entryId: null, earlierLine: 3 },
    ]);
    const both = await lookAt(file, { ...preview.choices, takeAlike: true }, other);
    expect(both.counts).toMatchObject({ toWrite: 3 });
  });

  it('is refused by name: no file, no text, no choices that fit, nothing of others', async () => {
    const code = async (answer: { status: number; body: unknown }) => [answer.status, problem(answer).code];
    const none = await api.http.post(`${at(member)}/preview`).set('Authorization', `Bearer ${member.token}`);
    expect([none.status, none.body.code]).toEqual([400, 'log-file-missing']);
    const preview = `${at(member)}/preview`;
    expect(await code(await send(preview, member, ''))).toEqual([400, 'log-file-missing']);
    expect(await code(await send(preview, member, 'PK\x03\x04 a workbook'))).toEqual([
      422,
      'log-file-unreadable',
    ]);
    expect(await code(await send(preview, member, 'Date,Total\n"2026-01-01,1'))).toEqual([
      422,
      'log-file-unreadable',
    ]);
    expect(await code(await send(preview, member, ISO[0]!))).toEqual([422, 'log-file-unreadable']);
    const file = ISO.join('\n');
    for (const choices of [
      '',
      '[]',
      '{"a":',
      '"\\ud800"',
      '{"kinds":[{"words":"\\u0000"}]}',
      '{"kinds":[{"words":"\\ud800"}]}',
    ])
      expect((await send(preview, member, file, { choices })).status).toBeGreaterThanOrEqual(400);
    const wrong = await send(preview, member, file, {
      choices: '{"dates":"last-first","columns":[{"index":-1}]}',
    });
    expect(await code(wrong)).toEqual([400, 'validation-failed']);
    const far = await send(preview, member, file, {
      choices: '{"columns":[{"index":99,"field":"flownOn"}]}',
    });
    expect([far.status, problem(far).errors[0].field]).toEqual([422, 'choices.columns']);
    expect((await send(preview, member, file, { colour: 'red' })).status).toBe(422);
    expect((await send(preview, other, file).then(() => send(preview, officer, file))).status).toBe(403);
    expect((await send(`${at(member)}`, other, file)).status).toBe(403);
    await officer.get(`/members/${member.memberId}/log/import`).expect(200);
    await other.get(`/members/${member.memberId}/log/import`).expect(403);
  });

  it('leaves nothing behind when it breaks off in the middle', async () => {
    const rows = Array.from({ length: 2500 }, (_none, index) => {
      const day = new Date(Date.UTC(2015, 0, 1 + index)).toISOString().slice(0, 10);
      return `${day},N-0001,1.0,XQHB,XQHB`;
    });
    const file = [ISO[0], ...rows].join('\n');
    const preview = await lookAt(file, { role: 'solo' });
    expect(preview.counts.toWrite).toBe(2500);
    const before = [
      await logOf(member),
      await api.sql('SELECT * FROM log_imports'),
      await api.sql('SELECT count(*) FROM audit_log'),
    ];
    // The third batch fails, when 2,000 entries stand written in the transaction.
    await api.sql(`CREATE FUNCTION break_off() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
      IF (SELECT count(*) FROM log_entries WHERE import_id = NEW.import_id) >= 2000 THEN
        PERFORM pg_terminate_backend(pg_backend_pid()); END IF; RETURN NEW; END $$`);
    await api.sql(
      'CREATE TRIGGER break_off BEFORE INSERT ON log_entries FOR EACH ROW EXECUTE FUNCTION break_off()',
    );
    await api.sql('GRANT EXECUTE ON FUNCTION break_off() TO bellcrank_app');
    const broken = await take(file, preview);
    await api.sql('DROP TRIGGER break_off ON log_entries');
    expect(broken.status).toBe(503);
    expect([
      await logOf(member),
      await api.sql('SELECT * FROM log_imports'),
      await api.sql('SELECT count(*) FROM audit_log'),
    ]).toEqual(before);
    expect((await take(file, preview)).status).toBe(201);
    expect((await logOf(member)).filter(({ voided_at }) => voided_at === null)).toHaveLength(2500);
  }, 60_000);
});

describe('a flight of which only the day is known', () => {
  const head = 'Date,From,To,Registration,Total,Landings,Take-offs,Role,Sole manipulator';

  // 14 CFR 61.57(a)(1): three take-offs and three landings within the preceding 90 days, as sole manipulator.
  it('counts for passengers from the end of its day, where it was flown', async () => {
    const who = await ready.club.signInAs('member');
    await ready.makePilot(who.memberId);
    await api.sql('DELETE FROM log_entries WHERE member_id = $1', [who.memberId]);
    const file = `${head}\n2026-03-08,XQHB,XQHB,N-0001,1.0,3,3,PIC,yes`;
    const preview = await lookAt(file, undefined, who);
    expect((await take(file, preview, who)).status).toBe(201);
    const [entry] = await logOf(who);
    // Chicago is at UTC−5 from 8 March 2026, 02:00 (tz database).
    expect((entry!['departed_at'] as Date).toISOString()).toBe('2026-03-09T04:59:59.000Z');
    const status = async (departs: string, arrives: string): Promise<string> => {
      const asked = {
        aircraftIds: [ready.aircraftId],
        departs,
        arrives,
        purpose: 'passengers',
        personsOnBoard: 2,
      };
      const { body } = await who.post('/decisions', asked);
      return body.decisions[0].findings.find(
        ({ rule }: { rule: string }) => rule === 'recency.passengers.day',
      ).status;
    };
    expect(await status('2026-03-12T18:00:00Z', '2026-03-12T19:00:00Z')).toBe('met');
    // As of the evening of that very day it may not have been flown yet.
    api.clock.set('2026-03-08T20:00:00Z');
    expect(await status('2026-03-08T22:00:00Z', '2026-03-08T22:30:00Z')).toBe('short');
    api.clock.set(NOW);
  });

  it('gets its times by an edit that gives both, and moves with its day until then', async () => {
    const who = await ready.club.signInAs('member');
    const file = `${head}\n2026-03-01,XQHB,XQHB,N-0001,1.0,3,3,PIC,yes`;
    await take(file, await lookAt(file, undefined, who), who);
    const path = `/members/${who.memberId}/log`;
    const [{ id, timesKnown, importId, departedAt }] = (await who.get(path).expect(200)).body.items;
    expect([timesKnown, departedAt]).toEqual([false, '2026-03-02T05:59:59Z']);
    expect(importId).toEqual(expect.any(String));
    const moved = (await who.patch(`${path}/${id}`, { flownOn: '2026-02-28', totalH: 2 }, '"1"').expect(200))
      .body;
    expect(moved).toMatchObject({
      ...{ timesKnown: false, departedAt: '2026-03-01T05:59:59Z', arrivedAt: '2026-03-01T07:59:59Z' },
    });
    const half = await who.patch(`${path}/${id}`, { departedAt: '2026-02-28T15:00:00Z' }, '"2"').expect(422);
    expect(half.body.errors[0].field).toBe('arrivedAt');
    const whole = { departedAt: '2026-02-28T15:00:00Z', arrivedAt: '2026-02-28T17:00:00Z' };
    expect((await who.patch(`${path}/${id}`, whole, '"2"').expect(200)).body).toMatchObject({
      ...whole,
      timesKnown: true,
    });
    expect(
      (await who.patch(`${path}/${id}`, { departedAt: '2026-02-28T14:00:00Z' }, '"3"').expect(200)).body,
    ).toMatchObject({
      timesKnown: true,
    });
  });
});

describe('what was taken out of one log', () => {
  it.each(['csv', 'json'])('comes into an empty one with the same totals, as %s', async (form) => {
    const [from, to] = [await ready.club.signInAs('member'), await ready.club.signInAs('member')];
    await ready.makePilot(from.memberId);
    const rows = [
      'Date,Off blocks (UTC),On blocks (UTC),From,To,Registration,Type,Class,Tailwheel,Training device,Total,Night,Cross-country,Actual instrument,Simulated instrument,Instruction given,Take-offs,Landings,Full-stop landings,Night take-offs,Night full-stop landings,Approaches,Holding,Role,Sole manipulator,Remarks',
      '2026-01-10,2026-01-11T01:10:00Z,2026-01-11T03:00:00Z,XQHB,ZZQQ,N-0001,,,,,1.8,1.5,1.8,0.3,0.4,,2,2,2,2,1,3,yes,PIC,yes,"=1+1, ""quoted"" Wörth"',
      '2026-01-11,,,,,N-9,Old Oak,SEL,yes,,0.7,,,,,0.7,4,4,1,,,,,instructor,no,-',
      '2026-01-12,,,XQHB,XQHB,,Some device,SEL,no,ftd,1.2,,,,1.2,,,,,,,6,yes,dual,yes,',
    ];
    const sent = rows.join('\n');
    expect((await take(sent, await lookAt(sent, { clock: 'utc' }, from), from)).status).toBe(201);
    const path = (who: Session) => `/members/${who.memberId}/log`;
    const answer = await api.http
      .get(`/api/v1${path(from)}/export.${form}`)
      .set('Authorization', `Bearer ${from.token}`)
      .buffer(true)
      .parse((response, done) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () => done(null, Buffer.concat(parts)));
      });
    expect(answer.status).toBe(200);
    const file = answer.body as Buffer;
    const preview = await lookAt(file, undefined, to);
    expect(preview).toMatchObject({ questions: [], bad: [], counts: { toWrite: 4, untimed: 2, rounded: 0 } });
    expect((await take(file, preview, to)).status).toBe(201);
    const totals = async (who: Session) => (await who.get(`${path(who)}/totals`).expect(200)).body;
    expect(await totals(to)).toEqual(await totals(from));
    const kept = (row: Record<string, unknown>) =>
      Object.entries(row).filter(([name]) => !['id', 'member_id', 'import_id', 'recorded_at'].includes(name));
    expect((await logOf(to)).map(kept)).toEqual((await logOf(from)).map(kept));
  });
});

describe('twenty thousand rows', () => {
  const ROWS = 20_000;
  const HEADING = 'Date,Off blocks (UTC),On blocks (UTC),From,To,Registration,Total (h),Landings,Remarks';
  const rows = Array.from({ length: ROWS }, (_none, index) => {
    const off = new Date(Date.UTC(1990, 0, 1) + index * 15 * 3_600_000).toISOString();
    const on = new Date(Date.parse(off) + 3_600_000).toISOString();
    return `${off.slice(0, 10)},${off},${on},XQHB,XQHB,N-0001,1.0,1,"Flight ${index}, by day"`;
  });
  const file = [HEADING, ...rows].join('\r\n');

  it('are looked at with progress, and taken over, in few statements and short answers', async () => {
    const who = await ready.club.signInAs('member');
    const choices = JSON.stringify({ role: 'pilot-in-command' });
    const looking = api.countQueries();
    const looked = await send(`${at(who)}/preview`, who, file, { choices });
    // What is known, and the transaction and the sign-in round it.
    expect(looking.stop()).toBeLessThan(20);
    const lines = linesOf(looked.body);
    const steps = lines.slice(0, -1).map(({ row }) => row as number);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    expect([steps.length > 30, steps[0], steps.at(-1)]).toEqual([true, 0, ROWS]);
    expect(String(looked.body).length).toBeLessThan(40_000);
    const preview = lines.at(-1)!;
    expect(preview).toMatchObject({
      counts: { toWrite: ROWS, bad: 0, same: 0, alike: 0 },
      totals: { added: { totalH: ROWS } },
    });
    const taking = api.countQueries();
    const taken = await take(file, preview, who);
    // Twenty batches of entries; what is known, read twice; the rest is constant.
    expect(taking.stop()).toBeLessThan(20 + 40);
    expect([taken.status, problem(taken).entries]).toEqual([201, ROWS]);
    const [sum] = await api.sql<{ n: number; tenths: number }>(
      'SELECT count(*)::int AS n, sum(total_tenths)::int AS tenths FROM log_entries WHERE member_id = $1',
      [who.memberId],
    );
    expect(sum).toEqual({ n: ROWS, tenths: ROWS * 10 });
    // All bad or all repeated, the answer stays short.
    const again = await send(`${at(who)}/preview`, who, file);
    expect(linesOf(again.body).at(-1)).toMatchObject({ counts: { toWrite: 0, same: ROWS } });
    expect(String(again.body).length).toBeLessThan(80_000);
    const bad = await send(`${at(who)}/preview`, who, file.replaceAll(',1.0,', ',none,'), { choices });
    expect(linesOf(bad.body).at(-1)).toMatchObject({
      counts: { bad: ROWS },
      badReasons: [{ column: 'Total (h)', rows: ROWS }],
    });
    expect(String(bad.body).length).toBeLessThan(80_000);
  }, 300_000);

  it('and one more are refused', async () => {
    const answer = await send(`${at(member)}/preview`, member, `${file}\r\n${rows[0]}`);
    expect([answer.status, problem(answer).code]).toEqual([422, 'log-file-unreadable']);
    expect(problem(answer).detail).toContain('20,001 rows');
  }, 60_000);
});
