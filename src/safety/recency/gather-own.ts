import type { EntityManager } from 'typeorm';
import { flightFacts } from '../../decisions/flight-facts.js';
import { gatherAircraft, type GatheredAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub, type ClubFacts } from '../../decisions/gather/club.js';
import { gatherPeople } from '../../decisions/gather/people.js';
import { whatCounts } from '../../decisions/gather/what-counts.js';
import { notThere } from '../../platform/database/records.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import {
  addDays,
  localDateOf,
  rulesetFor,
  startOfDay,
  toInstant,
  toSeconds,
  type FactSheet,
  type LocalDate,
  type PersonFacts,
} from '../../rules/index.js';
import { boardFlight, departuresOf, type BoardFlight } from '../board/board-flights.js';
import type { Followed } from '../board/follow.js';
import { byThen } from './by-then.js';

/** Days a requirement is followed. */
const DAYS = 366;
const EARLIEST = '1970-01-01';
const MOST_DAYS_AHEAD = 3660;

export interface OwnFacts {
  person: PersonFacts;
  on: LocalDate;
  through: LocalDate;
  today: LocalDate;
  registrations: Map<string, string>;
  /** What the person is followed on, for one kind of flight. */
  followed(flight: BoardFlight): Followed;
}

/** @throws ProblemException 404 for a member the club does not have; 422 for a day too far off. */
export async function gatherOwn(
  em: EntityManager,
  asked: { memberId: string; on: LocalDate | undefined; knownAt: string },
): Promise<OwnFacts> {
  const { memberId, knownAt } = asked;
  const club = await gatherClub(em, knownAt);
  const today = localDateOf(toSeconds(knownAt), club.zone);
  const on = asked.on ?? today;
  if (on < EARLIEST || on > addDays(today, MOST_DAYS_AHEAD))
    throw valueRefused('on', `Give a day from ${EARLIEST} to ${addDays(today, MOST_DAYS_AHEAD)}.`);
  const now = on === today ? toSeconds(knownAt) : startOfDay(on, club.zone);
  const people = await gatherPeople(em, {
    ...{ memberIds: [memberId], exceptBookingId: null, ...whatCounts(club, knownAt) },
    // An earlier day looks back further.
    ...(on < today ? { logSince: whatCounts(club, toInstant(now)).logSince } : {}),
  });
  const found = people[memberId];
  if (!found) throw notThere('member');
  const aircraft = await gatherAircraft(em, null, knownAt, null);
  const ruleset = rulesetFor(club.jurisdiction, club.policy);
  const through = addDays(on, DAYS);
  return {
    ...{ on, through, today, person: on < today ? byThen(found, on) : found },
    registrations: new Map(aircraft.map(({ facts }) => [facts.id, registrationOf(facts)])),
    followed(flight) {
      const departures = departuresOf(flight, { first: on, last: through, zone: club.zone, now });
      return {
        departures,
        ruleset,
        sheets: sheetsOf(club, aircraft, { flight, knownAt, at: departures[0]! }),
      };
    },
  };
}

const registrationOf = ({ id, type }: FactSheet['aircraft']): string =>
  type.known ? type.value.registration : id;

function sheetsOf(
  { zone, jurisdiction, airfields }: ClubFacts,
  aircraft: readonly GatheredAircraft[],
  { flight, knownAt, at }: { flight: BoardFlight; knownAt: string; at: number },
): FactSheet[] {
  return aircraft.map(({ homeAirfieldId, facts }) => ({
    ...{ schema: 'bellcrank.facts/1', knownAt, jurisdiction, zone, people: {}, aircraft: facts },
    flight: flightFacts(boardFlight(flight, at), '', airfields, homeAirfieldId),
  }));
}
