import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import type { BookingRow } from '../booking.entity.js';
import type { CrewMember } from './propose.js';

/**
 * As what each of the crew logs the flight (14 CFR 61.51(b), (e) and (f)): the learner dual received and the instructor as such;
 * of two pilots the holder of the booking as sole manipulator, and the other only where required crew: as pilot in command
 * where they act as such, else as second in command. A student alone logs solo.
 */
export async function crewOf(em: EntityManager, booking: BookingRow): Promise<CrewMember[]> {
  const [row]: { request: FlightRequestDto; student: boolean }[] = await em.query(
    `SELECT b.request, NOT EXISTS (SELECT 1 FROM certificates c WHERE c.club_id = b.club_id AND c.member_id = b.member_id
          AND c.level <> 'student') AS student
       FROM bookings b WHERE b.club_id = bellcrank_club() AND b.id = $1`,
    [booking.id],
  );
  const { request, student } = row!;
  const as = (part: string, role: CrewMember['role']): CrewMember[] =>
    booking.people
      .filter((person) => person.role === part)
      .map(({ memberId, name }) => ({ memberId, name, role, flies: part === 'pilot' }));
  const instructor = as('instructor', 'instructor');
  if (instructor.length > 0) return [...as('pilot', 'dual-received'), ...instructor];
  const [second] = as('second-pilot', 'second-in-command');
  if (!second) return as('pilot', student && request.personsOnBoard === 1 ? 'solo' : 'pilot-in-command');
  const pilot = as('pilot', 'pilot-in-command');
  if (!request.secondPilotRequired) return pilot;
  return [
    ...pilot,
    ...(request.actingPilotId === second.memberId ? as('second-pilot', 'pilot-in-command') : [second]),
  ];
}
