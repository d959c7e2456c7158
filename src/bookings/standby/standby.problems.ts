import { defineProblems, ProblemException } from '../../platform/problems/index.js';
import { localClock, localDateOf, toSeconds } from '../../rules/index.js';

defineProblems(
  {
    code: 'slot-kept',
    status: 409,
    title: 'The slot is offered to somebody',
    detail: 'It is kept for a member on standby. Choose another time or aircraft, or go on standby for it.',
  },
  {
    code: 'offer-over',
    status: 409,
    title: 'The offer is over',
    detail: 'It was answered, its time has run out, or the slot was taken. Read your standby list again.',
  },
  {
    code: 'standby-over',
    status: 409,
    title: 'Nobody waits here any more',
    detail: 'The entry was booked, taken back, or its departure has passed. Read your standby list again.',
  },
);

/** 409: the time is kept for a member on standby; says until when, and never for whom. */
export function slotKept(until: string, zone: string): ProblemException {
  const at = toSeconds(until);
  return new ProblemException('slot-kept', {
    detail: `It is kept for a member on standby until ${localClock(at, zone)} on ${localDateOf(at, zone)}. Choose another time or aircraft, or go on standby for it.`,
    field: 'aircraftId',
    extensions: { keptUntil: until },
  });
}

export const offerOver = (): ProblemException => new ProblemException('offer-over');
export const standbyOver = (): ProblemException => new ProblemException('standby-over');
