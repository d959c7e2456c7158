import { defineProblems, ProblemException } from '../../platform/problems/index.js';
import type { BookingRow } from '../booking.entity.js';

defineProblems(
  {
    code: 'not-to-be-dispatched',
    status: 409,
    title: 'The aircraft cannot be handed out now',
    detail: 'Only a flight that is booked, near its time, is handed out. Read the booking again.',
  },
  {
    code: 'squawks-not-read',
    status: 409,
    title: 'Squawks still to be read',
    detail: 'Read every open and deferred squawk of the aircraft, then send their ids.',
  },
  {
    code: 'conditions-not-accepted',
    status: 409,
    title: 'Conditions still to be accepted',
    detail: 'The answer holds under conditions. Accept each of them, then send them with the dispatch.',
  },
  {
    code: 'meter-gap',
    status: 422,
    title: 'The meter went on since it was last read',
    detail: 'Check the figure; if it is right, say what the hours between are.',
  },
  {
    code: 'meters-not-confirmed',
    status: 422,
    title: 'A meter is missing',
    detail: 'Send what every meter of the aircraft shows, each once.',
  },
  {
    code: 'self-assessment-open',
    status: 422,
    title: 'The self-assessment was not gone through',
    detail: 'Go through it before the flight. Whoever is not fit to fly leaves the aircraft on the ground.',
  },
);

export const cannotGo = (detail: string, extensions: Record<string, unknown> = {}): ProblemException =>
  new ProblemException('not-to-be-dispatched', { detail, extensions });

/** 409: it is not booked any more, or not a flight. */
export function notBooked({ id, kind, status }: BookingRow): ProblemException {
  if (kind !== 'flight')
    return cannotGo('This is no flight but time in which the aircraft is not for flying.');
  const what = {
    booked: 'is booked',
    dispatched: 'is out already. Read it again: somebody was quicker, or your first try went through',
    returned: 'is back already',
    cancelled: 'was cancelled. Book anew',
  }[status];
  return cannotGo(`The flight ${what}.`, { bookingId: id, state: status });
}

export const squawksNotRead = (squawkIds: string[]): ProblemException =>
  new ProblemException('squawks-not-read', {
    field: 'squawksSeen',
    detail: `${squawkIds.length === 1 ? 'A squawk is' : `${squawkIds.length} squawks are`} open that you have not marked as read. Look at the list again.`,
    extensions: { squawkIds },
  });

export const squawkNotOpen = (): ProblemException =>
  new ProblemException('value-refused', {
    status: 422,
    field: 'squawksSeen',
    detail: 'It names something that is no squawk of this aircraft. Read the list again.',
  });

export const conditionsNotAccepted = (conditions: string[]): ProblemException =>
  new ProblemException('conditions-not-accepted', {
    field: 'conditionsAccepted',
    extensions: { conditions },
  });
