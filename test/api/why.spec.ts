import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

interface Derivation {
  finding: { rule: string; says: string; status: string; branch: string };
  withheld: string | null;
  reproduced: boolean;
  facts: {
    key: string;
    words: string;
    whose: string | null;
    firmnessWord: string;
    lastKnownAt: string;
    records: { id: string; kind: string; says: string; counted: string | null }[];
  }[];
  unread: { key: string }[];
  request: string[];
  numbers: { id: string; says: string; reference: string; checkedOn: string | null }[];
  body: { from: string | null; to: string | null; citation: { text: string } };
  branches: { name: string; taken: boolean; says: string; status: string }[];
  change: { at: string | null; says: string; then: { status: string; says: string } | null };
}

describe('why', () => {
  let api: Api;
  let ready: ReadyClub;
  const withTwo = { ...tomorrow, purpose: 'passengers', personsOnBoard: 3 };

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const ask = async (question: object, who = ready.member): Promise<string> => {
    const { body } = await who
      .post('/decisions', { ...question, aircraftIds: [ready.aircraftId] })
      .expect(200);
    return body.decisions[0].id as string;
  };

  test('a finding shows the record that was counted, the numbers, the text in force and what changes when', async () => {
    const id = await ask(withTwo);
    const { body } = await ready.member.get(`/decisions/${id}/why/recency.passengers.day`).expect(200);
    const [entry] = await api.sql('SELECT id FROM log_entries WHERE member_id = $1', [ready.member.memberId]);
    expect(body).toMatchObject({ decisionId: id, caution: expect.stringContaining('pilot in command') });
    const why = body.why as Derivation;
    expect(why).toMatchObject({ withheld: null, reproduced: true });
    expect(why.facts.find(({ key }) => key === 'pic.log')).toMatchObject({
      ...{ words: 'the pilot’s log', whose: 'Robin Member', firmnessWord: 'on record' },
      lastKnownAt: expect.stringMatching(/Z$/),
      records: [
        {
          id: (entry as { id: string }).id,
          kind: 'log entry',
          says: expect.stringContaining('3 take-offs and 3 landings'),
          counted: '3 take-offs, 3 landings',
        },
      ],
    });
    // Of the aircraft only what the rule looked at.
    expect(why.facts.find(({ key }) => key === 'aircraft.type')!.records.map(({ says }) => says)).toEqual([
      'category airplane, class single engine land, no tailwheel',
    ]);
    expect(why.request).toContain('2 passengers');
    expect(why.numbers.map(({ id: name, says }) => `${name}: ${says}`)).toEqual([
      'us.passenger-recency.count: 3',
      'us.passenger-recency.days: 90 days',
    ]);
    expect(why.body).toMatchObject({ from: '2024-12-02', to: null, citation: { text: '14 CFR 61.57(a)' } });
    expect(why.branches.filter(({ taken }) => taken).map(({ name }) => name)).toEqual(['enough']);
    expect(why.branches.map(({ says }) => says).join()).not.toMatch(/[{}]/);
    // 20 February + 90 days, to the end of a flight of two hours in the club's zone.
    expect(why.change).toMatchObject({
      at: '2026-05-22T03:00:00Z',
      then: { status: 'short', says: expect.stringContaining('0 of 3 landings') },
    });
  });

  test('the whole answer says who is pilot in command and why, what was tried, and derives every finding', async () => {
    await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [
      ready.member.memberId,
      '2019-01-01',
    ]);
    const id = await ask(withTwo);
    await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [
      ready.member.memberId,
      '2025-06-10',
    ]);
    const { body } = await ready.member.get(`/decisions/${id}/why`).expect(200);
    const { body: decision } = await ready.member.get(`/decisions/${id}`).expect(200);
    expect(body.answer).toMatchObject({
      answer: decision.answer,
      says: decision.says,
      crew: {
        pic: 'Robin Member',
        says: 'Robin Member is pilot in command: the member flies without an instructor.',
        passengers: 2,
      },
      flight: { purposeWord: 'with passengers' },
      inTheWay: expect.arrayContaining(['medical.certificate']),
      withInstructor: { says: expect.stringMatching(/^The same flight with an instructor: “.+”\.$/) },
    });
    const derivations = body.derivations as Derivation[];
    expect(derivations.map((one) => one.finding)).toEqual(decision.findings);
    expect(derivations.filter((one) => !one.reproduced).map((one) => one.finding.rule)).toEqual([]);
    // What stands in the way is told with the record, though the record has changed since.
    const medical = derivations.find((one) => one.finding.rule === 'medical.certificate')!;
    const papers = medical.facts.find(({ key }) => key === 'pic.medicals')!;
    expect(papers.records.map(({ says }) => says)).toEqual(['class 3, examined 2019-01-01']);
  });

  test('a fact that is not on record says what is missing', async () => {
    const nameless = await ready.club.signInAs('member', { name: 'Ana Ageless' });
    await ready.makePilot(nameless.memberId);
    await api.sql('UPDATE members SET birth_date = NULL WHERE id = $1', [nameless.memberId]);
    const id = await ask(withTwo, nameless);
    const { body } = await nameless.get(`/decisions/${id}/why/medical.certificate`).expect(200);
    const birth = (body.why as Derivation).facts.find(({ key }) => key === 'pic.birthDate');
    expect(body.why.finding.status).toBe('unknown');
    expect(birth).toMatchObject({ known: false, because: 'the birth date is not on record', records: [] });
  });

  test('a decision of a rule that has been rewritten since is told from what was kept', async () => {
    const id = await ask(withTwo);
    await api.sql('ALTER TABLE decisions DISABLE TRIGGER decisions_append_only');
    await api.sql(
      `UPDATE decisions SET body = replace(body, 'good through 2026-05-21', 'good for as long as it lasts') WHERE id = $1`,
      [id],
    );
    await api.sql('ALTER TABLE decisions ENABLE TRIGGER decisions_append_only');
    const { body } = await ready.member.get(`/decisions/${id}/why/recency.passengers.day`).expect(200);
    expect(body.why).toMatchObject({
      ...{ reproduced: false, change: null },
      note: expect.stringContaining('has changed since'),
      finding: { says: expect.stringContaining('as long as it lasts') },
    });
    const log = (body.why as Derivation).facts.find(({ key }) => key === 'pic.log')!;
    expect(log.records[0]).toMatchObject({ counted: '3 take-offs, 3 landings' });
  });

  test('a record that was altered beyond sense is told as such, not as a fault of the service', async () => {
    const id = await ask(withTwo);
    await api.sql('ALTER TABLE decisions DISABLE TRIGGER decisions_append_only');
    await api.sql(`UPDATE decisions SET body = replace(body, '"pic.log"', '"pic.lag"') WHERE id = $1`, [id]);
    await api.sql('ALTER TABLE decisions ENABLE TRIGGER decisions_append_only');
    const { body } = await ready.member.get(`/decisions/${id}/why/recency.passengers.day`).expect(409);
    expect(body.code).toBe('decision-damaged');
  });

  test('an unknown rule, an unknown decision and a decision of somebody else are not there', async () => {
    const id = await ask(withTwo);
    const { body } = await ready.member.get(`/decisions/${id}/why/no.such_rule`).expect(404);
    expect(body).toMatchObject({
      code: 'not-found',
      detail: expect.stringContaining('no finding of that rule'),
    });
    await ready.member.get(`/decisions/${newId()}/why`).expect(404);
    await ready.member.get('/decisions/1/why').expect(400);
    const stranger = await ready.club.signInAs('member');
    await stranger.get(`/decisions/${id}/why`).expect(404);
    await stranger.get(`/decisions/${id}/why/recency.passengers.day`).expect(404);
    const elsewhere = await readyClub(api);
    await elsewhere.member.get(`/decisions/${id}/why`).expect(404);
    await api.http.get(`/api/v1/decisions/${id}/why`).expect(401);
  });

  describe("somebody else's record", () => {
    const PRIVATE = /2019-01-01|2025-09-01|2026-02-20|us\.medical|1980-05-04|class 3/;
    let pilot: string;
    let id: string;

    beforeAll(async () => {
      pilot = (await ready.club.createMember('member', { name: 'Pat Private' })).memberId;
      await ready.makePilot(pilot);
      await api.sql('UPDATE members SET birth_date = $2 WHERE id = $1', [pilot, '1980-05-04']);
      await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [pilot, '2019-01-01']);
      await insertInto(api.sql, ready.club.clubId)('squawks', {
        id: newId(),
        aircraft_id: ready.aircraftId,
        reported_at: '2026-03-09T12:00:00Z',
        reported_by: ready.member.memberId,
        title: 'Cabin light out',
        state: 'reported',
      });
      id = await ask({
        ...tomorrow,
        ...{ purpose: 'solo', personsOnBoard: 2, secondPilotId: pilot, actingPilotId: pilot },
      });
    });

    test('is withheld: neither facts nor numbers nor the branch, only the rule and whether it is met', async () => {
      const { body, text } = await ready.member.get(`/decisions/${id}/why`).expect(200);
      const about = (body.derivations as Derivation[]).filter((one) =>
        one.unread.concat(one.facts).some(({ key }) => key.startsWith('pic.')),
      );
      expect(about.length).toBeGreaterThan(5);
      for (const one of about) {
        expect(one).toMatchObject({ facts: [], numbers: [], request: [], change: null });
        expect(one.withheld).toContain('Pat Private');
        expect(one.branches.filter(({ taken }) => taken)).toEqual([]);
        expect(one.branches.length).toBeGreaterThan(0);
      }
      expect(JSON.stringify(about)).not.toMatch(PRIVATE);
      expect(text).not.toMatch(/1980-05-04|2019-01-01/);
      // What rests on the aircraft stays open.
      const squawks = (body.derivations as Derivation[]).find(
        (one) => one.finding.rule === 'squawk.grounding',
      )!;
      expect(squawks.withheld).toBeNull();
      expect(JSON.stringify(squawks.facts)).toContain('Cabin light out');
      const { body: one } = await ready.member.get(`/decisions/${id}/why/medical.certificate`).expect(200);
      expect(one.why).toMatchObject({
        facts: [],
        numbers: [],
        withheld: expect.stringContaining('Pat Private'),
      });
    });

    test('is open to an officer', async () => {
      const officer = await ready.club.signInAs('safety-officer');
      const { body } = await officer.get(`/decisions/${id}/why/medical.certificate`).expect(200);
      expect(JSON.stringify(body.why.facts)).toContain('examined 2019-01-01');
      expect(body.why.withheld).toBeNull();
    });

    test('is not the maintenance coordinator’s', async () => {
      const coordinator = await ready.club.signInAs('maintenance-coordinator');
      await coordinator.get(`/decisions/${id}/why`).expect(404);
    });
  });
});
