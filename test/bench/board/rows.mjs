/** The officer's board with three hundred members: what each part of it takes over HTTP. */
import { performance } from 'node:perf_hooks';
import pg from 'pg';
import { DEMO_CLUB_ID } from '../../../dist/src/demo/ids.js';
import { median } from '../support/measure.mjs';
import { heading, notes, table } from '../support/print.mjs';

const MEMBERS = 300;
const ROUNDS = 5;
/** Tables of what is about a member; ids in them are made anew for each copy. */
const TABLES = [
  ...[
    'members',
    'member_roles',
    'certificates',
    'certificate_ratings',
    'medicals',
    'reviews',
    'endorsements',
  ],
  ...['checkouts', 'log_imports', 'log_entries', 'practice_records'],
];

export async function boardRows(service) {
  const members = await copyMembers(service.database.ownerUrl);
  heading(`8. The officer's board, ${members} members, over HTTP`);
  const token = service.tokenFor(await service.prepared.officer());
  const parts = [
    ['who lapses next, 90 days', '/api/v1/safety/lapses'],
    ['practice gaps', '/api/v1/safety/practice-gaps'],
    ['refusals by rule', '/api/v1/safety/refusals'],
    ['overrides', '/api/v1/safety/overrides?limit=20'],
    ['reports', '/api/v1/safety-reports?limit=20'],
  ];
  const rows = [];
  for (const [name, path] of parts) {
    const taken = [];
    let size = 0;
    for (let round = -1; round < ROUNDS; round += 1) {
      const began = performance.now();
      const response = await fetch(`${service.url}${path}`, {
        headers: { Authorization: `Bearer ${token}` },
      });
      const text = await response.text();
      if (response.status !== 200) throw new Error(`${path} answers ${response.status}: ${text}`);
      if (round >= 0) taken.push(performance.now() - began);
      size = text.length;
    }
    rows.push([name, median(taken).toFixed(0), Math.max(...taken).toFixed(0), (size / 1024).toFixed(0)]);
  }
  table([['board, 300 members', 'ms: median', 'most', 'answer, KiB'], ...rows]);
  notes(
    `${ROUNDS} rounds one after another after one uncounted. The demo club's members copied, with papers, log and practice, until there are ${MEMBERS}.`,
  );
}

/** Copies the demo's members until there are so many. @returns how many there are */
export async function copyMembers(url) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("SELECT set_config('bellcrank.club_id', $1, false)", [DEMO_CLUB_ID]);
    const count = async () => (await client.query('SELECT count(*)::int AS n FROM members')).rows[0].n;
    const first = await count();
    const originals = (await client.query('SELECT id FROM members')).rows.map(({ id }) => id);
    // The demo's sign-offs are older than what the club has laid down since; copies of them are as old.
    await client.query('ALTER TABLE checkouts DISABLE TRIGGER checkouts_fit');
    for (let copy = 1; first * (copy + 1) <= MEMBERS; copy += 1)
      for (const name of TABLES) {
        const whose =
          name === 'certificate_ratings'
            ? 't.certificate_id IN (SELECT c.id FROM certificates c WHERE c.member_id = ANY ($1::uuid[]))'
            : `t.${name === 'members' ? 'id' : 'member_id'} = ANY ($1::uuid[])`;
        // An id is made from the one copied and the number of the copy, so that rows go on pointing at each other (RFC 9562, version 8).
        await client.query(
          `INSERT INTO ${name} SELECT (jsonb_populate_record(t, (SELECT jsonb_object_agg(k, CASE
                 WHEN v IS NULL OR v = 'null' THEN NULL
                 WHEN k = 'email' THEN to_jsonb($2::text || (v #>> '{}'))
                 WHEN k = 'name' THEN to_jsonb((v #>> '{}') || ' ' || $2::text)
                 ELSE to_jsonb(overlay(overlay(md5((v #>> '{}') || $2::text) placing '8' from 13) placing 'a' from 17)::uuid) END)
               FROM jsonb_each(to_jsonb(t)) AS e (k, v)
              WHERE k IN ('id', 'member_id', 'certificate_id', 'corrects', 'log_entry_id', 'import_id', 'email')
                 OR (k = 'name' AND $3 = 'members')))).*
             FROM ${name} t WHERE t.club_id = $4 AND ${whose}`,
          [originals, String(copy), name, DEMO_CLUB_ID],
        );
      }
    await client.query('ALTER TABLE checkouts ENABLE TRIGGER checkouts_fit');
    await client.query('ANALYZE');
    return await count();
  } finally {
    await client.end();
  }
}
