import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../platform/problems/index.js';
import { withReports, type FactSheet, type Policy } from '../../rules/index.js';
import { reportsFor } from '../../weather/reports/stored-report.js';
import { flightFacts } from '../flight-facts.js';
import type { FlightRequestDto } from '../flight-request.dto.js';
import type { GatheredAircraft } from './aircraft.js';
import type { ClubFacts } from './club.js';
import { gatherRemembered } from './remember/gather-remembered.js';

/** A fact sheet for each aircraft asked about, in order of registration, and the policy that judges them. */
export interface Gathered {
  sheets: FactSheet[];
  policy: Policy;
}

/**
 * Gathers all facts of a question in at most four statements, whatever the number of aircraft: what was gathered before and still
 * stands is not read again (remember/).
 *
 * @throws ProblemException 404 for a person or aircraft the club does not have; 422 for a flight that cannot be read.
 */
export async function gatherSheets(
  em: EntityManager,
  question: {
    request: FlightRequestDto;
    memberId: string;
    aircraftIds: string[] | null;
    knownAt: string;
    exceptBookingId?: string | null;
  },
): Promise<Gathered> {
  const { request, memberId, aircraftIds, knownAt, exceptBookingId = null } = question;
  const { club, people, aircraft } = await gatherRemembered(em, {
    ...{ memberIds: crewOf({ memberId, request }), aircraftIds, knownAt, exceptBookingId },
  });
  requirePeople(people, {
    memberId,
    instructorId: request.instructorId,
    secondPilotId: request.secondPilotId,
  });
  requireAircraft(
    aircraftIds,
    aircraft.map(({ facts }) => facts.id),
  );
  const sheets = aircraft.map((one) => sheetOf(club, { request, memberId, knownAt, people, aircraft: one }));
  return { sheets, policy: club.policy };
}

/** Everybody whose records a flight is judged by. */
export const crewOf = ({
  memberId,
  request,
}: {
  memberId: string;
  request: Pick<FlightRequestDto, 'instructorId' | 'secondPilotId'>;
}): string[] =>
  [memberId, request.instructorId, request.secondPilotId].filter((id): id is string => id !== undefined);

/** The sheet of one flight in one aircraft. */
export function sheetOf(
  club: ClubFacts,
  of: {
    request: FlightRequestDto;
    memberId: string;
    knownAt: string;
    people: FactSheet['people'];
    aircraft: Pick<GatheredAircraft, 'homeAirfieldId' | 'facts'>;
  },
): FactSheet {
  const { homeAirfieldId, facts } = of.aircraft;
  return {
    schema: 'bellcrank.facts/1',
    knownAt: of.knownAt,
    jurisdiction: club.jurisdiction,
    zone: club.zone,
    flight: withReports(
      flightFacts(of.request, of.memberId, club.airfields, homeAirfieldId),
      reportsFor(club.reports, crewOf(of)),
    ),
    people: of.people,
    aircraft: facts,
  };
}

/** @throws ProblemException 404 for an aircraft asked about that is none of the club's. */
export function requireAircraft(askedIds: readonly string[] | null, clubIds: readonly string[]): void {
  const missing = askedIds?.find((id) => !clubIds.includes(id));
  if (missing !== undefined) throw notFound('aircraftIds', `The club has no aircraft ${missing}.`);
}

function requirePeople(people: Record<string, unknown>, wanted: Record<string, string | undefined>): void {
  for (const [field, id] of Object.entries(wanted)) {
    if (id !== undefined && !(id in people)) throw notFound(field, `The club has no member ${id}.`);
  }
}

const notFound = (field: string, detail: string): ProblemException =>
  new ProblemException('not-found', {
    status: 404,
    title: 'Not found',
    detail: `${detail} Check the id.`,
    field,
  });
