/** A member's data taken out, and erased: what goes, what is kept under another name, and what is left of the audit log. */
import { PNG } from '../fleet/pictures.js';
import { type Api, type Session, startApi } from '../support/api.js';
import { readyClub } from '../support/ready-club.js';

let api: Api;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.stop());

/** A member with papers, a document, a flight with remarks, and a name that is found nowhere else. */
async function scene() {
  const ready = await readyClub(api);
  const administrator = await ready.club.signInAs(['administrator']);
  const member = await ready.club.signInAs('member', {
    name: 'Xanthe Quill',
    email: `xanthe-${Math.abs(performance.now())}@larkfield.example`,
  });
  await ready.makePilot(member.memberId);
  const own = `/members/${member.memberId}`;
  const medical = await member
    .post(`${own}/medicals`, { class: 3, examOn: '2025-05-05', limitations: ['Xanthe lenses'] })
    .expect(201);
  await api.http
    .post(`/api/v1${own}/documents/medicals/${medical.body.id}`)
    .set('Authorization', `Bearer ${member.token}`)
    .attach('document', PNG, 'scan.png')
    .expect(201);
  await api.sql("UPDATE log_entries SET remarks = 'With Xanthe''s aunt' WHERE member_id = $1", [
    member.memberId,
  ]);
  await member
    .post(`${own}/practice`, {
      ...{ flownOn: '2026-03-01', manoeuvre: 'steep_turn', level: 'private', measured: {} },
      note: 'Xanthe was pleased',
    })
    .expect(201);
  const asked = await member.post('/decisions', {
    ...{ aircraftIds: [ready.aircraftId], departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T19:00:00Z' },
    ...{ purpose: 'private', personsOnBoard: 1 },
  });
  return { ...ready, administrator, member, own, asked };
}
const erase = (who: Session, own: string, rest = '') =>
  who.post(`${own}/erasure${rest}`, { reason: 'Asked in writing' });

it('a member takes out everything on record, and nobody else does', async () => {
  const { member, administrator } = await scene();
  const answer = await member.get('/my-record').expect(200);
  expect(answer.headers).toMatchObject({
    ...{ 'cache-control': 'no-store', 'content-disposition': 'attachment; filename="my-record.json"' },
  });
  const { body } = answer;
  expect(body.member).toMatchObject({ id: member.memberId, name: 'Xanthe Quill' });
  expect(JSON.stringify(body)).not.toContain('argon2');
  const log = await api.sql('SELECT 1 FROM log_entries WHERE member_id = $1', [member.memberId]);
  expect(log.length).toBeGreaterThan(0);
  expect(body.records.log).toHaveLength(log.length);
  expect(body.records.documents).toEqual([expect.objectContaining({ media_type: 'image/png' })]);
  expect(body.records.documents[0]).not.toHaveProperty('content');
  expect(body.records.medicals).toContainEqual(expect.objectContaining({ limitations: ['Xanthe lenses'] }));
  expect((await administrator.get('/my-record').expect(200)).body.member.id).toBe(administrator.memberId);
  const noted = await api.sql("SELECT actor_id FROM audit_log WHERE action = 'export' AND row_id = $1", [
    member.memberId,
  ]);
  expect(noted).toEqual([{ actor_id: member.memberId }]);
});

it('an erasure does what its preview told, and the member is found nowhere but where the answer says', async () => {
  const { member, own, administrator, club } = await scene();
  const preview = await erase(administrator, own, '/preview').expect(200);
  expect((await member.get('/my-record').expect(200)).body.member.name).toBe('Xanthe Quill');
  const done = await erase(administrator, own).expect(200);
  expect(done.body).toMatchObject({ ...preview.body, bareAuditEntries: expect.any(Number) });
  expect(done.body.deleted).toMatchObject({ documents: 1, account: 1, practice: 1 });
  expect(done.body.emptiedNotes).toBeGreaterThan(0);
  const tables = await api.sql<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id'
      WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace`,
  );
  const found: string[] = [];
  for (const { name } of tables) {
    const rows = await api.sql(
      `SELECT 1 FROM ${name} t WHERE club_id = $1 AND t::text ILIKE '%xanthe%' LIMIT 1`,
      [club.clubId],
    );
    if (rows.length > 0) found.push(name);
  }
  // Sealed decisions keep the facts they rested on; the answer says so.
  expect(found.filter((name) => !['decisions', 'fact_parts'].includes(name))).toEqual([]);
  expect(done.body.kept.map(({ what }: { what: string }) => what)).toContainEqual(
    expect.stringContaining('name'),
  );
  const kept = await api.sql('SELECT 1 FROM log_entries WHERE member_id = $1', [member.memberId]);
  expect(kept.length).toBe(done.body.kept[0].count);
  expect(kept.length).toBeGreaterThan(0);
  const [row] = await api.sql<{ actor_id: string; after: { reason: string } }>(
    "SELECT actor_id, after FROM audit_log WHERE action = 'erase' AND row_id = $1",
    [member.memberId],
  );
  expect(row).toMatchObject({ actor_id: administrator.memberId, after: { reason: 'Asked in writing' } });
  expect((await erase(administrator, own).expect(409)).body.code).toBe('already-erased');
});

it('is refused for oneself and by anybody but an administrator', async () => {
  const { member, own, administrator, club } = await scene();
  expect((await erase(administrator, `/members/${administrator.memberId}`).expect(409)).body.code).toBe(
    'own-erasure',
  );
  await erase(member, own).expect(403);
  await erase(await club.signInAs('safety-officer'), own).expect(403);
});

it('is refused while a flight is still to come', async () => {
  const { member, own, administrator, aircraftId } = await scene();
  await api.sql(
    `INSERT INTO bookings (club_id, id, kind, aircraft_id, member_id, during, expected_tenths, request)
     SELECT club_id, gen_random_uuid(), 'club', $1, id, '[2026-04-01T12:00:00Z,2026-04-01T14:00:00Z)', 0, '{}'
       FROM members WHERE id = $2`,
    [aircraftId, member.memberId],
  );
  expect((await erase(administrator, own, '/preview').expect(409)).body.code).toBe('bookings-to-come');
});

it('outside an erasure the audit log cannot be made to forget', async () => {
  const { member, club } = await scene();
  const forget = api.database.tenantDb.run(club.clubId, (em) =>
    em.query(
      "UPDATE audit_log SET before = audit_bare(before), after = audit_bare(after) WHERE table_name = 'medicals' AND after ->> 'member_id' = $1",
      [member.memberId],
    ),
  );
  await expect(forget).rejects.toMatchObject({ driverError: { constraint: 'audit_log_append_only' } });
});
