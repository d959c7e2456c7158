import { newId } from '../../src/platform/ids.js';
import { FIELD, Flight, gpxOf } from '../practice/flight.js';
import { type Api, type Session, startApi } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

let api: Api;
let ready: ReadyClub;
let member: Session;
let other: Session;
let instructor: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  const { club } = ready;
  [member, other] = [await club.signInAs('member'), await club.signInAs('member')];
  [instructor, officer] = [await club.signInAs('instructor'), await club.signInAs('safety-officer')];
  await ready.makePilot(member.memberId);
  const row = insertInto(api.sql, club.clubId);
  const { runways, latitudeDeg, longitudeDeg, elevationFt, code } = FIELD;
  const airfieldId = newId();
  await row('airfields', {
    ...{ id: airfieldId, code, name: 'Heron Bluff', zone: 'America/Chicago' },
    ...{ latitude_deg: latitudeDeg, longitude_deg: longitudeDeg, elevation_ft: elevationFt },
  });
  for (const { designator, trueHeadingDeg, lengthFt } of runways)
    await row('runways', {
      ...{ id: newId(), airfield_id: airfieldId, designator, true_heading_deg: trueHeadingDeg },
      ...{ length_ft: lengthFt, surface: 'paved', lit: true },
    });
});
afterAll(() => api.stop());

const of = (who = member) => `/members/${who.memberId}/practice`;
const turn = {
  ...{ flownOn: '2026-03-01', manoeuvre: 'steep_turn' },
  measured: {
    altitudeDevFt: { least: -60, most: 80 },
    airspeedDevKt: { least: -4, most: 6 },
    bankDeg: { least: 42, most: 48 },
    rolloutDevDeg: { least: -3, most: 3 },
  },
};
const add = async (draft: object, by = member, who = member) =>
  (await by.post(of(who), draft).expect(201)).body;

