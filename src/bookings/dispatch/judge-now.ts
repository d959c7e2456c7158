import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import type { Decided } from '../../decisions/decision-store.js';
import type { DecisionsService } from '../../decisions/decisions.service.js';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { blocks } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';
import type { LookDto } from './dispatch.dto.js';

/** A booked flight judged again with the facts of now. */
export interface JudgedNow {
  decided: Decided;
  /** The flight as it was judged, to be booked as such where aircraft or pilot are others. */
  request: FlightRequestDto;
  /** Club rules in the way that an officer set aside for this booking. */
  setAside: string[];
  mayGo: boolean;
}

/**
 * Judges the flight as it stands at the aircraft, without its own booking in the way: from the booked departure, or from now
 * where that has passed. Rules about how a booking is made are not asked, since it is made.
 */
export async function judgeNow(
  em: EntityManager,
  decisions: DecisionsService,
  of: { user: SignedIn; booking: BookingRow; at: LookDto; now: string },
): Promise<JudgedNow> {
  const { user, booking, at, now } = of;
  const request = await requestNow(em, booking, at, now);
  const aircraftId = at.aircraftId ?? booking.aircraftId;
  const { decided } = await decisions.decideIn(em, user, { ...request, planned: true }, [aircraftId], {
    exceptBookingId: booking.id,
  });
  const one = decided[0]!;
  // An override was given for this aircraft and this pilot.
  const same = aircraftId === booking.aircraftId && request.memberId === booking.memberId;
  const setAside = same ? setAsideIn(one, booking) : [];
  const { answer } = one.decision;
  const mayGo =
    answer === 'yes' || answer === 'yes-with-conditions' || (answer === 'ask-officer' && setAside.length > 0);
  return { decided: one, request, setAside, mayGo };
}

/** The rules in the way, where an officer set aside every one of them; else none. */
function setAsideIn({ decision }: Decided, { overrides }: BookingRow): string[] {
  const inTheWay = decision.findings.filter(blocks);
  const covered = inTheWay.every(
    ({ rule, overridable }) => overridable && overrides.some(({ ruleId }) => ruleId === rule),
  );
  return covered ? inTheWay.map(({ rule }) => rule) : [];
}

async function requestNow(
  em: EntityManager,
  booking: BookingRow,
  at: LookDto,
  now: string,
): Promise<FlightRequestDto & { memberId: string }> {
  const [row]: { request: FlightRequestDto }[] = await em.query(
    'SELECT request FROM bookings WHERE club_id = bellcrank_club() AND id = $1',
    [booking.id],
  );
  const asked = row!.request;
  const memberId = at.memberId ?? booking.memberId;
  const loading =
    at.fuelUsGal === undefined
      ? (at.loading ?? asked.loading)
      : { ...(at.loading ?? asked.loading), fuelUsGal: at.fuelUsGal };
  const request = {
    ...asked,
    memberId,
    departs: booking.departs > now ? booking.departs : now,
    arrives: booking.arrives,
    personsOnBoard: at.personsOnBoard ?? asked.personsOnBoard,
    ...(at.weather ? { weather: at.weather } : {}),
    ...(loading ? { loading } : {}),
  };
  return memberId === booking.memberId ? request : takenOver(request, booking.memberId);
}

/** The second pilot flies in place of the first: the seat beside is empty unless somebody else is named for it. */
function takenOver<T extends FlightRequestDto>(request: T, before: string): T {
  const { secondPilotId, actingPilotId, secondPilotRequired, ...rest } = request;
  if (secondPilotId === undefined || secondPilotId === request.memberId) return rest as T;
  return {
    ...rest,
    secondPilotId,
    ...(secondPilotRequired === undefined ? {} : { secondPilotRequired }),
    ...(actingPilotId === undefined || actingPilotId === before ? {} : { actingPilotId }),
  } as T;
}
