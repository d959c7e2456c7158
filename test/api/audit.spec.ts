/** The chain of decisions: it shows whatever somebody with all rights on the database changes in it or behind it. */
import { Logger } from '@nestjs/common';
import { entryOf, linkOf, NO_LINK } from '../../src/decisions/audit/links.js';
import { Sealer } from '../../src/decisions/audit/sealer.js';
import { sealClub } from '../../src/decisions/audit/seal.js';
import { verifyStretch, BEGINNING } from '../../src/decisions/audit/verify.js';
import type { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { sha256 } from '../../src/rules/index.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

interface Chain {
  head: { seq: number; link: string; sealedAt: string } | null;
  links: number;
  unsealed: number;
  overdue: number;
  receipt: string;
}
interface Verified {
  whole: boolean;
  complete: boolean;
  verifiedTo: number;
  broken: { seq: number; fault: string; kind: string | null; recordId: string | null } | null;
  receipt: { holds: boolean; says: string } | null;
  nextCursor: string | null;
}

describe('the chain of decisions', () => {
  let api: Api;
  let ready: ReadyClub;
  let officer: Session;
  const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

  /** Asks for a flight of its own, so that no two decisions are alike. */
  let minute = 0;
  const ask = async (): Promise<string> => {
    minute += 1;
    const arrives = `2026-03-11T20:${String(minute).padStart(2, '0')}:00Z`;
    const { body } = await ready.member.post('/decisions', { ...alone, arrives }).expect(200);
    return (body as { decisions: { id: string }[] }).decisions[0]!.id;
  };
  const chain = async (): Promise<Chain> => (await officer.get('/audit/chain').expect(200)).body;
  const seal = async (): Promise<Chain> => (await officer.post('/audit/seal').expect(200)).body;
  const verify = async (body: object = {}): Promise<Verified> =>
    (await officer.post('/audit/verify', body).expect(200)).body;

  /** Somebody with all rights: no trigger, no foreign key stands in the way. */
  const asSuperuser = async (...statements: [string, unknown[]?][]): Promise<void> => {
    await api.sql('BEGIN');
    await api.sql('SET LOCAL session_replication_role = replica');
    for (const [text, params] of statements) await api.sql(text, params);
    await api.sql('COMMIT');
  };
  const CHAIN_COLUMNS = 'club_id, seq, decision_id, override_id, entry, sealed_at, previous, link';
  const TABLES: [table: string, columns: string][] = [
    ['decisions', '*'],
    ['overrides', '*'],
    ['fact_parts', '*'],
    ['decision_chain', CHAIN_COLUMNS],
  ];

  beforeAll(async () => {
    api = await startApi();
    // The service's own sealer would go by the wall clock, in the middle of anything.
    jest.spyOn(api.app.get(Sealer, { strict: false }), 'note').mockImplementation(() => undefined);
    ready = await readyClub(api);
    officer = await ready.club.signInAs('safety-officer');
    for (let index = 0; index < 6; index += 1) await ask();
  });
  afterAll(() => api.stop());

  test('is for safety officers and administrators', async () => {
    for (const role of ['member', 'instructor', 'maintenance-coordinator'] as const) {
      const other = await ready.club.signInAs(role);
      await other.get('/audit/chain').expect(403);
      for (const path of ['/audit/seal', '/audit/verify', '/audit/replay'])
        await other.post(path).expect(403);
    }
    const administrator = await ready.club.signInAs('administrator');
    await administrator.get('/audit/chain').expect(200);
  });

  test('tells what is not sealed yet, and takes it in on demand, once', async () => {
    expect(await chain()).toEqual({ head: null, links: 0, unsealed: 6, overdue: 0, receipt: null });
    expect(await verify()).toMatchObject({ whole: true, complete: true, verifiedTo: 0 });
    const first = await seal();
    expect(first).toMatchObject({ head: { seq: 6 }, links: 6, unsealed: 0, overdue: 0 });
    expect(await seal()).toEqual(first);
    expect(await verify()).toEqual({
      ...{ whole: true, complete: true, verifiedTo: 6, broken: null, receipt: null },
      ...{ sealedLate: 0, firstSealedLate: null, nextCursor: null },
    });
  });

  test('goes on with what is decided later', async () => {
    const { receipt } = await chain();
    const id = await ask();
    expect(await chain()).toMatchObject({ links: 6, unsealed: 1 });
    expect(await seal()).toMatchObject({ head: { seq: 7 } });
    const [last] = await api.sql('SELECT decision_id, previous FROM decision_chain WHERE seq = 7');
    expect(last).toEqual({ decision_id: id, previous: receipt.split(' ')[3] });
    expect(await verify({ receipt })).toMatchObject({ whole: true, receipt: { holds: true } });
  });

  test('is made as its description says, from the stored rows alone', async () => {
    const rows = await api.sql<{
      seq: string;
      entry: string;
      previous: string;
      link: string;
      at: string;
      body: string;
    }>(
      `SELECT c.seq, c.entry, c.previous, c.link, to_char(c.sealed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS at, d.body
         FROM decision_chain c JOIN decisions d ON d.id = c.decision_id WHERE c.club_id = $1 ORDER BY c.seq`,
      [ready.club.clubId],
    );
    let previous = NO_LINK;
    for (const row of rows) {
      const made = {
        club: ready.club.clubId,
        seq: Number(row.seq),
        sealedAt: row.at,
        previous,
        entry: row.entry,
      };
      expect([row.previous, row.link]).toEqual([previous, linkOf(made)]);
      previous = row.link;
    }
    // One entry by hand, from the row as SQL shows it.
    const [record] = await api.sql<Record<string, never>>(
      `SELECT to_jsonb(d) AS d, to_char(recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') AS "recordedAt",
         to_char(horizon_until AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') AS "horizonUntil"
         FROM decisions d WHERE id = (SELECT decision_id FROM decision_chain WHERE seq = 1 AND club_id = $1)`,
      [ready.club.clubId],
    );
    const { d, recordedAt, horizonUntil } = record as unknown as {
      d: Record<string, string>;
      recordedAt: string;
      horizonUntil: string;
    };
    expect(rows[0]!.entry).toBe(
      entryOf({
        ...{ kind: 'decision', id: d.id, member: d.member_id, aircraft: d.aircraft_id, askedBy: d.asked_by },
        ...{ knownAt: '2026-03-10T15:00:00.000000Z', asOf: '2026-03-11T18:00:00.000000Z', answer: d.answer },
        ...{
          horizonUntil,
          recordedAt,
          factKeys: d.fact_keys,
          parts: d.parts,
          rules: d.rules,
          digest: d.digest,
        },
        body: sha256(d.body!),
      }),
    );
  });

  test('takes in overrides', async () => {
    const late = await ready.club.signInAs('member', { name: 'Lee Late', membershipFrom: '2020-01-01' });
    await ready.makePilot(late.memberId);
    await api.sql(`UPDATE members SET standing = 'suspended' WHERE id = $1`, [late.memberId]);
    await officer
      .post('/bookings', {
        ...alone,
        memberId: late.memberId,
        aircraftId: ready.aircraftId,
        override: { reason: 'Paid at the desk today' },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    const { head } = await seal();
    const kinds = await api.sql(
      `SELECT count(decision_id)::int AS decisions, count(override_id)::int AS overrides FROM decision_chain WHERE club_id = $1`,
      [ready.club.clubId],
    );
    expect(kinds).toEqual([{ decisions: 8, overrides: head!.seq - 8 }]);
    expect(head!.seq).toBeGreaterThan(8);
    expect(await verify()).toMatchObject({ whole: true, verifiedTo: head!.seq });
  });

  describe('shows', () => {
    let receipt: string;
    let count: number;
    const idOf = async (seq: number): Promise<string> => {
      const [row] = await api.sql<{ id: string }>(
        'SELECT coalesce(decision_id, override_id) AS id FROM decision_chain WHERE seq = $1 AND club_id = $2',
        [seq, ready.club.clubId],
      );
      return row!.id;
    };

    beforeAll(async () => {
      const sealed = await seal();
      receipt = sealed.receipt;
      count = sealed.links;
      for (const [table, columns] of TABLES)
        await api.sql(`CREATE TABLE kept_${table} AS SELECT ${columns} FROM ${table}`);
      await api.sql('ALTER TABLE fact_parts DROP CONSTRAINT fact_parts_body_chk');
      await api.sql('ALTER TABLE decision_chain DROP CONSTRAINT decision_chain_link_chk');
    });
    afterEach(async () => {
      await asSuperuser(
        ...[...TABLES].reverse().map(([table]): [string] => [`DELETE FROM ${table}`]),
        ...TABLES.map(([table, columns]): [string] => [
          `INSERT INTO ${table} ${columns === '*' ? '' : `(${columns})`} SELECT * FROM kept_${table}`,
        ]),
      );
      expect(await verify({ receipt })).toMatchObject({ whole: true, verifiedTo: count });
    });

    test.each<[what: string, column: string]>([
      ['the bytes', `body = replace(body, '"status":"met"', '"status":"short"')`],
      ['the answer', `answer = 'no'`],
      [
        'who asked',
        `asked_by = (SELECT id FROM members WHERE club_id = d.club_id AND id <> d.asked_by LIMIT 1)`,
      ],
      ['when', `recorded_at = recorded_at + interval '1 microsecond'`],
      ['which facts', `parts = jsonb_set(parts, '{aircraft}', parts -> 'head')`],
      ['which rules', `rules = rules || '{"club.account": [9]}'`],
      ['its facts thrown away', `parts = 'null'`],
    ])('a decision changed: %s', async (_what, change) => {
      const id = await idOf(3);
      await asSuperuser([`UPDATE decisions d SET ${change} WHERE id = $1`, [id]]);
      expect(await verify()).toMatchObject({
        ...{ whole: false, complete: false, verifiedTo: 2 },
        broken: { seq: 3, fault: 'record-altered', kind: 'decision', recordId: id },
      });
    });

    test('a fact changed behind a decision, and the first decision that rests on it', async () => {
      const id = await idOf(1);
      await asSuperuser([
        `UPDATE fact_parts SET body = replace(body, 'NX101B', 'NX999B')
          WHERE digest = (SELECT parts ->> 'aircraft' FROM decisions WHERE id = $1)`,
        [id],
      ]);
      const { broken } = await verify();
      expect(broken).toMatchObject({ seq: 1, fault: 'facts-altered', recordId: id });
    });

    test('a fact taken out', async () => {
      const id = await idOf(4);
      await asSuperuser([
        `DELETE FROM fact_parts WHERE digest = (SELECT parts ->> 'policy' FROM decisions WHERE id = $1)`,
        [id],
      ]);
      expect((await verify()).broken).toMatchObject({ seq: 1, fault: 'facts-missing' });
    });

    test('a decision taken out', async () => {
      const id = await idOf(5);
      await asSuperuser(['DELETE FROM decisions WHERE id = $1', [id]]);
      expect((await verify()).broken).toMatchObject({ seq: 5, fault: 'record-missing', recordId: id });
    });

    test('a decision taken out with its link', async () => {
      const id = await idOf(5);
      await asSuperuser(
        ['DELETE FROM decisions WHERE id = $1', [id]],
        ['DELETE FROM decision_chain WHERE decision_id = $1', [id]],
      );
      expect((await verify()).broken).toMatchObject({ seq: 5, fault: 'link-missing', recordId: null });
    });

    test('two decisions swapped in their links', async () => {
      const [two, three] = [await idOf(2), await idOf(3)];
      await asSuperuser(
        ['DELETE FROM decision_chain WHERE seq IN (2, 3)'],
        [
          `INSERT INTO decision_chain (${CHAIN_COLUMNS})
           SELECT club_id, seq, CASE decision_id WHEN $1::uuid THEN $2::uuid ELSE $1::uuid END, override_id, entry, sealed_at,
             previous, link FROM kept_decision_chain WHERE seq IN (2, 3)`,
          [two, three],
        ],
      );
      expect((await verify()).broken).toMatchObject({ seq: 2, fault: 'record-altered', recordId: three });
    });

    test('two decisions swapped in their contents', async () => {
      const [two, three] = [await idOf(2), await idOf(3)];
      await asSuperuser([
        `UPDATE decisions d SET body = other.body, digest = other.digest, parts = other.parts
           FROM kept_decisions other WHERE d.id IN ($1, $2) AND other.id IN ($1, $2) AND other.id <> d.id`,
        [two, three],
      ]);
      expect((await verify()).broken).toMatchObject({ seq: 2, fault: 'record-altered', recordId: two });
    });

    test('an override reworded', async () => {
      const [override] = await api.sql<{ id: string }>('SELECT id FROM overrides ORDER BY id LIMIT 1');
      await asSuperuser([`UPDATE overrides SET reason = 'Because I say so' WHERE id = $1`, [override!.id]]);
      expect((await verify()).broken).toMatchObject({
        fault: 'record-altered',
        kind: 'override',
        recordId: override!.id,
      });
    });

    test('a link made anew alone', async () => {
      await asSuperuser([`UPDATE decision_chain SET link = repeat('a', 64) WHERE seq = 4`]);
      expect((await verify()).broken).toMatchObject({ seq: 4, fault: 'link-altered' });
      await asSuperuser(
        [
          `UPDATE decision_chain SET link = kept.link FROM kept_decision_chain kept WHERE decision_chain.seq = 4 AND kept.seq = 4`,
        ],
        [`UPDATE decision_chain SET sealed_at = sealed_at - interval '1 day' WHERE seq = 4`],
      );
      expect((await verify()).broken).toMatchObject({ seq: 4, fault: 'link-altered' });
    });

    test('its end cut off, to who kept a receipt', async () => {
      const [id, before] = [await idOf(count), await idOf(count - 1)];
      const cut = (table: string, column = 'id'): [string, unknown[]] => [
        `DELETE FROM ${table} WHERE ${column} = ANY ($1::uuid[])`,
        [[id, before]],
      ];
      await asSuperuser(
        ['DELETE FROM decision_chain WHERE seq > $1', [count - 2]],
        cut('overrides'),
        cut('decisions'),
      );
      expect(await verify()).toMatchObject({ whole: true, complete: true, verifiedTo: count - 2 });
      const held = await verify({ receipt });
      expect(held).toMatchObject({ whole: false, broken: null, receipt: { holds: false } });
      expect(held.receipt!.says).toContain('cut off');
    });

    test('its end cut off and sealed again, to who kept a receipt; and to everybody, that records lay unsealed', async () => {
      await asSuperuser(['DELETE FROM decision_chain WHERE seq > $1', [count - 2]]);
      expect(await chain()).toMatchObject({ links: count - 2, unsealed: 2 });
      // Links carry the second of their sealing: let it pass.
      await new Promise((done) => setTimeout(done, 1100));
      await seal();
      expect(await verify({ receipt })).toMatchObject({
        whole: false,
        broken: null,
        receipt: { holds: false },
      });
    });

    test('the whole chain written anew over a changed decision, to who kept a receipt', async () => {
      const id = await idOf(3);
      await asSuperuser(
        [`UPDATE decisions SET answer = 'no' WHERE id = $1`, [id]],
        ['DELETE FROM decision_chain'],
      );
      await seal();
      expect(await verify()).toMatchObject({ whole: true, verifiedTo: count });
      const held = await verify({ receipt });
      expect(held).toMatchObject({ whole: false, receipt: { holds: false } });
      expect(held.receipt!.says).toContain('written anew');
    });

    test('a decision put in with a date gone by, as sealed late', async () => {
      await asSuperuser([
        `INSERT INTO decisions SELECT (jsonb_populate_record(d, jsonb_build_object('id', $2::text, 'recorded_at', d.recorded_at - interval '3 days'))).*
           FROM decisions d WHERE d.id = $1`,
        [await idOf(3), newId()],
      ]);
      expect(await chain()).toMatchObject({ unsealed: 1, overdue: 1 });
      await seal();
      expect(await verify()).toMatchObject({ whole: true, sealedLate: 1, firstSealedLate: count + 1 });
    });
  });

  test('refuses a receipt that is none, or of another club', async () => {
    const elsewhere = await readyClub(api);
    await elsewhere.member.post('/decisions', alone).expect(200);
    const chief = await elsewhere.club.signInAs('administrator');
    const { body } = await chief.post('/audit/seal').expect(200);
    for (const receipt of [body.receipt, 'a receipt', `${body.receipt}0`]) {
      const { body: problem } = await officer.post('/audit/verify', { receipt }).expect(422);
      expect(problem).toMatchObject({ code: 'receipt-refused', errors: [{ field: 'receipt' }] });
    }
    for (const cursor of ['1', `1.${'a'.repeat(64)}`, 'x.y', `99999999999999999.${'a'.repeat(64)}`])
      await officer.post('/audit/verify', { cursor }).expect(400);
    // Each club's chain begins with its own first link.
    expect(body).toMatchObject({ head: { seq: 1 }, links: 1 });
    await chief.post('/audit/verify', { receipt: body.receipt }).expect(200);
  });

  test('is verified a stretch at a time, to the same end', async () => {
    const { links } = await seal();
    const { clubId } = ready.club;
    const whole = await verifyStretch(api.database.tenantDb, clubId, BEGINNING, 1);
    expect(whole).toMatchObject({ reached: { seq: links }, end: true });
    const [middle] = await api.sql<{ link: string }>(
      'SELECT link FROM decision_chain WHERE club_id = $1 AND seq = 3',
      [clubId],
    );
    expect(await verify({ cursor: `3.${middle!.link}` })).toMatchObject({ whole: true, verifiedTo: links });
  });

  test('is sealed by one at a time, whoever comes at once, and questions do not wait for it', async () => {
    const { clubId } = ready.club;
    const before = (await chain()).links;
    await Promise.all([
      ...Array.from({ length: 12 }, ask),
      ...Array.from({ length: 6 }, () => sealClub(api.database.tenantDb, clubId, 'latest')),
    ]);
    await Promise.all(Array.from({ length: 4 }, () => sealClub(api.database.tenantDb, clubId, 'latest')));
    expect(await chain()).toMatchObject({ links: before + 12, unsealed: 0, head: { seq: before + 12 } });
    expect(await verify()).toMatchObject({ whole: true, complete: true, verifiedTo: before + 12 });
  });

  describe('and replays of what is in it', () => {
    const replayAll = async (body: object = {}) =>
      (await officer.post('/audit/replay', body).expect(200)).body;

    test('go through every decision once, a page at a time', async () => {
      const [{ count }] = (await api.sql('SELECT count(*)::int AS count FROM decisions WHERE club_id = $1', [
        ready.club.clubId,
      ])) as [{ count: number }];
      const pages: { checked: number; identical: number; nextCursor: string | null }[] = [];
      for (let cursor: string | null | undefined; cursor !== null;) {
        const page = await replayAll({ limit: 5, cursor });
        pages.push(page);
        cursor = page.nextCursor;
      }
      expect(pages.length).toBe(Math.ceil(count / 5));
      for (const counted of ['checked', 'identical'] as const)
        expect(pages.reduce((sum, page) => sum + page[counted], 0)).toBe(count);
      expect(await replayAll({ limit: 200 })).toEqual({
        ...{ checked: count, identical: count, different: [], damaged: [], nextCursor: null },
      });
      for (const body of [{ limit: 0 }, { limit: 201 }, { cursor: 'x' }, { club: 'mine' }])
        await officer.post('/audit/replay', body).expect(400);
    });

    test('tell what differs and why, of one decision and of all', async () => {
      const id = await ask();
      await asSuperuser([
        `UPDATE decisions SET body = replace(body, '"status":"met"', '"status":"short"') WHERE id = $1`,
        [id],
      ]);
      const { body: one } = await ready.member.get(`/decisions/${id}/replay`).expect(200);
      expect(one).toMatchObject({ identical: false, lawKept: true, changedRules: [], parts: [] });
      expect(one.differences[0]).toEqual({
        ...{
          rule: expect.any(String),
          storedVersion: expect.any(Number),
          replayedVersion: expect.any(Number),
        },
        ...{ stored: expect.stringMatching(/^short: /), replayed: expect.stringMatching(/^met: /) },
        ...{ reason: 'unexplained', why: expect.stringContaining('Verify the chain of decisions') },
      });
      const { different } = await replayAll({ limit: 200 });
      expect(different).toEqual([
        { decisionId: id, lawKept: true, differences: one.differences, parts: one.parts },
      ]);

      await asSuperuser([`UPDATE decisions SET body = 'gone' WHERE id = $1`, [id]]);
      for (const path of [`/decisions/${id}`, `/decisions/${id}/replay`]) {
        const { body } = await ready.member.get(path).expect(409);
        expect(body).toMatchObject({ code: 'decision-damaged', detail: expect.stringContaining('not JSON') });
        await (await ready.club.signInAs('member')).get(path).expect(404);
      }
      expect(await replayAll({ limit: 200 })).toMatchObject({
        ...{ different: [], damaged: [{ decisionId: id, because: 'the decision itself is not JSON' }] },
      });
      await asSuperuser(['DELETE FROM decisions WHERE id = $1', [id]]);
    });
  });

  describe('is sealed without being asked', () => {
    const fakeTimers = () =>
      jest.useFakeTimers({ doNotFake: ['nextTick', 'setImmediate', 'queueMicrotask'] });
    afterEach(() => jest.useRealTimers());
    const sealedOf = async (): Promise<number> => (await chain()).links;
    const grown = async (from: number): Promise<void> => {
      for (let tries = 0; (await sealedOf()) === from; tries += 1) {
        if (tries > 50) throw new Error('nothing was sealed');
        await new Promise((done) => setTimeout(done, 40));
      }
    };

    test.each<[string, (sealer: Sealer, clubId: string) => void | Promise<void>]>([
      ['when the club has been quiet for ten seconds', () => void jest.advanceTimersByTime(10_000)],
      [
        'after a minute, however busy the club is',
        (sealer, clubId) => {
          for (let second = 0; second < 60; second += 1) {
            sealer.note(clubId);
            jest.advanceTimersByTime(1000);
          }
        },
      ],
      ['when the service stops', (sealer) => sealer.onModuleDestroy()],
    ])('%s', async (_when, pass) => {
      const before = await sealedOf();
      await ask();
      const { clubId } = ready.club;
      const sealer = new Sealer(api.database.tenantDb);
      fakeTimers();
      sealer.note(clubId);
      jest.advanceTimersByTime(9_999);
      sealer.note(clubId);
      await pass(sealer, clubId);
      jest.useRealTimers();
      await grown(before);
      expect(await chain()).toMatchObject({ links: before + 1, unsealed: 0 });
    });

    test('a database that is away is told in the log, and the records stay unsealed', async () => {
      const before = await sealedOf();
      await ask();
      const broken = { run: () => Promise.reject(new Error('away')) } as unknown as TenantDb;
      const warned = jest.spyOn(Logger.prototype, 'warn').mockImplementation(() => undefined);
      const sealer = new Sealer(broken);
      sealer.note(ready.club.clubId);
      await sealer.onModuleDestroy();
      expect(warned).toHaveBeenCalledWith(expect.stringContaining('away'));
      warned.mockRestore();
      expect(await chain()).toMatchObject({ links: before, unsealed: 1 });
      await seal();
    });
  });
});
