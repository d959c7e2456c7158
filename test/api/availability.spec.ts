/** When instructors teach: kept by themselves, read by everybody, and asked of a lesson. Club handbook, section 4.5. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

describe('the hours instructors keep', () => {
  let api: Api;
  let ready: ReadyClub;
  let instructor: Session;
  let path: string;

  beforeAll(async () => {
    api = await startApi();
  }, 300_000);
  afterAll(() => api.stop());
  beforeEach(async () => {
    ready = await readyClub(api);
    instructor = await ready.club.signInAs('instructor', { name: 'Ines Structor' });
    await ready.makePilot(instructor.memberId);
    await insertInto(api.sql, ready.club.clubId)('instructor_certificates', {
      ...{ id: newId(), member_id: instructor.memberId, issued_on: '2020-05-01' },
      ...{ ratings: ['airplane-single-engine'], recent_experience_on: '2025-06-01' },
      ...{ verified_by: ready.member.memberId, verified_at: '2026-01-02T00:00:00Z' },
    });
    await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [instructor.memberId]);
    path = `/members/${instructor.memberId}/teaching-hours`;
  }, 60_000);

  const lesson = () => ({
    ...{ ...tomorrow, purpose: 'dual', personsOnBoard: 2, instructorId: instructor.memberId },
    aircraftId: ready.aircraftId,
  });
  const found = async () => {
    const { aircraftId, ...asked } = { ...lesson(), memberId: ready.member.memberId };
    // To the member the instructor's record stays covered, as in every decision.
    const { body } = await instructor.post('/decisions', { ...asked, aircraftIds: [aircraftId] }).expect(200);
    const { findings, answer } = body.decisions[0] as {
      answer: string;
      findings: { rule: string; branch: string; conditions: string[] }[];
    };
    return { answer, ...findings.find(({ rule }) => rule === 'calendar.instructor_hours')! };
  };
  const free = async () => {
    const { departs, arrives } = tomorrow;
    const { body } = await ready.member
      .get(`/instructors/free?departs=${departs}&arrives=${arrives}`)
      .expect(200);
    return (body.items as { memberId: string }[]).find(({ memberId }) => memberId === instructor.memberId);
  };

  it('are asked of a lesson, and who is free says the same', async () => {
    // 2026-03-11 is a Wednesday; the club is in Chicago, so the flight is from 13:00 to 15:00 there.
    expect(ready.club.zone).toBe('America/Chicago');
    expect(await found()).toMatchObject({ branch: 'none-kept' });
    expect(await free()).toMatchObject({ free: true, hours: 'none-kept', busyUntil: null });
    await instructor.post(path, { kind: 'weekly', weekday: 3, opens: '09:00', closes: '14:59' }).expect(201);
    expect(await found()).toMatchObject({
      ...{ branch: 'to-agree', conditions: [expect.stringContaining('Agree on the time')] },
    });
    expect(await free()).toMatchObject({ free: false, hours: 'outside' });
    await instructor.post(path, { kind: 'weekly', weekday: 3, opens: '14:59', closes: '15:00' }).expect(201);
    expect(await found()).toMatchObject({ branch: 'within' });
    expect(await free()).toMatchObject({ free: true, hours: 'within' });
    await instructor.post(path, { kind: 'date', on: '2026-03-11' }).expect(201);
    await api.sql(
      `UPDATE policy_values SET value = 'true' WHERE club_id = $1 AND parameter_id = 'club.instructor-hours.refuse-outside'`,
      [ready.club.clubId],
    );
    expect(await found()).toMatchObject({ branch: 'outside', answer: 'ask-officer' });
  });

  it('a booked lesson is judged again when they change', async () => {
    await instructor.post(path, { kind: 'weekly', weekday: 3, opens: '09:00', closes: '17:00' }).expect(201);
    const before = await api.sql(`SELECT 1 FROM fact_changes WHERE club_id = $1 AND subject = $2`, [
      ready.club.clubId,
      `person:${instructor.memberId}:teachingHours`,
    ]);
    expect(before.length).toBeGreaterThan(0);
  });

  it('somebody booked is not free until the booking ends', async () => {
    await ready.member.post('/bookings', lesson()).set('Idempotency-Key', newId()).expect(201);
    expect(await free()).toMatchObject({ free: false, busyUntil: tomorrow.arrives });
  });

  it('are kept by the instructor or an administrator, read by everybody, and removed by their version', async () => {
    const hours = { kind: 'weekly', weekday: 6, opens: '08:00', closes: '24:00', validThrough: '2026-12-31' };
    const { body } = await instructor.post(path, hours).expect(201);
    expect(body.items).toEqual([
      { ...hours, id: expect.any(String), on: null, validFrom: '2026-03-10', rowVersion: 1 },
    ]);
    const one = `${path}/${body.items[0].id}`;
    expect((await ready.member.get(path).expect(200)).body).toEqual(body);
    await ready.member.post(path, hours).expect(403);
    await ready.member.delete(one, '"1"').expect(403);
    const administrator = await ready.club.signInAs('administrator');
    await administrator
      .post(path, { kind: 'date', on: '2026-04-01', opens: '10:00', closes: '11:00' })
      .expect(201);
    const own = `/members/${ready.member.memberId}/teaching-hours`;
    expect((await ready.member.post(own, hours).expect(422)).body.code).toBe('not-an-instructor');
    await instructor.delete(one).expect(428);
    await instructor.delete(one, '"2"').expect(412);
    await instructor.delete(one, '"1"').expect(204);
    await instructor.delete(one, '"1"').expect(404);
    expect((await instructor.get(path).expect(200)).body.items).toHaveLength(1);
  });

  it.each([
    ['weekday', { kind: 'weekly', opens: '09:00', closes: '10:00' }],
    ['opens', { kind: 'weekly', weekday: 1 }],
    ['closes', { kind: 'weekly', weekday: 1, opens: '09:00' }],
    ['closes', { kind: 'weekly', weekday: 1, opens: '09:00', closes: '09:00' }],
    ['on', { kind: 'weekly', weekday: 1, on: '2026-03-11', opens: '09:00', closes: '10:00' }],
    ['on', { kind: 'date' }],
    ['on', { kind: 'date', on: '2026-03-09' }],
    ['weekday', { kind: 'date', on: '2026-03-11', weekday: 3 }],
    ['validFrom', { kind: 'date', on: '2026-03-11', validFrom: '2026-03-11' }],
    [
      'validThrough',
      { kind: 'weekly', weekday: 1, opens: '09:00', closes: '10:00', validThrough: '2026-03-09' },
    ],
  ])('refuses hours that make no sense, naming %s', async (field, body) => {
    const answer = await instructor.post(path, body).expect(422);
    expect(answer.body.errors).toEqual([expect.objectContaining({ field })]);
  });
});
