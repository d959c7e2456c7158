import type { SignedIn } from '../accounts/current-user.js';
import { asSeenBy } from '../decisions/privacy.js';
import { defineProblems, ProblemException } from '../platform/problems/index.js';
import { ANSWER_WORD } from '../rules/explain/index.js';
import { localClock, localDateOf, toSeconds } from '../rules/index.js';
import type { Decided } from '../decisions/decision-store.js';
import { blocks } from '../rules/index.js';
import type { BookingRow } from './booking.entity.js';

defineProblems(
  {
    code: 'not-bookable',
    status: 409,
    title: 'The answer does not allow the booking',
    detail: 'Read the findings; each says what would cure it.',
  },
  {
    code: 'idempotency-key-reused',
    status: 422,
    title: 'This key belongs to another request',
    detail: 'Use a new Idempotency-Key for a new request.',
  },
  {
    code: 'booking-not-open',
    status: 409,
    title: 'It can no longer be cancelled',
    detail: 'Only a booking that has neither begun to be flown nor ended is cancelled.',
  },
  {
    code: 'times-refused',
    status: 422,
    title: 'The times cannot be read',
    detail: 'The two times contradict each other or have passed. Change the field named.',
  },
);

/** 409: the slot is taken; says by whom and until when, and of a crew only who clashes. */
export function slotTaken(
  conflict: BookingRow,
  wanted: { aircraftId: string; memberIds: readonly string[] },
  zone: string,
): ProblemException {
  const when = spanOf(conflict, zone);
  const ofAircraft = conflict.aircraftId === wanted.aircraftId;
  const what =
    conflict.kind === 'flight'
      ? `${conflict.memberName} has`
      : conflict.kind === 'maintenance'
        ? 'Maintenance has'
        : 'The club has';
  const clash = conflict.people.filter((person) => wanted.memberIds.includes(person.memberId));
  const who = `${clash.map((person) => person.name).join(' and ')} ${clash.length > 1 ? 'are' : 'is'}`;
  return new ProblemException('slot-taken', {
    status: 409,
    title: ofAircraft ? 'The aircraft is taken' : 'Somebody of the crew is taken',
    detail: ofAircraft
      ? `${what} ${conflict.registration} ${when}. Choose another time or another aircraft.`
      : `${who} booked in ${conflict.registration} ${when}. Choose another time or another crew.`,
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

/** 'from 13:00 to 15:00 on 2026-03-11', with both dates when there are two; in the club's zone. */
function spanOf({ departs, arrives }: BookingRow, zone: string): string {
  const [from, to] = [toSeconds(departs), toSeconds(arrives)];
  const [day, lastDay] = [localDateOf(from, zone), localDateOf(to, zone)];
  const began = `from ${localClock(from, zone)}${day === lastDay ? '' : ` on ${day}`}`;
  return `${began} to ${localClock(to, zone)} on ${lastDay}`;
}

/** 409: the decision does not allow the booking; carries the findings that stand in the way. */
export function notBookable(decided: Decided, overrideMissing: boolean, viewer: SignedIn): ProblemException {
  const decision = asSeenBy(viewer, decided.sheet, decided.decision);
  const inTheWay = decision.findings
    .filter(blocks)
    .map(({ rule, title, weight, says }) => ({ rule, title, weight, says }));
  return new ProblemException('not-bookable', {
    status: 409,
    title: `The answer: ${ANSWER_WORD[decision.answer]}`,
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

export const noAircraft = (id: string): ProblemException =>
  new ProblemException('not-found', {
    status: 404,
    title: 'Not found',
    detail: `The club has no aircraft ${id}. Check the id.`,
    field: 'aircraftId',
  });

/** 422: the two times contradict each other or have passed. */
export const timesRefused = (field: string, detail: string): ProblemException =>
  new ProblemException('times-refused', { status: 422, title: 'The times cannot be read', detail, field });
