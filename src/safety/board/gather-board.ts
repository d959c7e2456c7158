import type { EntityManager } from 'typeorm';
import { standingAnswers, type StandingAnswer } from '../../bookings/standing-answers.js';
import { flightFacts } from '../../decisions/flight-facts.js';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { gatherPeople } from '../../decisions/gather/people.js';
import { whatCounts } from '../../decisions/gather/what-counts.js';
import { whom } from '../../decisions/timeline/club/whom.js';
import { MOST_MEMBERS } from '../../decisions/timeline/club/gather-pairs.js';
import { ProblemException } from '../../platform/problems/index.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import {
  addDays,
  localDateOf,
  rulesetFor,
  toSeconds,
  type FactSheet,
  type LocalDate,
  type PersonFacts,
} from '../../rules/index.js';
import { boardFlight, departuresOf, type BoardFlight } from './board-flights.js';
import type { Followed } from './follow.js';

const USUAL_DAYS = 90;
const MOST_DAYS = 366;

export interface BoardQuestion {
  flight: BoardFlight;
  through: LocalDate | undefined;
  aircraftId: string | undefined;
  knownAt: string;
}

export interface BoardFacts extends Followed {
  members: PersonFacts[];
  /** Registration by aircraft id, of all aircraft. */
  registrations: Map<string, string>;
  /** Every flight still booked, as the rules answer it today. */
  bookings: StandingAnswer[];
  first: LocalDate;
  last: LocalDate;
}

/**
 * Everything the board needs, in a number of statements that grows with nothing.
 *
 * @throws ProblemException 404 for an aircraft the club does not have; 422 for days that are none or too many members.
 */
export async function gatherBoard(em: EntityManager, asked: BoardQuestion): Promise<BoardFacts> {
  const { knownAt, flight, aircraftId } = asked;
  const club = await gatherClub(em, knownAt);
  const { zone, jurisdiction, policy } = club;
  const now = toSeconds(knownAt);
  const first = localDateOf(now, zone);
  const last = asked.through ?? addDays(first, USUAL_DAYS);
  if (last <= first) throw valueRefused('through', `It is ${first} at the club; give a later day.`);
  if (last > addDays(first, MOST_DAYS))
    throw valueRefused(
      'through',
      `At most ${MOST_DAYS} days are looked at; ask up to ${addDays(first, MOST_DAYS)}.`,
    );
  const aircraftIds = aircraftId === undefined ? null : [aircraftId];
  const found = await whom(em, { memberIds: null, aircraftIds: null, first, last });
  if (aircraftId !== undefined && !found.aircraftIds.includes(aircraftId))
    throw new ProblemException('not-found', {
      ...{ detail: `The club has no aircraft ${aircraftId}. Check the id.`, field: 'aircraftId' },
    });
  if (found.members.length > MOST_MEMBERS)
    throw new ProblemException('span-too-large', {
      detail: `${found.members.length} members are more than are looked at together (${MOST_MEMBERS}).`,
    });
  const people = await gatherPeople(em, {
    memberIds: found.members.map(({ id }) => id),
    ...whatCounts(club, knownAt),
    exceptBookingId: null,
  });
  const departures = departuresOf(flight, { first, last, zone, now });
  const request = boardFlight(flight, departures[0]!);
  const aircraft = await gatherAircraft(em, aircraftIds, knownAt, null);
  const sheets = aircraft.map(({ homeAirfieldId, facts }): FactSheet => ({
    ...{ schema: 'bellcrank.facts/1', knownAt, jurisdiction, zone, people: {}, aircraft: facts },
    // Each member in turn takes the flight.
    flight: flightFacts(request, '', club.airfields, homeAirfieldId),
  }));
  const registrations: { id: string; registration: string }[] = await em.query(
    'SELECT id, registration FROM aircraft WHERE club_id = bellcrank_club()',
  );
  return {
    ...{ sheets, departures, first, last, ruleset: rulesetFor(jurisdiction, policy) },
    members: found.members.map(({ id }) => people[id]!),
    registrations: new Map(registrations.map(({ id, registration }) => [id, registration])),
    bookings: await standingAnswers(em, { aircraftIds: aircraftIds ?? found.aircraftIds, now: knownAt }),
  };
}