describe('practice records', () => {
  // FAA-S-ACS-6C, private pilot, area V task A: altitude ±100 ft, airspeed ±10 kt, bank 45° ±5°, roll-out ±10°.
  it('are judged against the published standard of the day, named', async () => {
    const record = await add(turn);
    expect(record).toMatchObject({ seenBy: 'self', level: 'private', instructor: null, title: 'steep turn' });
    expect(record.verdict).toMatchObject({
      status: 'judged',
      document: 'FAA-S-ACS-6C',
      within: true,
      missing: [],
    });
    const high = { ...turn, measured: { ...turn.measured, altitudeDevFt: { least: 0, most: 101 } } };
    const outside = (await add(high)).verdict;
    expect(outside.within).toBe(false);
    expect(
      outside.measures.find((one: { measure: string }) => one.measure === 'altitudeDevFt'),
    ).toMatchObject({
      ...{ within: false, beyond: 1, limits: [-100, 100] },
    });
    const { altitudeDevFt } = turn.measured;
    const part = await add({ ...turn, measured: { altitudeDevFt } });
    expect(part.verdict).toMatchObject({ within: null });
    expect(part.verdict.missing).toContain('bankDeg');
    const commercial = await add({ ...turn, level: 'commercial' });
    expect(commercial.verdict.document).toBe('FAA-S-ACS-7B');
  });

  it('are by oneself or signed by an instructor, and seen by those who may', async () => {
    const signed = await add({ ...turn, manoeuvre: 'go_around', measured: {}, toStandard: true }, instructor);
    expect(signed).toMatchObject({ seenBy: 'instructor', instructor: { id: instructor.memberId } });
    for (const reader of [member, instructor]) {
      const { items } = (await reader.get(of()).expect(200)).body as { items: { seenBy: string }[] };
      expect(new Set(items.map(({ seenBy }) => seenBy))).toEqual(new Set(['self', 'instructor']));
      await reader.get(`${of()}/rust`).expect(200);
      await reader.post(`${of()}/plan`, { minutes: 60, instructor: false }).expect(200);
    }
    // Officers see what was signed, and neither what members write down of themselves nor how rusty they are.
    const { items } = (await officer.get(of()).expect(200)).body as { items: { seenBy: string }[] };
    expect(items.map(({ seenBy }) => seenBy)).toEqual(items.map(() => 'instructor'));
    expect(items.length).toBeGreaterThan(0);
    await officer.get(`${of()}/rust`).expect(403);
    await officer.post(`${of()}/plan`, { minutes: 60, instructor: false }).expect(403);
    const stranger = await ready.club.signInAs('instructor');
    for (const path of [of(), `${of()}/rust`])
      expect((await stranger.get(path).expect(403)).body).toMatchObject({ code: 'not-yours' });
    expect((await other.get(of()).expect(403)).body.code).toBe('not-yours');
    for (const path of [of(), `${of()}/plan`])
      await other.post(path, path === of() ? turn : { minutes: 60, instructor: false }).expect(403);
    await officer.post(of(), turn).expect(403);
  });

  it('are corrected by new records, a signed one by an instructor only', async () => {
    const own = await add(turn);
    const fixed = { because: 'Wrong day', record: { ...turn, flownOn: '2026-03-02' } };
    await instructor.post(`${of()}/${own.id}/correct`, fixed).expect(403);
    const { body: next } = await member.post(`${of()}/${own.id}/correct`, fixed).expect(201);
    expect(next).toMatchObject({ corrects: own.id, because: 'Wrong day', flownOn: '2026-03-02' });
    expect((await member.post(`${of()}/${own.id}/correct`, fixed).expect(409)).body.code).toBe(
      'practice-corrected-already',
    );
    const signed = await add({ ...turn, toStandard: true }, instructor);
    expect((await member.post(`${of()}/${signed.id}/correct`, fixed).expect(403)).body.code).toBe(
      'practice-signed',
    );
    expect((await officer.post(`${of()}/${signed.id}/correct`, fixed).expect(403)).body.code).toBe(
      'practice-signed',
    );
    const gone = { because: 'Another member flew', record: null };
    const { body: withdrawn } = await officer.post(`${of()}/${signed.id}/correct`, gone).expect(201);
    expect(withdrawn).toMatchObject({
      withdraws: true,
      seenBy: 'instructor',
      recordedBy: { id: officer.memberId },
    });
    const ids = async (query: string): Promise<string[]> =>
      (await member.get(`${of()}${query}`).expect(200)).body.items.map(({ id }: { id: string }) => id);
    const standing = await ids('?limit=200');
    expect(standing).toContain(next.id);
    for (const id of [own.id, signed.id, withdrawn.id]) expect(standing).not.toContain(id);
    expect(await ids('?limit=200&corrected=true')).toEqual(expect.arrayContaining([own.id, signed.id]));
  });

  it('refuse what cannot be, naming the field', async () => {
    const refused = async (draft: object, status: number, field: string) =>
      expect((await member.post(of(), draft).expect(status)).body.errors[0].field).toBe(field);
    await refused({ ...turn, flownOn: '2026-03-11' }, 422, 'flownOn');
    await refused({ ...turn, manoeuvre: 'loop' }, 400, 'manoeuvre');
    await refused({ ...turn, measured: { bankDeg: { least: 50, most: 40 } } }, 422, 'measured.bankDeg');
    await refused({ ...turn, measured: { bankDeg: { least: 50, most: 91 } } }, 422, 'measured.bankDeg');
    await refused({ ...turn, logEntryId: newId() }, 422, 'logEntryId');
  });

  it('are paged, newest flight first', async () => {
    const first = (await member.get(`${of()}?limit=2`).expect(200)).body;
    const second = (await member.get(`${of()}?limit=2&cursor=${first.nextCursor}`).expect(200)).body;
    const days = [...first.items, ...second.items].map(({ flownOn }: { flownOn: string }) => flownOn);
    expect(days).toEqual([...days].sort().reverse());
    expect(new Set([...first.items, ...second.items].map(({ id }: { id: string }) => id)).size).toBe(4);
  });
});

