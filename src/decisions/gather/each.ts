import type { EntityManager } from 'typeorm';
import type { AircraftFacts, FactSheet, PersonFacts, Policy } from '../../rules/index.js';
import type { FlightRequestDto } from '../flight-request.dto.js';
import { gatherAircraft } from './aircraft.js';
import { gatherClub } from './club.js';
import { gatherPeople } from './people.js';
import { crewOf, sheetOf } from './sheets.js';
import { whatCounts } from './what-counts.js';

/** A flight that is booked: it does not stand in its own way. */
export interface BookedFlight {
  bookingId: string;
  memberId: string;
  aircraftId: string;
  request: FlightRequestDto;
}

/** The fact sheet of each booked flight, in their order, and the policy that judges them; three statements for all of them. */
export async function gatherEach(
  em: EntityManager,
  of: { flights: readonly BookedFlight[]; knownAt: string },
): Promise<{ sheets: FactSheet[]; policy: Policy }> {
  const { flights, knownAt } = of;
  const club = await gatherClub(em, knownAt);
  const people = await gatherPeople(em, {
    memberIds: [...new Set(flights.flatMap(crewOf))],
    ...whatCounts(club, knownAt),
    exceptBookingId: null,
  });
  const aircraftIds = [...new Set(flights.map(({ aircraftId }) => aircraftId))];
  const aircraft = await gatherAircraft(em, aircraftIds, knownAt, null);
  const sheets = flights.map((flight) => {
    const { bookingId, memberId, aircraftId, request } = flight;
    const { homeAirfieldId, facts } = aircraft.find((one) => one.facts.id === aircraftId)!;
    const crew = crewOf(flight).map((id) => [id, personWithout(people[id]!, bookingId)]);
    return sheetOf(club, {
      ...{ request, memberId, knownAt, people: Object.fromEntries(crew) },
      aircraft: { homeAirfieldId, facts: aircraftWithout(facts, bookingId) },
    });
  });
  return { sheets, policy: club.policy };
}

const others = <T extends { id: string }>(records: readonly T[], bookingId: string): T[] =>
  records.filter(({ id }) => id !== bookingId);

function personWithout(person: PersonFacts, bookingId: string): PersonFacts {
  const { commitments } = person;
  if (!commitments.known) return person;
  return { ...person, commitments: { ...commitments, value: others(commitments.value, bookingId) } };
}

function aircraftWithout(facts: AircraftFacts, bookingId: string): AircraftFacts {
  const { reservations } = facts;
  if (!reservations.known) return facts;
  return { ...facts, reservations: { ...reservations, value: others(reservations.value, bookingId) } };
}
