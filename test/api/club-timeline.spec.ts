/** The whole club's timelines, streamed: what holds each line is the same member's and aircraft's own timeline. */
import { request as httpRequest, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PassThrough } from 'node:stream';
import { setTimeout as pause } from 'node:timers/promises';
import type { Response } from 'express';
import { ClubTimelinesService } from '../../src/decisions/timeline/club/club-timelines.service.js';
import { LineStream } from '../../src/platform/http/line-stream.js';
import { MOST_PAIR_DAYS } from '../../src/decisions/timeline/club/gather-pairs.js';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

type Line = Record<string, unknown>;
interface Change {
  rule: string;
  was: string;
  is: string;
  withInstructor?: boolean;
}
interface Pair {
  memberId: string;
  aircraftId: string;
  steps: { from: string; to: string; answer: string; inTheWay: string[]; changed: Change[] }[];
}

describe('timelines of the whole club', () => {
  let api: Api;
  let ready: ReadyClub;
  let officer: Session;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    officer = await ready.club.signInAs('safety-officer', { name: 'Olga Officer' });
  });
  afterAll(() => api.stop());

  const week = { from: '2026-03-11T14:00:00Z', to: '2026-03-18T14:00:00Z' };
  const quarter = { from: week.from, to: '2026-06-09T14:00:00Z' };
  const withTwo = { purpose: 'passengers', personsOnBoard: 3, durationMinutes: 120 };

  const asText = (
    response: NodeJS.ReadableStream,
    done: (error: Error | null, body: string) => void,
  ): void => {
    const parts: Buffer[] = [];
    response.on('data', (part: Buffer) => parts.push(part));
    response.on('end', () => done(null, Buffer.concat(parts).toString('utf8')));
    response.on('error', (error: Error) => done(error, ''));
  };
  const linesOf = (text: string): Line[] => {
    expect(text.endsWith('\n')).toBe(true);
    return text
      .slice(0, -1)
      .split('\n')
      .map((line) => JSON.parse(line) as Line);
  };
  const stream = async (who: Session, body: object): Promise<{ header: Line; pairs: Pair[]; end: Line }> => {
    const answer = await who
      .post('/decisions/timeline/club', body)
      .buffer(true)
      .parse(asText as never)
      .expect(200);
    expect(answer.headers['content-type']).toBe('application/x-ndjson');
    expect(answer.headers['cache-control']).toBe('no-store');
    const lines = linesOf(answer.body as string);
    return { header: lines[0]!, pairs: lines.slice(1, -1) as unknown as Pair[], end: lines.at(-1)! };
  };
  /** Sends the question and gives the answer as it comes in. */
  const open = (who: Session, body: object): Promise<IncomingMessage> =>
    new Promise((done, failed) => {
      const { port } = api.app.getHttpServer().address() as AddressInfo;
      const outgoing = httpRequest(
        {
          ...{ host: '127.0.0.1', port, method: 'POST', path: '/api/v1/decisions/timeline/club' },
          headers: { 'Content-Type': 'application/json', Authorization: `Bearer ${who.token}` },
        },
        done,
      );
      outgoing.on('error', failed);
      outgoing.end(JSON.stringify(body));
    });
  /** Watches the walk over the pairs: how many were asked for. */
  const watched = (spoil?: (count: number) => void) => {
    const service = api.app.get(ClubTimelinesService, { strict: false });
    const walk = service.pairs.bind(service);
    const seen = { pairs: 0, ended: false };
    const spy = jest.spyOn(service, 'pairs').mockImplementation(function* (question) {
      try {
        for (const pair of walk(question)) {
          if (pair) seen.pairs += 1;
          if (pair) spoil?.(seen.pairs);
          yield pair;
        }
      } finally {
        seen.ended = true;
      }
    });
    return { seen, restore: () => spy.mockRestore() };
  };
  const until = async (holds: () => boolean): Promise<void> => {
    for (let tries = 0; !holds() && tries < 500; tries += 1) await pause(10);
    expect(holds()).toBe(true);
  };

  test('each line is the pair’s own timeline, on its own route', async () => {
    const far = newId();
    await insertInto(api.sql, ready.club.clubId)('airfields', {
      ...{ id: far, code: 'XQFE', name: 'Far East', latitude_deg: 40, longitude_deg: -60, elevation_ft: 100 },
      zone: 'America/Halifax',
    });
    const second = await ready.addAircraft('NX000B');
    await api.sql('UPDATE aircraft SET home_airfield_id = $2 WHERE id = $1', [second, far]);
    const third = await ready.addAircraft('NX103B');
    const pilot = await ready.club.signInAs('member', { name: 'Ada Ahead' });
    await ready.makePilot(pilot.memberId);
    await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [pilot.memberId, '2021-03-14']);
    await pilot
      .post('/bookings', {
        ...{ aircraftId: third, departs: '2026-03-12T15:00:00Z', arrives: '2026-03-12T18:00:00Z' },
        ...{ purpose: 'solo', personsOnBoard: 1 },
      })
      .set('Idempotency-Key', newId())
      .expect(201);

    const { header, pairs, end } = await stream(officer, { ...withTwo, ...week, join: 'detail' });
    expect(header).toMatchObject({
      ...{ schema: 'bellcrank.club-timeline/1', ...week, durationMinutes: 120, join: 'detail' },
      ...{ knownAt: '2026-03-10T15:00:00Z', zone: 'America/Chicago' },
      caution: expect.stringContaining('pilot in command decides'),
    });
    const members = header['members'] as { id: string; name: string }[];
    const aircraft = header['aircraft'] as { id: string; registration: string }[];
    expect(members.map(({ name }) => name)).toEqual([
      'Ada Ahead',
      'Ingrid Signer',
      'Olga Officer',
      'Robin Member',
    ]);
    expect(aircraft.map(({ registration }) => registration)).toEqual(['NX000B', 'NX101B', 'NX103B']);
    expect(end).toEqual({ end: true, pairs: 12 });
    expect(header['pairs']).toBe(12);
    expect(new Set(pairs.map(({ memberId, aircraftId }) => `${memberId} ${aircraftId}`)).size).toBe(12);
    // Member by member, in the order of the header.
    expect(pairs.map(({ memberId }) => memberId)).toEqual(members.flatMap(({ id }) => [id, id, id]));

    const titles = new Map(
      (header['rules'] as { rule: string; title: string }[]).map(({ rule, title }) => [rule, title]),
    );
    let steps = 0;
    for (const { id } of members) {
      const { body } = await officer
        .post('/decisions/timeline', { ...withTwo, ...week, memberId: id })
        .expect(200);
      for (const own of body.aircraft) {
        const line = pairs.find((one) => one.memberId === id && one.aircraftId === own.aircraft.id)!;
        const named = (rule: string) => ({ rule, title: titles.get(rule) });
        expect(
          line.steps.map(({ inTheWay, changed, ...step }) => ({
            ...{ ...step, inTheWay: inTheWay.map(named) },
            changed: changed.map((one) => ({ withInstructor: false, ...one, ...named(one.rule) })),
          })),
        ).toEqual(own.steps);
        steps += line.steps.length;
      }
    }
    expect(steps).toBeGreaterThan(100);

    const joined = await stream(officer, { ...withTwo, ...week });
    expect(joined.header['join']).toBe('answer');
    for (const { steps: runs } of joined.pairs)
      for (const [index, run] of runs.entries()) expect(run.answer).not.toBe(runs[index - 1]?.answer);
  }, 60_000);

  test('is narrowed to members and aircraft; members who have left are out unless named', async () => {
    const left = await ready.club.createMember('member', { name: 'Len Left' });
    await api.sql("UPDATE members SET membership_through = '2026-02-28' WHERE id = $1", [left.memberId]);
    const comes = await ready.club.createMember('member', {
      name: 'Cora Comes',
      membershipFrom: '2026-06-01',
    });
    const { header } = await stream(officer, { ...withTwo, ...week, aircraftIds: [ready.aircraftId] });
    const names = (header['members'] as { name: string }[]).map(({ name }) => name);
    expect(names).not.toContain('Len Left');
    expect(names).not.toContain('Cora Comes');
    const ids = [left.memberId, comes.memberId.toUpperCase()];
    const named = await stream(officer, {
      ...withTwo,
      ...quarter,
      memberIds: ids,
      aircraftIds: [ready.aircraftId],
    });
    expect(named.pairs.map(({ memberId }) => memberId)).toEqual([comes.memberId, left.memberId]);
    for (const { steps } of named.pairs) expect(steps[0]!.answer).toBe('no');
    expect(named.end).toEqual({ end: true, pairs: 2 });
  });

  test('a club without aircraft answers with a header and an end', async () => {
    const club = await api.createClub();
    const chief = await club.signInAs('administrator');
    const { header, pairs, end } = await stream(chief, { ...withTwo, ...week });
    expect(header).toMatchObject({ aircraft: [], pairs: 0 });
    expect(pairs).toEqual([]);
    expect(end).toEqual({ end: true, pairs: 0 });
  });

  test('as many statements for twelve members as for two, for ninety days as for seven', async () => {
    const there = await readyClub(api);
    const chief = await there.club.signInAs('administrator');
    const everybody = [there.member.memberId, chief.memberId];
    for (let count = 0; count < 10; count += 1) {
      const { memberId } = await there.club.createMember();
      await there.makePilot(memberId);
      everybody.push(memberId);
    }
    const count = async (members: number, span: object): Promise<number> => {
      const statements = api.countQueries();
      const body = { ...withTwo, ...span, memberIds: everybody.slice(0, members) };
      const { end } = await stream(chief, body);
      expect(end['pairs']).toBe(members);
      return statements.stop();
    };
    await count(2, week);
    const few = await count(2, week);
    expect(few).toBeGreaterThan(4);
    expect(await count(12, week)).toBe(few);
    expect(await count(2, quarter)).toBe(few);
    expect(await count(12, quarter)).toBe(few);
    const stored = await api.sql('SELECT 1 FROM decisions WHERE club_id = $1', [there.club.clubId]);
    expect(stored).toEqual([]);
  }, 60_000);

  test('is for safety officers and administrators; other clubs have nothing here', async () => {
    for (const role of ['member', 'instructor', 'maintenance-coordinator'] as const)
      await (
        await ready.club.signInAs(role)
      )
        .post('/decisions/timeline/club', { ...withTwo, ...week })
        .expect(403);
    await api.http
      .post('/api/v1/decisions/timeline/club')
      .send({ ...withTwo, ...week })
      .expect(401);
    const elsewhere = await readyClub(api);
    for (const [field, id] of [
      ['memberIds', elsewhere.member.memberId],
      ['aircraftIds', elsewhere.aircraftId],
      ['memberIds', newId()],
    ] as const) {
      const { body, headers } = await officer
        .post('/decisions/timeline/club', { ...withTwo, ...week, [field]: [id] })
        .expect(404);
      expect(headers['content-type']).toContain('application/problem+json');
      expect(body.errors[0].field).toBe(field);
    }
    // Refused questions do not keep the club's place.
    await stream(officer, { ...withTwo, ...week, memberIds: [officer.memberId] });
  });

  test.each([
    ['weather', { weather: { windKt: 10 } }, 422, 'weather'],
    ['somebody named', { instructorId: newId() }, 400, 'instructorId'],
    ['a span too long', { to: '2027-03-13T14:00:00Z' }, 422, 'to'],
    ['nobody', { memberIds: [] }, 400, 'memberIds'],
    ['an unknown landing', { landings: ['XQ00'] }, 422, 'landings[0]'],
  ])('refuses %s before the first line', async (_what, more, status, field) => {
    const { body } = await officer
      .post('/decisions/timeline/club', { ...withTwo, ...week, ...more })
      .expect(status);
    expect(body.errors[0].field).toBe(field);
  });

  test('says how to ask for less when it is too much at once', async () => {
    const large = await readyClub(api);
    await api.sql(
      `INSERT INTO members (club_id, id, name, email, standing_since, membership_from)
       SELECT $1, gen_random_uuid(), 'Member ' || n, n || '@larkfield.example', '2020-01-01', '2020-01-01' FROM generate_series(1, 1365) n`,
      [large.club.clubId],
    );
    await large.addAircraft('NX102B');
    const chief = await large.club.signInAs('administrator');
    const year = { from: week.from, to: '2027-03-12T14:00:00Z' };
    const { body } = await chief.post('/decisions/timeline/club', { ...withTwo, ...year }).expect(422);
    // 1365 and the member, the signer and the chief, on two aircraft over 366 days.
    expect(1368 * 2 * 366).toBeGreaterThan(MOST_PAIR_DAYS);
    expect(body).toMatchObject({ code: 'span-too-large', errors: [{ field: 'to' }] });
    expect(body.detail).toContain('1368 members on 2 aircraft over 366 days are 1001376 pair-days');
    expect(body.detail).toContain('Ask for 365 days or fewer');
    await api.sql(
      `INSERT INTO members (club_id, id, name, email, standing_since, membership_from)
       SELECT $1, gen_random_uuid(), 'More ' || n, 'm' || n || '@larkfield.example', '2020-01-01', '2020-01-01' FROM generate_series(1, 700) n`,
      [large.club.clubId],
    );
    const { body: many } = await chief.post('/decisions/timeline/club', { ...withTwo, ...week }).expect(422);
    expect(many.errors[0].field).toBe('memberIds');
  });

  test('work ends when the client goes away, and the club may ask again', async () => {
    const { seen, restore } = watched();
    try {
      const { members } = await manyPairs();
      const year = {
        ...withTwo,
        from: week.from,
        to: '2027-03-12T14:00:00Z',
        join: 'detail',
        memberIds: members,
      };
      const incoming = await open(officer, year);
      await new Promise((came) => incoming.once('data', came));
      // Meanwhile the club has its one place taken, and the rest of the service goes on.
      const { body: second, headers } = await officer
        .post('/decisions/timeline/club', { ...withTwo, ...week })
        .expect(429);
      expect(second.code).toBe('timeline-running');
      expect(headers['retry-after']).toBe('10');
      await api.http.get('/health/live').expect(200);
      incoming.destroy();
      await until(() => seen.ended);
      expect(seen.pairs).toBeLessThan(members.length * 3);
      await pause(20);
    } finally {
      restore();
    }
    const { end } = await stream(officer, { ...withTwo, ...week, memberIds: [officer.memberId] });
    expect(end['end']).toBe(true);
  }, 60_000);

  test('is written no faster than it is read', async () => {
    const { members } = await manyPairs();
    const { seen, restore } = watched();
    try {
      const year = {
        ...withTwo,
        from: week.from,
        to: '2027-03-12T14:00:00Z',
        join: 'detail',
        memberIds: members,
      };
      const incoming = await open(officer, year);
      incoming.pause();
      // Until the network's buffers are full; then the walk stands still.
      let before = -1;
      await until(() => seen.pairs > 0);
      while (seen.pairs !== before) {
        before = seen.pairs;
        await pause(700);
      }
      expect(seen.pairs).toBeLessThan(members.length * 3);
      expect(seen.ended).toBe(false);
      const text = new Promise<string>((done, failed) =>
        asText(incoming, (error, body) => (error ? failed(error) : done(body))),
      );
      incoming.resume();
      const lines = linesOf(await text);
      expect(lines).toHaveLength(members.length * 3 + 2);
      expect(lines.at(-1)).toEqual({ end: true, pairs: members.length * 3 });
    } finally {
      restore();
    }
  }, 120_000);

  test('an error on the way becomes the last line', async () => {
    const { restore } = watched((count) => {
      if (count === 3) throw new Error('a rule fell over at src/secret.ts:1');
    });
    try {
      const { pairs, end } = await stream(officer, { ...withTwo, ...week, join: 'detail' });
      expect(pairs).toHaveLength(2);
      expect(end).toEqual({
        error: expect.objectContaining({
          ...{ type: '/problems/unexpected', status: 500, code: 'unexpected' },
          ...{ instance: '/api/v1/decisions/timeline/club', requestId: expect.stringMatching(/\S/) },
        }),
      });
      expect(JSON.stringify(end)).not.toContain('secret');
    } finally {
      restore();
    }
    await stream(officer, { ...withTwo, ...week, memberIds: [officer.memberId] });
  });

  test('the description tells the lines', async () => {
    const { body } = await api.http.get('/api/v1/openapi.json').expect(200);
    const { responses, description } = body.paths['/api/v1/decisions/timeline/club'].post;
    expect(Object.keys(responses['200'].content)).toEqual(['application/x-ndjson']);
    expect(responses['200'].content['application/x-ndjson'].schema.oneOf).toHaveLength(4);
    expect(description).toContain('Nothing is stored');
    for (const { $ref } of responses['200'].content['application/x-ndjson'].schema.oneOf)
      expect(body.components.schemas[$ref.split('/').at(-1)]).toBeDefined();
  });

  /** Some members more, for lines by the megabyte. */
  let many: string[] | null = null;
  const manyPairs = async (): Promise<{ members: string[] }> => {
    if (many === null) {
      many = [];
      for (let count = 0; count < 40; count += 1) {
        const { memberId } = await ready.club.createMember('member', { name: `Many ${count}` });
        await ready.makePilot(memberId);
        many.push(memberId);
      }
    }
    return { members: many };
  };
});

