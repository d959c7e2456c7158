/** Ten thousand flights booked, one fact changes: the flights that read it are judged again, against judging all of them. */
import { performance } from 'node:perf_hooks';
import pg from 'pg';
import { TenantDb } from '../../../dist/src/platform/database/tenant.js';
import { Clock } from '../../../dist/src/platform/clock.js';
import { newId } from '../../../dist/src/platform/ids.js';
import { rejudgeClub } from '../../../dist/src/standing/rejudge.js';
import { addDays } from '../../../dist/src/rules/index.js';
import { benchClub } from '../bookings/bench-club.mjs';
import { startBenchService } from '../http/service.mjs';
import { heading, notes, table } from '../support/print.mjs';
import { post } from '../support/post.mjs';

const AIRCRAFT = 100;
const PILOTS = 500;
const DAYS = 100;
/** Facts that change: of one person, of one aircraft, and a number of the club's that every flight is judged by. */
const EVENTS = [
  {
    name: 'a medical of one pilot is recorded',
    sql: 'UPDATE medicals SET exam_on = exam_on - 1 WHERE club_id = $1 AND member_id = $2',
    of: ({ clubId, people }) => [clubId, people[0].memberId],
  },
  {
    name: 'a squawk of one aircraft grounds it',
    sql: `INSERT INTO squawks (club_id, id, aircraft_id, title, state, reported_at, reported_by)
          VALUES ($1, $2, $3, 'Fuel leak', 'grounding', now(), $4)`,
    of: ({ clubId, people, aircraftIds }) => [clubId, newId(), aircraftIds[0], people[0].memberId],
  },
  {
    name: 'a meter of one aircraft is read',
    sql: `INSERT INTO meter_readings (club_id, id, aircraft_id, kind, shown_tenths, read_at, source)
          VALUES ($1, $2, $3, 'tachometer', 10510, now(), 'coordinator')`,
    of: ({ clubId, aircraftIds }) => [clubId, newId(), aircraftIds[1]],
  },
];

/** In a service of its own, whose worker rests: here the judging is measured, not when it begins. */
export async function standingRows() {
  const service = await startBenchService(() => undefined, { BELLCRANK_BACKGROUND_WORK: 'off' });
  try {
    await rowsOf(service);
  } finally {
    await service.stop();
  }
}

async function rowsOf(service) {
  const { ownerUrl } = service.database;
  const club = await benchClub(ownerUrl, PILOTS, { slug: 'standing-club', aircraft: AIRCRAFT });
  const decisionId = await oneDecision(service, club);
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    await owner.query("SELECT set_config('bellcrank.club_id', $1, false)", [club.clubId]);
    await book(owner, club, decisionId);
    const db = service.app.get(TenantDb, { strict: false });
    const now = new Clock().now();
    const judge = async () => {
      const began = performance.now();
      const done = await rejudgeClub(db, club.clubId, () => now);
      return { ...done, ms: performance.now() - began };
    };
    const all = await judge();
    if (all.judged !== AIRCRAFT * DAYS) throw new Error(`${all.judged} flights were judged at first`);
    const rows = [];
    for (const { name, sql, of } of EVENTS) {
      await owner.query(sql, of(club));
      rows.push({ name, ...(await judge()) });
    }
    await owner.query("UPDATE standing_clubs SET law = repeat('0', 64) WHERE club_id = $1", [club.clubId]);
    const anew = await judge();
    heading(`9. ${anew.judged} flights booked, ${AIRCRAFT} aircraft, ${PILOTS} pilots; one fact changes`);
    table([
      ['', 'judged again', 'answered otherwise', 's', 'work', 'time'],
      ...[...rows, { name: 'peer: all of them judged', ...anew }].map(({ name, judged, changed, ms }) => [
        name,
        String(judged),
        String(changed),
        (ms / 1000).toFixed(2),
        judged === anew.judged ? 'base' : `1/${Math.round(anew.judged / judged)}`,
        judged === anew.judged ? 'base' : `1/${Math.round(anew.ms / ms)}`,
      ]),
    ]);
    notes(
      'Each in the way the worker does it: facts taken up, flights found by what they read, gathered, judged, answers stored, in one transaction of the club.',
      'A number of the club that every rule reads still has every flight judged again: that is what the last row measures.',
    );
  } finally {
    await owner.end();
  }
}

async function oneDecision(service, { people, aircraftIds, today }) {
  const day = addDays(today, 2);
  const response = await post(`${service.url}/api/v1/decisions`, {
    token: service.tokenFor({ ...people[0], roles: ['member'] }),
    body: {
      ...{ departs: `${day}T16:00:00Z`, arrives: `${day}T18:00:00Z`, purpose: 'solo', personsOnBoard: 1 },
      aircraftIds: [aircraftIds[0]],
    },
  });
  if (response.status !== 200) throw new Error(`asking answers ${response.status}: ${response.text}`);
  return JSON.parse(response.text).decisions[0].id;
}

/** Each aircraft flies once a day, each pilot every fifth; straight into the tables, as the service would have written them. */
async function book(owner, { clubId, aircraftIds, people, today }, decisionId) {
  const each = PILOTS / AIRCRAFT;
  const rows = Array.from({ length: AIRCRAFT * DAYS }, (_, index) => {
    const [plane, day] = [index % AIRCRAFT, Math.floor(index / AIRCRAFT)];
    const on = addDays(today, day + 1);
    const flight = {
      departs: `${on}T16:00:00Z`,
      arrives: `${on}T18:00:00Z`,
      purpose: 'solo',
      personsOnBoard: 1,
    };
    const member = people[plane * each + (day % each)].memberId;
    return { id: newId(), aircraft: aircraftIds[plane], member, request: flight };
  });
  await owner.query('BEGIN');
  await owner.query(
    `INSERT INTO bookings (club_id, id, kind, aircraft_id, member_id, during, expected_tenths, request, decision_id)
     SELECT $1, r.id, 'flight', r.aircraft, r.member, tstzrange((r.request ->> 'departs')::timestamptz,
       (r.request ->> 'arrives')::timestamptz, '[)'), 20, r.request, $3
     FROM jsonb_to_recordset($2::jsonb) AS r (id uuid, aircraft uuid, member uuid, request jsonb)`,
    [clubId, JSON.stringify(rows), decisionId],
  );
  await owner.query(
    `INSERT INTO booking_people (club_id, booking_id, member_id, role, during, occupies)
     SELECT club_id, id, member_id, 'pilot', during, occupies FROM bookings WHERE club_id = $1`,
    [clubId],
  );
  await owner.query('COMMIT');
  await owner.query('ANALYZE bookings; ANALYZE booking_people; ANALYZE log_entries;');
}
