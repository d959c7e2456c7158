/** Who is to be told of aircraft that are not back. Timed by club policy; no replacement for flight following. */
import type { EntityManager } from 'typeorm';
import { clubToday } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { instant } from '../../decisions/gather/sql.js';
import { plusSeconds, startingPolicy } from '../../rules/index.js';
import { tellOverdue, type OverdueStage } from './tell-overdue.js';

const CREW = 'club.overdue.crew-minutes';
const OFFICERS = 'club.overdue.officers-minutes';
/** Policy and names may change meanwhile: an aircraft that is overdue is looked at again after so long at the latest. */
const AGAIN_SECONDS = 600;

interface Out {
  bookingId: string;
  dispatchId: string;
  dueBackAt: string;
}

interface ToTell {
  memberId: string;
  stage: OverdueStage;
  afterMinutes: number;
}

/** Tells everybody of the club whose time has come. @returns how many were told */
export async function lookForOverdue(em: EntityManager, clubId: string, now: string): Promise<number> {
  const out: Out[] = await em.query(
    `SELECT o.booking_id AS "bookingId", ${instant('o.due_back_at')} AS "dueBackAt",
        (SELECT d.id FROM dispatches d WHERE d.club_id = o.club_id AND d.booking_id = o.booking_id
          ORDER BY d.number DESC LIMIT 1) AS "dispatchId"
       FROM aircraft_out o WHERE o.club_id = bellcrank_club() AND o.look_at <= $1::timestamptz
      ORDER BY o.booking_id FOR UPDATE OF o`,
    [now],
  );
  if (out.length === 0) return 0;
  const minutes = await minutesOf(em, clubId, now);
  let told = 0;
  for (const one of out) {
    const people = await peopleToTell(em, one.bookingId, minutes);
    const dueAt = ({ afterMinutes }: ToTell): string => plusSeconds(one.dueBackAt, afterMinutes * 60);
    for (const { memberId, stage } of people.filter((person) => dueAt(person) <= now)) {
      if (await tellOverdue(em, { ...one, memberId, stage, toldAt: now })) told += 1;
    }
    const [next = plusSeconds(now, AGAIN_SECONDS)] = people
      .map(dueAt)
      .filter((at) => at > now)
      .sort();
    const again = plusSeconds(now, AGAIN_SECONDS);
    await em.query(
      'UPDATE aircraft_out SET look_at = $2 WHERE club_id = bellcrank_club() AND booking_id = $1',
      [one.bookingId, next < again ? next : again],
    );
  }
  return told;
}

/** The earliest stage at which somebody is to be told, each person once. */
async function peopleToTell(
  em: EntityManager,
  bookingId: string,
  { crew, officers }: { crew: number; officers: number },
): Promise<ToTell[]> {
  return em.query(
    `SELECT DISTINCT ON (t."memberId") t.* FROM (
       SELECT p.member_id AS "memberId", 'crew' AS stage, $2::int AS "afterMinutes" FROM booking_people p
        WHERE p.club_id = bellcrank_club() AND p.booking_id = $1
       UNION ALL
       SELECT c.member_id, 'named', c.after_minutes FROM overdue_contacts c WHERE c.club_id = bellcrank_club()
       UNION ALL
       SELECT r.member_id, 'officers', $3::int FROM member_roles r
        WHERE r.club_id = bellcrank_club() AND r.role = 'safety-officer') t
      ORDER BY t."memberId", t."afterMinutes", t.stage`,
    [bookingId, crew, officers],
  );
}

/** By policy; a club that set none is told as a new club would be, rather than not at all. */
async function minutesOf(
  em: EntityManager,
  clubId: string,
  now: string,
): Promise<{ crew: number; officers: number }> {
  const on = await clubToday(em, clubId, now);
  const number = async (parameterId: string): Promise<number> =>
    (await policyNumber(em, { clubId, parameterId, on })) ?? (starting(parameterId) as number);
  return { crew: await number(CREW), officers: await number(OFFICERS) };
}

const starting = (parameterId: string) => startingPolicy().values.find(({ id }) => id === parameterId)!.value;