describe('rust and the next practice flight', () => {
  let pilot: Session;
  beforeAll(async () => {
    pilot = await ready.club.signInAs('member');
    await ready.makePilot(pilot.memberId);
  });
  const rustOf = async (manoeuvre: string, condition: string, on = '2026-03-31') =>
    (await pilot.get(`${of(pilot)}/rust?on=${on}`).expect(200)).body.items.find(
      (one: { manoeuvre: string; condition: string }) =>
        one.manoeuvre === manoeuvre && one.condition === condition,
    );

  it('counts what was to standard, halved after the club’s days', async () => {
    expect(await rustOf('steep_turn', 'in any conditions')).toMatchObject({ rust: 1, lastGoodOn: null });
    const { id } = await add(turn, pilot, pilot);
    // 30 days after one performance, with a halving time of 30 days: one half.
    expect(await rustOf('steep_turn', 'in any conditions')).toMatchObject({
      ...{ rust: 0.5, days: 30, evidence: [id] },
    });
    const row = insertInto(api.sql, ready.club.clubId);
    await row('policy_values', {
      ...{ id: newId(), parameter_id: 'club.practice.first-half-life-days', valid_from: '2026-03-20' },
      ...{ value: '10', reference: 'Club handbook, section 8.2' },
    });
    expect(await rustOf('steep_turn', 'in any conditions')).toMatchObject({ rust: 0.875 });
    expect(await rustOf('steep_turn', 'in any conditions', '2026-03-11')).toMatchObject({
      days: 10,
      rust: 0.206,
    });
  });

  it('takes an instructor’s word, one’s own only where the club says so', async () => {
    const landing = { flownOn: '2026-03-01', manoeuvre: 'normal_landing', toStandard: true, night: true };
    await add(landing, pilot, pilot);
    expect((await rustOf('normal_landing', 'at night')).rust).toBe(1);
    await add(landing, instructor, pilot);
    const night = await rustOf('normal_landing', 'at night');
    expect(night.lastGoodOn).toBe('2026-03-01');
    expect(night.says.join(' ')).toContain('2026-03-01');
    // Not recorded with a crosswind, so not counted in one.
    expect((await rustOf('normal_landing', 'with at least 8 kt across the runway')).rust).toBe(1);
  });

  it('plans what fits, each item with its reasons and tolerances', async () => {
    const { body: plan } = await pilot
      .post(`${of(pilot)}/plan`, { minutes: 60, instructor: true, runwayFt: 4200 })
      .expect(200);
    expect(plan.items.length).toBeGreaterThan(1);
    expect(plan.totalMinutes).toBeLessThanOrEqual(60);
    for (const item of plan.items) expect(item.why.length).toBeGreaterThan(0);
    expect(plan.leftOut.find((one: { reason: string }) => one.reason === 'not-offered')).toMatchObject({
      condition: 'on a runway of at most 2500 ft',
    });
    expect(plan.cautions.length).toBeGreaterThan(1);
    const alone = (await pilot.post(`${of(pilot)}/plan`, { minutes: 60, instructor: false }).expect(200))
      .body;
    expect(alone.items.every(({ withInstructor }: { withInstructor: boolean }) => !withInstructor)).toBe(
      true,
    );
    await pilot.post(`${of(pilot)}/plan`, { minutes: 60, instructor: false, on: '2026-03-09' }).expect(422);
  });

  it('plans for flights booked: at night, and on a model without a checkout', async () => {
    const before = (await pilot.post(`${of(pilot)}/plan`, { minutes: 480, instructor: true }).expect(200))
      .body;
    const said = (plan: { items: { why: string[] }[] }) => plan.items.flatMap(({ why }) => why).join(' ');
    expect(said(before)).not.toContain('booking');
    const book = await pilot.post('/bookings', {
      ...{
        departs: '2026-03-14T02:30:00Z',
        arrives: '2026-03-14T04:00:00Z',
        personsOnBoard: 1,
        purpose: 'solo',
      },
      aircraftId: ready.aircraftId,
    });
    expect([book.status, book.body.code]).toEqual([400, 'idempotency-key-missing']);
    await pilot
      .post('/bookings', {
        ...{
          departs: '2026-03-14T02:30:00Z',
          arrives: '2026-03-14T04:00:00Z',
          personsOnBoard: 1,
          purpose: 'solo',
        },
        aircraftId: ready.aircraftId,
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    const ask = { minutes: 480, instructor: true, on: '2026-03-12' };
    const after = (await pilot.post(`${of(pilot)}/plan`, ask).expect(200)).body;
    expect(said(after)).toContain('The booking on 2026-03-13 needs it.');
    expect(after.notes.join(' ')).not.toContain('no checkout of it stands');
    await api.sql(
      `INSERT INTO checkout_voids (club_id, checkout_id, voided_by, reason)
       SELECT club_id, id, signed_by, 'Wrong model' FROM checkouts WHERE member_id = $1 AND kind = 'model'`,
      [pilot.memberId],
    );
    const without = (await pilot.post(`${of(pilot)}/plan`, ask).expect(200)).body;
    expect(without.notes.join(' ')).toContain('no checkout of it stands');
    expect(said(without)).toContain('Times the checkout still lacks it');
  });
});

describe('recorded tracks', () => {
  const flight = new Flight({ fromDeg: 240, kt: 12 }, Date.parse('2026-03-08T16:00:00Z') / 1000);
  flight.rest(60).takeOff().touchAndGo().fullStop().taxiBack(7).rest(40);
  const gpx = gpxOf(flight.points());
  const send = (by: Session, text: string | Buffer, who = member) =>
    api.http
      .post(`/api/v1${of(who)}/track`)
      .set('Authorization', `Bearer ${by.token}`)
      .attach('track', Buffer.from(text), 'flight.gpx');
  const counts = () =>
    api.sql<{ n: string }>(
      'SELECT (SELECT count(*) FROM practice_records) || $1 || (SELECT count(*) FROM log_entries) AS n',
      ['/'],
    );

  it('are read without storing anything, and entered once what is chosen is confirmed', async () => {
    const before = await counts();
    const reading = (await send(member, gpx).expect(200)).body;
    expect(await counts()).toEqual(before);
    const value = (field: string) => reading.log.find((one: { field: string }) => one.field === field).value;
    // As flown by the test: one take-off, one touch-and-go (a landing and a take-off), one full stop.
    expect([value('takeoffs'), value('landings'), value('fullStopLandings')]).toEqual([2, 2, 1]);
    expect([value('fromAirfield'), value('toAirfield'), value('nightTenths')]).toEqual(['ZZHB', 'ZZHB', 0]);
    expect(reading.practice.map(({ event }: { event: string }) => event)).toEqual(['landing-1', 'landing-2']);
    expect(reading.practice[0].record).toMatchObject({ flownOn: '2026-03-08', night: false, runwayFt: 3600 });
    expect(reading.picture.length).toBeLessThanOrEqual(601);
    const body = {
      trackSha256: reading.trackSha256,
      log: {
        ...{ aircraftId: ready.aircraftId, role: 'pilot-in-command', soleManipulator: true },
        ...{ departedAt: value('departedAt'), arrivedAt: value('arrivedAt') },
        ...{ fromAirfield: 'ZZHB', toAirfield: 'ZZHB', takeoffs: 2, landings: 2, fullStopLandings: 1 },
        ...{ nightTakeoffs: 0, nightFullStopLandings: 0, totalH: value('totalTenths') / 10 },
      },
      practice: reading.practice.map(({ event, record }: { event: string; record: object }) => ({
        event,
        ...record,
      })),
    };
    const key = newId();
    const confirm = (of_: object, with_ = key) =>
      member.post(`${of()}/track/confirm`, of_).set('Idempotency-Key', with_);
    // All or nothing: the second record cannot be, so the flight is not logged either.
    const broken = { ...body, practice: [body.practice[0], { ...body.practice[1], flownOn: '2026-03-20' }] };
    expect((await confirm(broken, newId()).expect(422)).body.errors[0].field).toBe('practice[1].flownOn');
    expect(await counts()).toEqual(before);
    const first = (await confirm(body).expect(201)).body;
    expect(first.practice.map(({ logEntryId }: { logEntryId: string }) => logEntryId)).toEqual([
      first.log.id,
      first.log.id,
    ]);
    const stored = await counts();
    expect((await confirm(body).expect(201)).body).toEqual(first);
    expect(await counts()).toEqual(stored);
    expect((await confirm(body, newId()).expect(409)).body.code).toBe('flight-logged-already');
    expect((await confirm({ ...body, log: null }, newId()).expect(409)).body.code).toBe(
      'track-event-taken-over',
    );
    const again = (await send(member, gpx).expect(200)).body;
    expect(again.loggedAlready).toBe(first.log.id);
    expect(again.practice.every(({ onRecord }: { onRecord: boolean }) => onRecord)).toBe(true);
  });

  it('are refused where they cannot be read, naming the line', async () => {
    const untimed = gpx.replace(/<time>[^<]*<\/time>/, '');
    const { body } = await send(member, untimed).expect(422);
    expect(body).toMatchObject({ code: 'track-unreadable', errors: [{ field: 'track', line: 4 }] });
    expect((await send(member, '<!DOCTYPE x><gpx/>').expect(422)).body.code).toBe('track-unreadable');
    expect((await send(member, Buffer.alloc(13 * 1024 * 1024)).expect(413)).body.code).toBe('body-too-large');
    await send(other, gpx).expect(403);
    expect((await send(member, '').expect(400)).body.code).toBe('track-missing');
  });
});
