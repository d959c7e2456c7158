import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../../platform/problems/index.js';
import {
  localDateOf,
  rulesetFor,
  type FactSheet,
  type PersonFacts,
  type Ruleset,
  type Span,
} from '../../../rules/index.js';
import { flightFacts } from '../../flight-facts.js';
import type { FlightRequestDto } from '../../flight-request.dto.js';
import { gatherAircraft } from '../../gather/aircraft.js';
import { gatherClub } from '../../gather/club.js';
import { gatherPeople } from '../../gather/people.js';
import { whatCounts } from '../../gather/what-counts.js';
import type { PairsQuestion } from '../pairs.js';
import { daysOf } from '../span.js';
import { whom } from './whom.js';

/** Pairs times days of one question: five hundred members on twenty aircraft over a hundred days. */
export const MOST_PAIR_DAYS = 1_000_000;
/** Members whose records are held at once. */
export const MOST_MEMBERS = 2000;

/** What the whole-club form is asked. */
export interface ClubAsked {
  flight: FlightRequestDto;
  memberIds: string[] | null;
  aircraftIds: string[] | null;
  span: Span;
  knownAt: string;
}

/** All facts of a whole-club question. */
export interface GatheredPairs extends PairsQuestion {
  sheets: FactSheet[];
  members: PersonFacts[];
  ruleset: Ruleset;
  zone: string;
}

/**
 * Gathers the facts of all members and aircraft in four statements, however many they are and however long the span.
 *
 * @throws ProblemException 404 for somebody or something the club does not have; 422 for more than is answered at once.
 */
export async function gatherPairs(em: EntityManager, asked: ClubAsked): Promise<GatheredPairs> {
  const { flight, span, knownAt } = asked;
  const club = await gatherClub(em, knownAt);
  const { zone, jurisdiction, policy } = club;
  const [first, last] = [localDateOf(span.from, zone), localDateOf(span.to - 1, zone)];
  const { members, aircraftIds } = await whom(em, { ...asked, first, last });
  refuseTooMuch(members.length, aircraftIds.length, daysOf(span));
  const people = await gatherPeople(em, {
    memberIds: members.map(({ id }) => id),
    ...whatCounts(club, knownAt),
    exceptBookingId: null,
  });
  const aircraft = await gatherAircraft(em, aircraftIds, knownAt, null);
  const sheets = aircraft.map(({ homeAirfieldId, facts }): FactSheet => ({
    schema: 'bellcrank.facts/1',
    ...{ knownAt, jurisdiction, zone },
    // Each member in turn takes the flight (pairsOf).
    flight: flightFacts(flight, '', club.airfields, homeAirfieldId),
    people: {},
    aircraft: facts,
  }));
  return {
    ...{ sheets, span, zone, ruleset: rulesetFor(jurisdiction, policy) },
    members: members.map(({ id }) => people[id]!),
  };
}

function refuseTooMuch(members: number, aircraft: number, days: number): void {
  if (members > MOST_MEMBERS) {
    throw tooLarge(
      'memberIds',
      `${members} members are more than are looked at together (${MOST_MEMBERS}). Name some of them in memberIds, and ask again for the others.`,
    );
  }
  if (members * aircraft * days <= MOST_PAIR_DAYS) return;
  const pairs = members * aircraft;
  const fewerDays = Math.floor(MOST_PAIR_DAYS / pairs);
  const shorter = fewerDays > 0 ? `Ask for ${fewerDays} days or fewer, or name` : 'Name';
  throw tooLarge(
    'to',
    `${members} members on ${aircraft} aircraft over ${days} days are ${pairs * days} pair-days; at most ${MOST_PAIR_DAYS} are ` +
      `answered at once. ${shorter} some of the members (memberIds) or aircraft (aircraftIds).`,
  );
}

const tooLarge = (field: string, detail: string): ProblemException =>
  new ProblemException('span-too-large', { field, detail });
