import { defineProblems, ProblemException } from '../../platform/problems/index.js';

defineProblems(
  {
    code: 'not-out',
    status: 409,
    title: 'The aircraft is not out with this flight',
    detail: 'Only a flight that was handed out and is not back is returned. Read the flight again.',
  },
  {
    code: 'return-corrected',
    status: 409,
    title: 'Somebody corrected it in between',
    detail: 'Read the flight again and correct the return that stands now.',
  },
  {
    code: 'return-refused',
    status: 422,
    title: 'The return contradicts itself',
    detail: 'Change the field named.',
  },
);

export const refuse = (field: string, detail: string): ProblemException =>
  new ProblemException('return-refused', { field, detail });

/** 409: it is back already, with what was written of it, or was never handed out. */
export function notOut(status: string, bookingId: string): ProblemException {
  const detail =
    status === 'returned'
      ? 'The flight is back already. Read it: your first try may have gone through. What is wrong with it is corrected.'
      : status === 'booked'
        ? 'The flight was never handed out. Dispatch it first; one that was flown without is written into log and meters by hand.'
        : 'The booking was cancelled.';
  return new ProblemException('not-out', { detail, extensions: { bookingId, state: status } });
}