describe('a stream of lines', () => {
  const fake = (): { response: Response; pipe: PassThrough } => {
    const pipe = new PassThrough({ highWaterMark: 64 });
    Object.assign(pipe, { status: () => pipe, setHeader: () => pipe, flushHeaders: () => undefined });
    return { response: pipe as unknown as Response, pipe };
  };
  const long = { text: 'x'.repeat(200) };

  test('waits for its reader', async () => {
    const { response, pipe } = fake();
    const lines = new LineStream(response);
    let written = false;
    const writing = lines.write(long).then((open) => {
      written = true;
      return open;
    });
    await pause(30);
    expect(written).toBe(false);
    pipe.resume();
    expect(await writing).toBe(true);
    expect(pipe.listenerCount('drain')).toBe(0);
  });

  test('ends when the reader goes, and when it never reads', async () => {
    const gone = fake();
    const lines = new LineStream(gone.response);
    const writing = lines.write(long);
    gone.pipe.destroy();
    expect(await writing).toBe(false);
    expect(lines.gone).toBe(true);
    expect(await lines.write(long)).toBe(false);
    lines.end();

    const asleep = fake();
    const began = Date.now();
    expect(await new LineStream(asleep.response, 50).write(long)).toBe(false);
    expect(Date.now() - began).toBeLessThan(5000);
    expect(asleep.pipe.destroyed).toBe(true);
    expect(new LineStream(asleep.response).gone).toBe(true);
  });
});
