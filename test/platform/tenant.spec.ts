import { QueryFailedError } from 'typeorm';
import { databaseProblem, registerConstraint, requireUuid } from '../../src/platform/database/index.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';

const AIRFIELD = `INSERT INTO airfields (club_id, id, code, name, latitude_deg, longitude_deg, elevation_ft, zone)
                  VALUES ($1, $2, $3, 'Larkfield', 40, -90, 700, 'America/Chicago')`;

jest.setTimeout(60_000);

describe('transactions of one club', () => {
  let db: TestDatabase;
  const [alpha, bravo] = [newId(), newId()];
  beforeAll(async () => {
    db = await createTestDatabase();
    for (const [id, slug] of [
      [alpha, 'alpha'],
      [bravo, 'bravo'],
    ]) {
      await db.admin.query(
        `INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, $2, 'Etc/UTC', 'US')`,
        [id, slug],
      );
    }
  });
  afterAll(() => db?.drop());

  const codes = (clubId: string) =>
    db.tenantDb.run(clubId, async (em) =>
      (await em.query('SELECT code FROM airfields ORDER BY code')).map((r: { code: string }) => r.code),
    );
  const problemOf = async (work: Promise<unknown>) => {
    const error: unknown = await work.then(
      () => null,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(QueryFailedError);
    return databaseProblem(error);
  };

  it('see and write their own club only', async () => {
    await db.tenantDb.run(alpha, (em) => em.query(AIRFIELD, [alpha, newId(), 'XLF']));
    expect(await codes(alpha)).toEqual(['XLF']);
    expect(await codes(bravo)).toEqual([]);
    const foreign = db.tenantDb.run(bravo, (em) => em.query(AIRFIELD, [alpha, newId(), 'XQQ']));
    expect((await problemOf(foreign))?.code).toBe('not-allowed');
    const outside = await db.dataSource.query('SELECT * FROM airfields');
    expect(outside).toEqual([]);
  });

  it('leave nothing on the connection for the next one', async () => {
    await db.tenantDb.run(alpha, (em) => em.query('SELECT 1'), {
      actorId: newId(),
      readOnly: true,
      statementTimeoutMs: 777,
    });
    const settings = await db.dataSource.query(
      `SELECT current_setting('bellcrank.club_id', true) AS club, current_setting('bellcrank.actor_id', true) AS actor,
              current_setting('statement_timeout') AS timeout, current_setting('transaction_read_only') AS ro`,
    );
    expect(settings).toEqual([{ club: '', actor: '', timeout: '0', ro: 'off' }]);
  });

  it('tell the audit log who acted', async () => {
    const actorId = newId();
    const id = newId();
    await db.tenantDb.run(alpha, (em) => em.query(AIRFIELD, [alpha, id, 'XAU']), { actorId });
    const { rows } = await db.admin.query('SELECT actor_id FROM audit_log WHERE row_id = $1', [id]);
    expect(rows).toEqual([{ actor_id: actorId }]);
  });

  it('roll back when the work throws', async () => {
    const work = db.tenantDb.run(alpha, async (em) => {
      await em.query(AIRFIELD, [alpha, newId(), 'XRB']);
      throw new Error('changed my mind');
    });
    await expect(work).rejects.toThrow('changed my mind');
    expect(await codes(alpha)).not.toContain('XRB');
  });

  it('can be made unable to write', async () => {
    const work = db.tenantDb.run(alpha, (em) => em.query(AIRFIELD, [alpha, newId(), 'XRO']), {
      readOnly: true,
    });
    await expect(work).rejects.toMatchObject({ driverError: { code: '25006' } });
  });

  it('take no identifier that is not a UUID', async () => {
    const never = jest.fn();
    await expect(db.tenantDb.run(`' OR 1=1 --`, never)).rejects.toMatchObject({
      code: 'identifier-malformed',
    });
    await expect(db.tenantDb.run(alpha, never, { actorId: 'me' })).rejects.toMatchObject({
      code: 'identifier-malformed',
    });
    expect(() => requireUuid('id', undefined)).toThrow();
    expect(never).not.toHaveBeenCalled();
  });

  it('run again after a serialisation failure, a bounded number of times', async () => {
    const codesOf = (prefix: string) =>
      `SELECT count(*)::int AS n FROM airfields WHERE code LIKE '${prefix}%'`;
    let attempts = 0;
    let gate = 2;
    let open: () => void;
    const both = new Promise<void>((done) => (open = done));
    // Write skew: each counts, waits until the other has counted too, and adds one. Serialisable allows it to one of them only.
    const skew = (code: string) =>
      db.tenantDb.run(
        alpha,
        async (em) => {
          attempts += 1;
          const [{ n }] = await em.query(codesOf('XS'));
          if ((gate -= 1) === 0) open();
          if (gate >= 0) await both;
          if (n === 0) await em.query(AIRFIELD, [alpha, newId(), code]);
        },
        { isolation: 'SERIALIZABLE' },
      );
    await Promise.all([skew('XSA'), skew('XSB')]);
    expect(attempts).toBe(3);
    expect(await db.tenantDb.run(alpha, (em) => em.query(codesOf('XS')))).toEqual([{ n: 1 }]);

    let tries = 0;
    const hopeless = db.tenantDb.run(alpha, async (em) => {
      tries += 1;
      await em.query(`DO $$ BEGIN RAISE EXCEPTION 'no' USING ERRCODE = '40001'; END $$`);
    });
    expect((await problemOf(hopeless))?.code).toBe('busy');
    expect(tries).toBe(4);
  });

  it('know no club at sign-in but the one whose short name was given', async () => {
    const slugs = (slug: string | null) =>
      db.tenantDb.runWithoutClub(slug, (em) => em.query('SELECT slug FROM clubs'));
    expect(await slugs('alpha')).toEqual([{ slug: 'alpha' }]);
    expect(await slugs('charlie')).toEqual([]);
    expect(await slugs(null)).toEqual([]);
    expect(await db.tenantDb.runWithoutClub('alpha', (em) => em.query('SELECT * FROM airfields'))).toEqual(
      [],
    );
  });

  it('report refusals in words, by the constraint where it is known', async () => {
    registerConstraint({
      constraint: 'airfields_code_uq',
      code: 'airfield-code-taken',
      status: 409,
      title: 'Code taken',
      detail: 'Use the airfield that is there.',
      field: 'code',
    });
    const insert = (code: string, id = newId()) =>
      db.tenantDb.run(alpha, (em) => em.query(AIRFIELD, [alpha, id, code]));
    const taken = await problemOf(insert('XLF'));
    expect(taken).toMatchObject({
      code: 'airfield-code-taken',
      detail: 'Use the airfield that is there.',
      errors: [{ field: 'code' }],
    });
    expect(taken!.getStatus()).toBe(409);
    const id = newId();
    await insert('XID', id);
    expect(await problemOf(insert('XIE', id))).toMatchObject({ code: 'already-exists' });
    const run = (sql: string) => problemOf(db.tenantDb.run(alpha, (em) => em.query(sql, [alpha])));
    expect(await run(`UPDATE airfields SET latitude_deg = 91 WHERE club_id = $1`)).toMatchObject({
      code: expect.stringMatching(/^(value-refused|airfield-)/),
    });
    expect(await run(`UPDATE airfields SET latitude_deg = NULL WHERE club_id = $1`)).toMatchObject({
      code: 'value-refused',
      errors: [{ field: 'latitudeDeg' }],
    });
    expect(await run(`UPDATE airfields SET elevation_ft = 99999999999 WHERE club_id = $1`)).toMatchObject({
      code: 'value-refused',
    });
    expect(await run(`SELECT '2026-02-30'::date, $1::uuid`)).toMatchObject({ code: 'value-refused' });
    expect(await run(`SELECT nonsense, $1::uuid`)).toBeNull();
  });

  it('report a lost connection as out of reach', async () => {
    const work = db.tenantDb.run(alpha, async (em) => {
      const [{ pid }] = await em.query('SELECT pg_backend_pid() AS pid');
      await db.admin.query('SELECT pg_terminate_backend($1)', [pid]);
      await em.query('SELECT 1');
    });
    const error: unknown = await work.catch((thrown: unknown) => thrown);
    expect(databaseProblem(error)).toMatchObject({ code: 'database-unavailable' });
    expect(await codes(alpha)).toContain('XLF');
  });
});
