/** An instructor's page: whom they teach, and who works on a checkout they may sign. */
import type { EntityManager } from 'typeorm';
import { BEHIND, STUDENTS } from '../../members/students.js';
import type { Instant } from '../../rules/index.js';
import { markStands } from './load-progress.js';
import type { STUDENT_BECAUSE } from './progress.dto.js';

/** A student, and why. */
export interface Student {
  id: string;
  name: string;
  because: (typeof STUDENT_BECAUSE)[number][];
  nextFlightAt: Instant | null;
  /** Models of flights to come with the instructor. */
  bookedModelIds: string[];
}

/**
 * The instructor's students (members/students.ts), and members who worked on a checkout the instructor may sign as lately. Flights
 * to come first, soonest first, then by name.
 */
export function findStudents(
  em: EntityManager,
  of: { clubId: string; instructorId: string; now: Instant },
): Promise<Student[]> {
  return em.query(
    `WITH flights AS (
       SELECT DISTINCT p.member_id, lower(b.during) AS departs, a.model_id FROM bookings b
         JOIN booking_people i ON i.club_id = b.club_id AND i.booking_id = b.id AND i.member_id = $2 AND i.role = 'instructor'
         JOIN booking_people p ON p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id <> $2
         JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
        WHERE b.club_id = $1 AND b.kind = 'flight' AND b.occupies AND lower(b.during) > $3::timestamptz),
     students AS (${STUDENTS}),
     working AS (
       SELECT k.member_id FROM checkout_marks k JOIN checkout_items i ON i.club_id = k.club_id AND i.id = k.item_id
         JOIN checkout_versions v ON v.club_id = i.club_id AND v.id = i.version_id
         JOIN checkout_requirements r ON r.club_id = v.club_id AND r.id = v.requirement_id AND NOT r.retired
        WHERE k.club_id = $1 AND ${markStands('k')} AND checkout_may_sign($1, r.id, $2)
          AND k.marked_on > ($3::timestamptz - ${BEHIND})::date
          AND NOT EXISTS (SELECT 1 FROM checkouts c JOIN checkout_versions cv ON cv.club_id = c.club_id AND cv.id = c.version_id
            WHERE c.club_id = k.club_id AND c.member_id = k.member_id AND cv.requirement_id = r.id
              AND c.difference_id IS NOT DISTINCT FROM k.difference_id AND c.recorded_at >= k.recorded_at)),
     bonds AS (SELECT member_id, because FROM students UNION SELECT member_id, 'in-progress' FROM working)
     SELECT m.id, m.name,
            ARRAY(SELECT x.because FROM unnest(ARRAY['booked', 'signed', 'in-progress']) WITH ORDINALITY AS x (because, place)
              WHERE EXISTS (SELECT 1 FROM bonds o WHERE o.member_id = m.id AND o.because = x.because) ORDER BY x.place) AS because,
            to_char(n.departs AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "nextFlightAt",
            ARRAY(SELECT DISTINCT f.model_id::text FROM flights f WHERE f.member_id = m.id) AS "bookedModelIds"
       FROM members m
       LEFT JOIN LATERAL (SELECT min(f.departs) AS departs FROM flights f WHERE f.member_id = m.id) n ON true
      WHERE m.club_id = $1 AND m.id <> $2 AND m.id IN (SELECT member_id FROM bonds)
      ORDER BY n.departs NULLS LAST, lower(m.name) COLLATE "C", m.id`,
    [of.clubId, of.instructorId, of.now],
  );
}
