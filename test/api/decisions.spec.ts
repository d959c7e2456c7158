import type { SignedIn } from '../../src/accounts/current-user.js';
import { asSeenBy } from '../../src/decisions/privacy.js';
import type { Decision, FactSheet } from '../../src/rules/index.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { teach } from '../support/teach.js';
import { leastQueries } from '../support/least-queries.js';
import { newId } from '../../src/platform/ids.js';

describe('asking', () => {
  let api: Api;
  let ready: ReadyClub;
  const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

  const taught = (instructor: Session) => ({
    ...{ clubId: ready.club.clubId, instructorId: instructor.memberId, memberId: ready.member.memberId },
  });
  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  interface Finding {
    rule: string;
    status: string;
    weight: string;
    says: string;
    conditions: string[];
  }
  const inTheWay = (findings: Finding[]) =>
    findings
      .filter(
        (finding) =>
          finding.weight !== 'advice' &&
          ['short', 'unknown', 'error'].includes(finding.status) &&
          finding.conditions.length === 0,
      )
      .map((finding) => `${finding.rule}: ${finding.says}`);

  test('a current pilot may take the trainer alone, until their papers say otherwise', async () => {
    const { body } = await ready.member.post('/decisions', alone).expect(200);
    const [decision] = body.decisions;
    expect(inTheWay(decision.findings)).toEqual([]);
    expect(decision.answer).toMatch(/^yes/);
    expect(decision.aircraft).toEqual({
      id: ready.aircraftId,
      registration: 'NX101B',
      makeModel: 'Harrow Lark 160',
    });
    expect(decision.horizon).toEqual(
      expect.objectContaining({ until: expect.stringMatching(/Z$/), because: expect.any(Array) }),
    );
    expect(body.caution).toContain('pilot in command decides');
  });

  test('passengers need three take-offs and landings, counted by record', async () => {
    const { body } = await ready.member
      .post('/decisions', { ...tomorrow, purpose: 'passengers', personsOnBoard: 3 })
      .expect(200);
    const finding = body.decisions[0].findings.find((one: Finding) => one.rule === 'recency.passengers.day');
    expect(finding).toMatchObject({
      status: 'met',
      citation: { text: '14 CFR 61.57(a)' },
      reads: ['pic.log', 'aircraft.type'],
    });
    expect(finding.counted).toEqual([
      { id: expect.any(String), on: '2026-02-20', what: '3 take-offs, 3 landings' },
    ]);
    // 20 February + 90 days is 21 May; a two-hour flight must end that day in the club's zone (UTC-5 then).
    expect(finding.until).toBe('2026-05-22T03:00:00Z');
  });

  test('a forecast for the destination tells whether an alternate is needed', async () => {
    const ifr = { ...alone, flightRules: 'IFR', aircraftIds: [ready.aircraftId] };
    const forecast = { from: '2026-03-11T18:30:00Z', to: '2026-03-11T21:30:00Z', visibilitySm: 6 };
    const alternate = async (destinationForecast?: object) => {
      const { body } = await ready.member.post('/decisions', { ...ifr, destinationForecast }).expect(200);
      return body.decisions[0].findings.find((one: Finding) => one.rule === 'fuel.alternate_required');
    };
    expect(await alternate()).toMatchObject({ status: 'unknown', conditions: [expect.any(String)] });
    expect(await alternate({ ...forecast, ceilingFtAgl: 4000, approachPublished: true })).toMatchObject({
      branch: 'not-needed',
      conditions: [],
    });
    expect(await alternate({ ...forecast, ceilingFtAgl: 1900, approachPublished: true })).toMatchObject({
      branch: 'needed',
      conditions: [expect.stringContaining('alternate')],
    });
    await ready.member.post('/decisions', { ...ifr, destinationForecast: { visibilitySm: -1 } }).expect(400);
  });

  test('a grounding squawk turns the answer to no, and says so', async () => {
    const other = await ready.addAircraft('NX102B');
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      id: newId(),
      aircraft_id: other,
      reported_at: '2026-03-09T12:00:00Z',
      reported_by: ready.member.memberId,
      title: 'Left brake soft',
      state: 'grounding',
    });
    const { body } = await ready.member.post('/decisions', { ...alone, aircraftIds: [other] }).expect(200);
    expect(body.decisions[0].answer).toBe('no');
    expect(inTheWay(body.decisions[0].findings).join()).toContain('Left brake soft');
  });

  test('without an aircraft named, the whole fleet answers, best first, in a constant number of statements', async () => {
    const count = (): Promise<number> =>
      leastQueries(api, () => ready.member.post('/decisions', alone).expect(200));
    await count();
    const few = await count();
    for (const registration of ['NX103B', 'NX104B', 'NX105B', 'NX106B'])
      await ready.addAircraft(registration);
    const many = await count();
    expect(many).toBe(few);
    const { body } = await ready.member.post('/decisions', alone).expect(200);
    const answers = body.decisions.map((decision: { answer: string }) => decision.answer);
    expect(answers.length).toBe(6);
    expect(answers.at(-1)).toBe('no');
  });

  test('every decision replays to the same bytes', async () => {
    const { body } = await ready.member.post('/decisions', alone).expect(200);
    for (const { id } of body.decisions) {
      const { body: again } = await ready.member.get(`/decisions/${id}/replay`).expect(200);
      expect(again).toMatchObject({ identical: true, differences: [], changedRules: [] });
      expect(again.replayedSha256).toBe(again.storedSha256);
      const { body: read } = await ready.member.get(`/decisions/${id}`).expect(200);
      expect(read).toEqual(body.decisions.find((decision: { id: string }) => decision.id === id));
    }
  });

  test('a tampered decision is told by replay', async () => {
    const { body } = await ready.member
      .post('/decisions', { ...alone, aircraftIds: [ready.aircraftId] })
      .expect(200);
    const { id } = body.decisions[0];
    await api.sql('ALTER TABLE decisions DISABLE TRIGGER decisions_append_only');
    await api.sql(`UPDATE decisions SET body = replace(body, '"version":1', '"version":9') WHERE id = $1`, [
      id,
    ]);
    await api.sql('ALTER TABLE decisions ENABLE TRIGGER decisions_append_only');
    const { body: again } = await ready.member.get(`/decisions/${id}/replay`).expect(200);
    expect(again.identical).toBe(false);
    expect(again.differences.length).toBeGreaterThan(0);
  });

  test("another member's decision is theirs; an instructor of theirs may look", async () => {
    const { body } = await ready.member
      .post('/decisions', { ...alone, aircraftIds: [ready.aircraftId] })
      .expect(200);
    const { id } = body.decisions[0];
    const stranger = await ready.club.signInAs('member');
    await stranger.get(`/decisions/${id}`).expect(404);
    await stranger.post('/decisions', { ...alone, memberId: ready.member.memberId }).expect(403);
    const instructor = await ready.club.signInAs('instructor');
    await instructor.get(`/decisions/${id}`).expect(404);
    await instructor.get(`/decisions/${id}/replay`).expect(404);
    await instructor.get(`/decisions/${id}/ways`).expect(404);
    await teach(api, taught(instructor));
    await instructor.get(`/decisions/${id}`).expect(200);
    await instructor.get(`/decisions/${id}/replay`).expect(200);
    await instructor.post('/decisions', { ...alone, memberId: ready.member.memberId }).expect(200);
  });

  test('an instructor asks for a first lesson before there is any bond, and for nothing else', async () => {
    const instructor = await ready.club.signInAs('instructor');
    const lesson = { ...tomorrow, memberId: ready.member.memberId, purpose: 'dual', personsOnBoard: 2 };
    const own = { ...lesson, instructorId: instructor.memberId };
    const { body } = await instructor.post('/decisions', own).expect(200);
    await instructor.get(`/decisions/${body.decisions[0].id}`).expect(200);
    for (const refused of [lesson, { ...alone, memberId: ready.member.memberId }]) {
      const { body: problem } = await instructor.post('/decisions', refused).expect(403);
      expect(problem.errors[0].field).toBe('memberId');
    }
    const other = await ready.club.signInAs('instructor');
    await other.get(`/decisions/${body.decisions[0].id}`).expect(404);
    await other.post('/decisions', own).expect(403);
  });

  test("another club's aircraft, people and decisions do not exist here", async () => {
    const elsewhere = await readyClub(api);
    await ready.member.post('/decisions', { ...alone, aircraftIds: [elsewhere.aircraftId] }).expect(404);
    await ready.member
      .post('/decisions', {
        ...tomorrow,
        purpose: 'dual',
        personsOnBoard: 2,
        instructorId: elsewhere.member.memberId,
      })
      .expect(404);
    const { body } = await elsewhere.member.post('/decisions', alone).expect(200);
    await ready.member.get(`/decisions/${body.decisions[0].id}`).expect(404);
    await ready.member.get(`/decisions/${body.decisions[0].id}/replay`).expect(404);
  });

  test('papers that no officer has verified do not count, unless the policy says so', async () => {
    const newcomer = await ready.club.signInAs('member');
    await ready.makePilot(newcomer.memberId);
    await api.sql('UPDATE medicals SET verified_by = NULL, verified_at = NULL WHERE member_id = $1', [
      newcomer.memberId,
    ]);
    const { body } = await newcomer
      .post('/decisions', { ...alone, aircraftIds: [ready.aircraftId] })
      .expect(200);
    expect(body.decisions[0].answer).not.toMatch(/^yes/);
    expect(inTheWay(body.decisions[0].findings).join()).toContain('medical.certificate');
  });

  describe("somebody else's record", () => {
    // With somebody else as pilot in command, every rule about that pilot reads their papers and log.
    const withSecond = (secondPilotId: string) => ({
      ...tomorrow,
      ...{ purpose: 'solo', personsOnBoard: 2, secondPilotId, actingPilotId: secondPilotId },
      aircraftIds: [ready.aircraftId],
    });
    const PRIVATE = /2019-01-01|2025-09-01|2026-02-20|us\.medical/;
    let pilot: string;
    let asked: {
      id: string;
      crew: object;
      findings: (Finding & Record<string, unknown>)[];
      conditions: string[];
    };

    beforeAll(async () => {
      pilot = (await ready.club.createMember('member', { name: 'Pat Private' })).memberId;
      await ready.makePilot(pilot);
      await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [pilot, '2019-01-01']);
      const { body } = await ready.member.post('/decisions', withSecond(pilot)).expect(200);
      [asked] = body.decisions;
    });

    test('behind a finding is hidden from whoever may not read it', () => {
      expect(asked.crew).toMatchObject({ picId: pilot });
      const about = asked.findings.filter((one) =>
        (one.reads as string[]).some((key) => key.startsWith('pic.')),
      );
      expect(about.length).toBeGreaterThan(5);
      for (const finding of about)
        expect(finding).toMatchObject({
          counted: [],
          remedies: [],
          parameters: [],
          until: null,
          branch: finding.status,
        });
      const medical = asked.findings.find((one) => one.rule === 'medical.certificate');
      expect(medical).toMatchObject({
        status: 'short',
        says: 'Pat Private does not meet this rule. Ask them, or an officer.',
      });
      expect(JSON.stringify(about)).not.toMatch(PRIVATE);
      // What rests on the aircraft stays as it is.
      expect(asked.findings.some((one) => (one.counted as unknown[]).length > 0)).toBe(true);
    });

    test('is told apart from one’s own where a rule reads both, conditions included', () => {
      const viewer: SignedIn = { clubId: 'c', accountId: 'x', memberId: 'own', roles: ['member'] };
      const sheet = { flight: { memberId: 'own', instructorId: null }, people: { other: { name: 'Pat' } } };
      const reads = [['member.standing'], ['member.standing', 'pic.standing'], ['pic.log']];
      const decision = {
        crew: { picId: 'other' },
        findings: reads.map((keys, index) => ({
          reads: keys,
          status: 'short',
          says: `s${index}`,
          conditions: [`c${index}`],
        })),
        conditions: ['c0', 'c1', 'c2'],
      };
      const seen = (who: SignedIn) =>
        asSeenBy(who, sheet as unknown as FactSheet, decision as unknown as Decision);
      expect(seen(viewer).findings.map((finding) => finding.says)).toEqual([
        's0',
        'You or Pat do not meet this rule. Ask them, or an officer.',
        'Pat does not meet this rule. Ask them, or an officer.',
      ]);
      expect(seen(viewer).conditions).toEqual([
        'c0',
        'Pat settles a condition on their own record; ask them.',
      ]);
      expect(seen({ ...viewer, roles: ['member', 'safety-officer'] })).toEqual(decision);
    });

    test('stays hidden when the decision is read again, replayed or refuses a booking', async () => {
      const { body: read } = await ready.member.get(`/decisions/${asked.id}`).expect(200);
      expect(read).toEqual(asked);
      const { aircraftIds, ...flight } = withSecond(pilot);
      const { body: refused } = await ready.member
        .post('/bookings', { ...flight, aircraftId: aircraftIds[0] })
        .set('Idempotency-Key', newId())
        .expect(409);
      expect(refused.findings.map((one: Finding) => one.rule)).toContain('medical.certificate');
      expect(JSON.stringify(refused.findings)).not.toMatch(PRIVATE);
      const { body: replay } = await ready.member.get(`/decisions/${asked.id}/replay`).expect(200);
      expect(replay.identical).toBe(true);
    });

    test('is open to officers, and no more so to whoever teaches the one who asks', async () => {
      const instructor = await ready.club.signInAs('instructor');
      await teach(api, taught(instructor));
      const { body: covered } = await instructor.get(`/decisions/${asked.id}`).expect(200);
      expect(JSON.stringify(covered)).not.toMatch(PRIVATE);
      const officer = await ready.club.signInAs('safety-officer');
      const { body } = await officer.get(`/decisions/${asked.id}`).expect(200);
      const medical = body.findings.find((one: Finding) => one.rule === 'medical.certificate');
      expect(medical.says).not.toContain('Ask them');
      expect(medical.counted.length + medical.remedies.length).toBeGreaterThan(0);
    });

    test('is not the maintenance coordinator’s to ask about', async () => {
      const coordinator = await ready.club.signInAs('maintenance-coordinator');
      await coordinator.post('/decisions', { ...alone, memberId: ready.member.memberId }).expect(403);
      await coordinator.get(`/decisions/${asked.id}`).expect(404);
      await coordinator.get(`/decisions?memberId=${ready.member.memberId}`).expect(403);
    });
  });

  describe('the list', () => {
    let asker: Session;
    let other: string;
    beforeAll(async () => {
      asker = await ready.club.signInAs('member', { name: 'Lin Lister' });
      await ready.makePilot(asker.memberId);
      other = await ready.addAircraft('NX120B');
      for (const aircraftIds of [[ready.aircraftId], [other], [ready.aircraftId]])
        await asker.post('/decisions', { ...alone, aircraftIds }).expect(200);
    });

    test('has one’s own, newest first, page by page, without findings', async () => {
      const { body } = await asker.get('/decisions').expect(200);
      expect(body.items.map((item: { registration: string }) => item.registration)).toEqual([
        'NX101B',
        'NX120B',
        'NX101B',
      ]);
      expect(body).toMatchObject({ nextCursor: null, caution: expect.stringContaining('pilot in command') });
      expect(body.items[0]).toEqual({
        ...{ id: expect.any(String), memberId: asker.memberId, askedBy: asker.memberId },
        ...{ aircraftId: ready.aircraftId, registration: 'NX101B', answer: expect.stringMatching(/^yes/) },
        ...{
          asOf: tomorrow.departs,
          knownAt: '2026-03-10T15:00:00Z',
          horizonUntil: expect.stringMatching(/Z$/),
        },
      });
      const ids = body.items.map((item: { id: string }) => item.id);
      expect(ids).toEqual([...ids].sort().reverse());
      const paged = await asker.all<{ id: string }>('/decisions?limit=2');
      expect(paged.map((item) => item.id)).toEqual(ids);
    });

    test('is narrowed by aircraft and answer', async () => {
      const { body: ofOther } = await asker.get(`/decisions?aircraftId=${other.toUpperCase()}`).expect(200);
      expect(ofOther.items).toHaveLength(1);
      const { body: none } = await asker.get('/decisions?answer=no').expect(200);
      expect(none.items).toEqual([]);
      await asker.get('/decisions?answer=maybe').expect(400);
    });

    test("has another member's for their instructors and officers only", async () => {
      const at = `/decisions?memberId=${asker.memberId}`;
      for (const role of ['instructor', 'safety-officer', 'administrator'] as const) {
        const reader = await ready.club.signInAs(role);
        if (role === 'instructor') {
          await reader.get(at).expect(403);
          await teach(api, { ...taught(reader), memberId: asker.memberId });
        }
        const { body } = await reader.get(at).expect(200);
        expect(body.items).toHaveLength(3);
      }
      await ready.member.get(at).expect(403);
      const elsewhere = await (await api.createClub()).signInAs('administrator');
      await elsewhere.get(at).expect(404);
      await elsewhere.get(`/decisions?aircraftId=${other}`).expect(404);
    });
  });

  test('identifiers are read however they are written', async () => {
    const { body } = await ready.member
      .post('/decisions', {
        ...alone,
        memberId: ready.member.memberId.toUpperCase(),
        aircraftIds: [ready.aircraftId.toUpperCase()],
      })
      .expect(200);
    expect(body.decisions[0].aircraft.id).toBe(ready.aircraftId);
  });

  test.each(['EU', 'CA'] as const)(
    'a club under the rules of %s gets an answer that replays',
    async (jurisdiction) => {
      const there = await readyClub(api);
      await api.sql('UPDATE clubs SET jurisdiction = $2 WHERE club_id = $1', [
        there.club.clubId,
        jurisdiction,
      ]);
      const { body } = await there.member.post('/decisions', alone).expect(200);
      const [decision] = body.decisions;
      expect(decision.findings.length).toBeGreaterThan(5);
      expect(decision.findings.filter((finding: Finding) => finding.status === 'error')).toEqual([]);
      const { body: again } = await there.member.get(`/decisions/${decision.id}/replay`).expect(200);
      expect(again.identical).toBe(true);
    },
  );

  describe('a question that cannot be read names the field', () => {
    const bad: [string, object, number, string][] = [
      ['an unknown field', { ...alone, colour: 'red' }, 400, 'colour'],
      ['a wrong type', { ...alone, personsOnBoard: 'two' }, 400, 'personsOnBoard'],
      ['nobody aboard', { ...alone, personsOnBoard: 0 }, 400, 'personsOnBoard'],
      [
        'times in the wrong order',
        { ...alone, departs: tomorrow.arrives, arrives: tomorrow.departs },
        422,
        'arrives',
      ],
      [
        'a time without offset, as on the night the clocks change',
        { ...alone, departs: '2026-03-08T02:30:00' },
        400,
        'departs',
      ],
      ['30 February', { ...alone, departs: '2026-02-30T18:00:00Z' }, 400, 'departs'],
      [
        'a departure that has passed',
        { ...alone, departs: '2026-03-09T18:00:00Z', arrives: '2026-03-09T19:00:00Z' },
        422,
        'departs',
      ],
      ['an unknown purpose', { ...alone, purpose: 'joyride' }, 400, 'purpose'],
      ['an id that is none', { ...alone, aircraftIds: ['1'] }, 400, 'aircraftIds'],
      [
        'an unknown aircraft',
        { ...alone, aircraftIds: ['0190d1c0-0000-7000-8000-000000000000'] },
        404,
        'aircraftIds',
      ],
      ['an unknown airfield', { ...alone, route: ['XQHB', 'XQ00'] }, 422, 'route[1]'],
      ['hours left empty', { ...alone, plannedHours: null }, 400, 'plannedHours'],
      ['no hours at all', { ...alone, plannedHours: 0 }, 422, 'plannedHours'],
      ['nobody as instructor', { ...alone, instructorId: null }, 400, 'instructorId'],
      ['a list for the weather', { ...alone, weather: [{}] }, 400, 'weather'],
      ['negative hours', { ...alone, plannedHours: -1 }, 400, 'plannedHours'],
      ['a zero byte', { ...alone, purpose: 'solo\u0000' }, 400, 'purpose'],
      [
        'an instructor on a solo flight',
        { ...alone, instructorId: '0190d1c0-0000-7000-8000-000000000000' },
        404,
        'instructorId',
      ],
    ];
    test.each(bad)('%s', async (_name, question, status, field) => {
      const { body, headers } = await ready.member.post('/decisions', question);
      expect({ status: body.status, type: headers['content-type'] }).toEqual({
        status,
        type: expect.stringContaining('application/problem+json'),
      });
      expect(body.errors.map((error: { field: string }) => error.field).join()).toContain(field);
      expect(JSON.stringify(body)).not.toMatch(/at .*\.ts|node_modules|SELECT/);
    });

    test('ten megabytes', async () => {
      const { body } = await ready.member.post('/decisions', { ...alone, note: 'x'.repeat(10_000_000) });
      expect(body.status).toBe(413);
    });
  });

  test('a flight across the clock change is judged by the time that passes', async () => {
    // On 1 November 2026 the clocks of the club's zone go back at 02:00: 00:30 to 03:30 there lasts four hours.
    api.clock.set('2026-10-31T15:00:00Z');
    try {
      const night = {
        departs: '2026-11-01T00:30:00-05:00',
        arrives: '2026-11-01T03:30:00-06:00',
        purpose: 'solo',
        personsOnBoard: 1,
      };
      const { body } = await ready.member
        .post('/decisions', night)
        .set('Authorization', `Bearer ${ready.club.tokenFor(ready.member)}`)
        .expect(200);
      expect(body.decisions[0].asOf).toBe('2026-11-01T05:30:00Z');
    } finally {
      api.clock.set('2026-03-10T15:00:00Z');
    }
  });
});
