import type { EntityManager } from 'typeorm';
import {
  addPlainMonths,
  localDateOf,
  startOfDay,
  toInstant,
  toSeconds,
  type FactSheet,
  type PersonFacts,
} from '../../rules/index.js';
import type { Alternative } from '../../rules/ways/index.js';
import { gatherAircraft } from '../gather/aircraft.js';
import { gatherClub } from '../gather/club.js';
import { gatherPeople } from '../gather/people.js';

/** What the search may reach for besides the facts of the decision. */
export interface WithinReach {
  alternatives: Alternative[];
  instructors: PersonFacts[];
  /** People of the flight as they would be if the papers that wait were verified. */
  verified: Record<string, PersonFacts>;
}

/** Months of log that people are read with; the furthest look-back of any pack's rules but for totals. */
const LOG_MONTHS = 61;
/** A club's other aircraft and instructors; more than these would not be told apart by a reader either. */
const MOST_INSTRUCTORS = 12;

/**
 * The club's other aircraft, its instructors, and the papers of the flight's people that wait for an officer, all as they
 * are now. Four statements, whatever the numbers.
 */
export async function gatherWithinReach(
  em: EntityManager,
  sheet: FactSheet,
  now: string,
): Promise<WithinReach> {
  const { airfields } = await gatherClub(em, now);
  const aircraft = await gatherAircraft(em, null, now, null);
  const waiting = Object.values(sheet.people)
    .filter(({ unverified }) => unverified.known && unverified.value.length > 0)
    .map(({ id }) => id);
  const instructorIds = await instructorsOf(em, sheet);
  const people = await gatherPeople(em, {
    memberIds: [...new Set([...instructorIds, ...waiting])],
    knownAt: now,
    logSince: logSince(sheet, now),
    unverifiedCounts: false,
    exceptBookingId: null,
  });
  const verified =
    waiting.length === 0
      ? {}
      : await gatherPeople(em, {
          memberIds: waiting,
          knownAt: now,
          logSince: logSince(sheet, now),
          unverifiedCounts: true,
          exceptBookingId: null,
        });
  return {
    alternatives: aircraft
      .filter(({ facts }) => facts.id !== sheet.aircraft.id)
      .map(({ homeAirfieldId, facts }) => {
        const home = airfields.find(({ id }) => id === homeAirfieldId);
        return { aircraft: facts, route: home ? routeFrom(home, sheet) : null };
      }),
    instructors: instructorIds.flatMap((id) => people[id] ?? []),
    verified,
  };
}

/** The same landings, from where the other aircraft lives; null where the flight does not begin and end at one field. */
function routeFrom(
  home: FactSheet['flight']['route'][number],
  { flight }: FactSheet,
): FactSheet['flight']['route'] | null {
  const { route } = flight;
  const [first] = route;
  if (!first || first.id === home.id || route.at(-1)!.id !== first.id) return null;
  return [home, ...route.slice(1, -1), home];
}

async function instructorsOf(em: EntityManager, { flight }: FactSheet): Promise<string[]> {
  const taken = [flight.memberId, flight.instructorId, flight.secondPilotId].filter((id) => id !== null);
  const rows: { id: string }[] = await em.query(
    `SELECT m.id FROM members m JOIN member_roles r ON r.club_id = m.club_id AND r.member_id = m.id AND r.role = 'instructor'
      WHERE m.club_id = bellcrank_club() AND m.id <> ALL ($1::uuid[]) ORDER BY m.name, m.id LIMIT $2`,
    [taken, MOST_INSTRUCTORS],
  );
  return rows.map(({ id }) => id);
}

function logSince({ zone }: FactSheet, now: string): string {
  const today = localDateOf(toSeconds(now), zone);
  return toInstant(startOfDay(addPlainMonths(today, -LOG_MONTHS, 'clamp-to-month-end'), zone));
}
