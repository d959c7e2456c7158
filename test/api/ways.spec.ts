/** Ways to yes over HTTP. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { leastQueries } from '../support/least-queries.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

/** Twelve days after the API's clock (2026-03-10T15:00:00Z), by day at the field. */
const flight = {
  departs: '2026-03-22T18:00:00Z',
  arrives: '2026-03-22T20:00:00Z',
  purpose: 'solo',
  personsOnBoard: 1,
};

interface Way {
  steps: {
    act: string;
    title: string;
    cures: string[];
    startsOn: string;
    doneBy: string;
    person: string | null;
  }[];
  answer: string;
  rests: string[];
  conditions: string[];
  provenBy: string;
  flight: { aircraftId: string };
}

describe('ways to yes', () => {
  let api: Api;
  let ready: ReadyClub;
  let row: ReturnType<typeof insertInto>;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    row = insertInto(api.sql, ready.club.clubId);
  });
  afterAll(() => api.stop());

  const ask = async (session: Session, more: object = {}): Promise<{ id: string; answer: string }> => {
    const { body } = await session
      .post('/decisions', { ...flight, aircraftIds: [ready.aircraftId], ...more })
      .expect(200);
    return body.decisions[0];
  };
  const acts = (way: Way): string[] => way.steps.map(({ act }) => act);
  /** The member's medical ran out. */
  const loseMedical = (): Promise<unknown> =>
    api.sql(`UPDATE medicals SET exam_on = '2019-01-10' WHERE member_id = $1`, [ready.member.memberId]);

  test('a lapsed medical: the examination, dated and priced, or an instructor, who is asked for by name', async () => {
    await loseMedical();
    const { id, answer } = await ask(ready.member);
    expect(answer).not.toMatch(/^yes/);
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    expect(body).toMatchObject({
      schema: 'bellcrank.ways/1',
      decisionId: id,
      currency: 'dollars',
      none: null,
      bound: null,
    });
    const exam = body.plans.find((way: Way) => acts(way).includes('pass-medical-exam'));
    expect(exam).toMatchObject({
      answer: expect.stringMatching(/^yes/),
      rests: [],
      provenBy: expect.stringMatching(/^[0-9a-f]{64}$/),
      steps: [
        {
          act: 'pass-medical-exam',
          person: ready.member.memberId,
          startsOn: '2026-03-17T15:00:00Z',
          doneBy: '2026-03-17T15:00:00Z',
          cures: ['medical.certificate'],
          cost: { money: 140, hours: 2, days: 7 },
        },
      ],
    });
    // The club's instructor has no papers on record here and is not offered by name.
    const dual = body.plans.find((way: Way) => acts(way).includes('fly-with-instructor'));
    expect(dual).toMatchObject({ answer: 'dual-only', rests: ['instructor'] });
    expect(body.caution).toContain('decide');
  });

  /** A pilot who may teach in the trainer. */
  const instructorNamed = async (name: string): Promise<string> => {
    const { memberId } = await ready.club.createMember('instructor', { name });
    await ready.makePilot(memberId);
    await row('instructor_certificates', {
      id: newId(),
      member_id: memberId,
      issued_on: '2020-06-01',
      ratings: ['airplane-single-engine'],
      recent_experience_on: '2025-06-10',
      verified_by: memberId,
      verified_at: '2026-01-02T00:00:00Z',
    });
    return memberId;
  };

  test('an instructor whose papers are in order is offered by name', async () => {
    await loseMedical();
    await instructorNamed('Iris Teacher');
    const { id } = await ask(ready.member);
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    const named = body.plans.find((way: Way) => acts(way).includes('fly-with-instructor'));
    expect(named.steps[0].title).toBe('Take Iris Teacher along as instructor and pilot in command.');
    expect(named.rests).toEqual([]);
  });

  test('comes along with the answer where one aircraft is asked about and ways are asked for', async () => {
    await loseMedical();
    const question = { ...flight, aircraftIds: [ready.aircraftId] };
    const { body } = await ready.member.post('/decisions', { ...question, ways: true }).expect(200);
    expect(body.ways.decisionId).toBe(body.decisions[0].id);
    expect(body.ways.plans.length).toBeGreaterThan(0);
    const plain = await ready.member.post('/decisions', question).expect(200);
    expect(plain.body.ways).toBeNull();
    const other = await ready.addAircraft('NX102B');
    const both = { ...flight, aircraftIds: [ready.aircraftId, other], ways: true };
    expect((await ready.member.post('/decisions', both).expect(200)).body.ways).toBeNull();
    const instructor = await ready.club.signInAs('member', { name: 'Fit Member' });
    await ready.makePilot(instructor.memberId);
    const fit = await instructor.post('/decisions', { ...question, ways: true }).expect(200);
    expect(fit.body.decisions[0].answer).toMatch(/^yes/);
    expect(fit.body.ways).toBeNull();
    await ready.member.post('/decisions', { ...question, ways: 'yes' }).expect(400);
  });

  test('another aircraft of the club is a way, from where it lives', async () => {
    const other = await ready.addAircraft('NX102B');
    await row('squawks', {
      id: newId(),
      aircraft_id: ready.aircraftId,
      reported_at: '2026-03-09T12:00:00Z',
      reported_by: ready.member.memberId,
      title: 'Left brake soft',
      state: 'grounding',
    });
    const { id } = await ask(ready.member);
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    const way = body.plans.find((one: Way) => acts(one).includes('take-other-aircraft'));
    expect(way.steps[0].title).toBe('Take NX102B (Harrow Lark 160) instead.');
    expect(way.flight.aircraftId).toBe(other);
    expect(body.plans.some((one: Way) => acts(one).includes('fix-squawk'))).toBe(true);
  });

  test('a paper that waits for an officer is a way', async () => {
    await loseMedical();
    await row('medicals', { id: newId(), member_id: ready.member.memberId, class: 3, exam_on: '2026-03-01' });
    const { id } = await ask(ready.member);
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    expect(acts(body.plans[0])).toEqual(['have-papers-verified']);
    expect(body.plans[0].steps[0].title).toContain('medical certificate of class 3 of 2026-03-01');
  });

  test("the club's own prices count from the day on which they hold", async () => {
    await loseMedical();
    await api.sql(
      `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference)
       VALUES ($1, $2, 'club.cost.medical-exam', '2026-03-01', '33', 'minutes'), ($1, $3, 'club.cost.medical-exam', '2026-04-01', '99', 'minutes')`,
      [ready.club.clubId, newId(), newId()],
    );
    const { id } = await ask(ready.member);
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    const exam = body.plans.find((way: Way) => acts(way).includes('pass-medical-exam'));
    expect(exam.cost.money).toBe(33);
  });

  test('says plainly when there is no way before the flight, and when there would be', async () => {
    await loseMedical();
    const { id } = await ask(ready.member, {
      purpose: 'ferry-to-inspection',
      departs: '2026-03-12T18:00:00Z',
      arrives: '2026-03-12T19:00:00Z',
    });
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    expect(body.plans).toEqual([]);
    expect(body.none).toMatchObject({
      says: 'There is no way to yes before the flight.',
      because: [{ rule: 'medical.certificate', why: expect.stringContaining('2026-03-17') }],
    });
    expect(body.later).toMatchObject({ departs: '2026-03-17T18:00:00Z', way: { rests: [] } });
  });

  test('nothing begins before now, and a flight that has begun has no ways', async () => {
    await loseMedical();
    const { id } = await ask(ready.member);
    api.clock.set('2026-03-14T15:00:00Z');
    try {
      const later = await ready.member.get(`/decisions/${id}/ways`).expect(200);
      const exam = later.body.plans.find((way: Way) => acts(way).includes('pass-medical-exam'));
      expect(exam.steps[0].startsOn).toBe('2026-03-21T15:00:00Z');
      api.clock.set('2026-03-22T18:00:00Z');
      const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(422);
      expect(body).toMatchObject({ code: 'flight-invalid', title: 'The flight has begun' });
    } finally {
      api.clock.set('2026-03-10T15:00:00Z');
    }
  });

  test("is theirs who may read the decision, and shows nothing of somebody else's record", async () => {
    const instructorId = await instructorNamed('Iris Teacher');
    await api.sql(`UPDATE medicals SET exam_on = '2019-01-10' WHERE member_id = $1`, [instructorId]);
    const { id } = await ask(ready.member, {
      purpose: 'dual',
      personsOnBoard: 2,
      instructorId,
    });
    const { body } = await ready.member.get(`/decisions/${id}/ways`).expect(200);
    const shown = JSON.stringify(body);
    expect(shown).not.toContain('pass-medical-exam');
    expect(shown).not.toContain('2019-01-10');
    for (const way of body.plans as Way[]) {
      expect(way.steps.every(({ person }) => person === null || person === ready.member.memberId)).toBe(true);
    }
    const stranger = await ready.club.signInAs('member');
    await stranger.get(`/decisions/${id}/ways`).expect(404);
    const officer = await ready.club.signInAs('safety-officer');
    const open = await officer.get(`/decisions/${id}/ways`).expect(200);
    expect(JSON.stringify(open.body)).toContain('pass-medical-exam');
    const elsewhere = await readyClub(api);
    await elsewhere.member.get(`/decisions/${id}/ways`).expect(404);
    await ready.member.get('/decisions/not-an-id/ways').expect(400);
  });

  test('looks everything up in a constant number of statements', async () => {
    await loseMedical();
    const { id } = await ask(ready.member);
    const count = (): Promise<number> =>
      leastQueries(api, () => ready.member.get(`/decisions/${id}/ways`).expect(200));
    await count();
    const few = await count();
    for (const registration of ['NX103B', 'NX104B', 'NX105B']) await ready.addAircraft(registration);
    for (let more = 0; more < 3; more += 1) await ready.club.createMember('instructor');
    expect(await count()).toBe(few);
  });
});
