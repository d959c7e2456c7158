/** Who reads of whose flights: those aboard, an instructor of their students, officers of everybody; and how much. */
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

describe('standing answers', () => {
  let api: Api;
  let ready: ReadyClub;
  let instructor: Session;
  let bookingId: string;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    const { club } = ready;
    instructor = await club.signInAs('instructor', { name: 'Ines Structor' });
    await ready.makePilot(instructor.memberId);
    await insertInto(api.sql, club.clubId)('instructor_certificates', {
      ...{ id: newId(), member_id: instructor.memberId, issued_on: '2020-05-01' },
      ...{ ratings: ['airplane-single-engine'], recent_experience_on: '2025-06-01' },
      ...{ verified_by: ready.member.memberId, verified_at: '2026-01-02T00:00:00Z' },
    });
    await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [instructor.memberId]);
    const body = { ...tomorrow, aircraftId: ready.aircraftId, purpose: 'dual', personsOnBoard: 2 };
    const booked = await ready.member
      .post('/bookings', { ...body, instructorId: instructor.memberId })
      .set('Idempotency-Key', newId())
      .expect(201);
    bookingId = (booked.body as { id: string }).id;
    await rejudge();
    await api.sql('DELETE FROM medicals WHERE member_id = $1', [instructor.memberId]);
    await rejudge();
  }, 60_000);
  afterAll(() => api.stop());

  const rejudge = () => rejudgeClub(api.app.get(TenantDb), ready.club.clubId, () => api.clock.now());
  const said = async (who: Session): Promise<string> => {
    const { body } = await who.get(`/standing-answers/${bookingId}`).expect(200);
    expect(body).toMatchObject({ now: 'no', caution: expect.stringContaining('pilot in command') });
    const about = (body as { because: { rule: string; says: string }[] }).because;
    return about.find(({ rule }) => rule === 'medical.certificate')!.says;
  };

  it('tell those aboard, and of somebody else’s record only that it falls short', async () => {
    expect(await said(ready.member)).toBe('Ines Structor does not meet this rule. Ask them, or an officer.');
    expect(await said(instructor)).toMatch(/^No medical certificate/);
    const { body } = await ready.member.get('/standing-answers?changed=true').expect(200);
    expect(body).toMatchObject({ items: [{ bookingId, bookedAt: 'yes-with-conditions', now: 'no' }] });
  });

  it('tell officers of everybody, an instructor of their students, and nobody else', async () => {
    const officer = await ready.club.signInAs('safety-officer');
    expect(await said(officer)).toMatch(/^No medical certificate/);
    const all = await officer.get('/standing-answers?everybody=true').expect(200);
    expect((all.body as { items: unknown[] }).items).toHaveLength(1);
    const of = `/standing-answers?memberId=${ready.member.memberId}`;
    await instructor.get(of).expect(200);
    await instructor.get('/standing-answers?everybody=true').expect(403);
    await (await ready.club.signInAs('instructor')).get(of).expect(403);
    const other = await ready.club.signInAs('member');
    await other.get(of).expect(403);
    await other.get(`/standing-answers/${bookingId}`).expect(404);
    await other.get(`/standing-answers/${bookingId}/ways`).expect(404);
    expect((await other.get('/standing-answers').expect(200)).body).toMatchObject({ items: [] });
  });
});
