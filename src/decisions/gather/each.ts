import type { EntityManager } from 'typeorm';
import type { AircraftFacts, FactSheet, PersonFacts, Policy } from '../../rules/index.js';
import { flightFacts } from '../flight-facts.js';
import type { FlightRequestDto } from '../flight-request.dto.js';
import { gatherAircraft } from './aircraft.js';
import { gatherClub } from './club.js';
import { gatherPeople } from './people.js';
import { whatCounts } from './sheets.js';

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
  const ids = flights.flatMap(({ memberId, request }) => [
    ...[memberId, request.instructorId, request.secondPilotId],
  ]);
  const people = await gatherPeople(em, {
    memberIds: [...new Set(ids.filter((id) => id !== undefined))],
    ...whatCounts(club, knownAt),
    exceptBookingId: null,
  });
  const aircraftIds = [...new Set(flights.map(({ aircraftId }) => aircraftId))];
  const aircraft = await gatherAircraft(em, aircraftIds, knownAt, null);
  const sheets = flights.map(({ bookingId, memberId, aircraftId, request }): FactSheet => {
    const { homeAirfieldId, facts } = aircraft.find((one) => one.facts.id === aircraftId)!;
    const crew = [memberId, request.instructorId, request.secondPilotId].filter((id) => id !== undefined);
    return {
      schema: 'bellcrank.facts/1',
      ...{ knownAt, jurisdiction: club.jurisdiction, zone: club.zone },
      flight: flightFacts(request, memberId, club.airfields, homeAirfieldId),
      people: Object.fromEntries(crew.map((id) => [id, personWithout(people[id]!, bookingId)])),
      aircraft: aircraftWithout(facts, bookingId),
    };
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
