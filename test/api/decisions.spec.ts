import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { newId } from '../../src/platform/ids.js';

describe('asking', () => {
  let api: Api;
  let ready: ReadyClub;
  const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

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
    const count = async (): Promise<number> => {
      const statements = api.countQueries();
      await ready.member.post('/decisions', alone).expect(200);
      return statements.stop();
    };
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

  test("another member's decision is theirs; an instructor may look", async () => {
    const { body } = await ready.member
      .post('/decisions', { ...alone, aircraftIds: [ready.aircraftId] })
      .expect(200);
    const { id } = body.decisions[0];
    const stranger = await ready.club.signInAs('member');
    await stranger.get(`/decisions/${id}`).expect(404);
    await stranger.post('/decisions', { ...alone, memberId: ready.member.memberId }).expect(403);
    const instructor = await ready.club.signInAs('instructor');
    await instructor.get(`/decisions/${id}`).expect(200);
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
