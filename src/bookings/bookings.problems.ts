import { ProblemException } from '../platform/problems/index.js';
import { localClock, localDateOf, toSeconds } from '../rules/index.js';
import type { Decided } from '../decisions/decision-store.js';
import { blocks } from '../rules/index.js';
import type { BookingRow } from './booking.entity.js';

/** 409: the slot is taken; says by whom and until when. */
export function slotTaken(conflict: BookingRow, aircraftId: string, zone: string): ProblemException {
  const until = toSeconds(conflict.arrives);
  const when = `${localClock(toSeconds(conflict.departs), zone)} to ${localClock(until, zone)} on ${localDateOf(until, zone)}`;
  const ofAircraft = conflict.aircraftId === aircraftId;
  const what =
    conflict.kind === 'flight'
      ? `${conflict.memberName} has`
      : conflict.kind === 'maintenance'
        ? 'Maintenance has'
        : 'The club has';
  const clash = conflict.people.map((person) => person.name).join(' and ');
  return new ProblemException('slot-taken', {
    status: 409,
    title: ofAircraft ? 'The aircraft is taken' : 'Somebody of the crew is taken',
    detail: ofAircraft
      ? `${what} ${conflict.registration} from ${when}. Choose another time or another aircraft.`
      : `${clash} is booked in ${conflict.registration} from ${when}. Choose another time or another crew.`,
    field: ofAircraft ? 'aircraftId' : 'departs',
    extensions: {
      conflict: {
        bookingId: conflict.id,
        kind: conflict.kind,
        holder: conflict.memberName,
        registration: conflict.registration,
        departs: conflict.departs,
        arrives: conflict.arrives,
      },
    },
  });
}

/** 409: the decision does not allow the booking; carries the findings that stand in the way. */
export function notBookable(decided: Decided, overrideMissing: boolean): ProblemException {
  const { decision } = decided;
  const inTheWay = decision.findings
    .filter(blocks)
    .map(({ rule, title, weight, says }) => ({ rule, title, weight, says }));
  return new ProblemException('not-bookable', {
    status: 409,
    title: `The answer is ${decision.answer}`,
    detail: `${decision.says} ${overrideMissing ? 'Ask a safety officer to book it for you with a reason.' : 'Read the findings; each says what would cure it.'}`,
    extensions: {
      answer: decision.answer,
      decisionId: decided.id,
      findings: inTheWay,
      horizon: decision.horizon,
      caution: decision.caution,
    },
  });
}

/** 422: the same Idempotency-Key with another request. */
export const keyReused = (): ProblemException =>
  new ProblemException('idempotency-key-reused', {
    status: 422,
    title: 'This key belongs to another request',
    detail: 'The Idempotency-Key was used for a different request before. Use a new key for a new request.',
    field: 'Idempotency-Key',
  });

export const noBooking = (id: string): ProblemException =>
  new ProblemException('not-found', {
    status: 404,
    title: 'Not found',
    detail: `The club has no booking ${id}. Check the id.`,
  });
