import { defineProblems, ProblemException } from '../../platform/problems/index.js';

defineProblems(
  {
    code: 'nothing-to-change',
    status: 422,
    title: 'Nothing would be another',
    detail: 'The booking is like that already. Send what is to be different.',
  },
  {
    code: 'cancel-reason-missing',
    status: 422,
    title: 'Say why it is given back so late',
    detail: 'The club asks for a reason when a flight is given back late. Send one.',
  },
  {
    code: 'hand-over-refused',
    status: 409,
    title: 'It cannot be handed over',
    detail:
      'Only a booked flight that has not begun is handed over, to one member at a time who is not aboard already.',
  },
  {
    code: 'series-refused',
    status: 409,
    title: 'Not every flight of the series can be booked',
    detail:
      'Read the occurrences; each says what stands in its way. Or book those that can be (whole: false).',
  },
  {
    code: 'recurrence-refused',
    status: 422,
    title: 'The recurrence cannot be read',
    detail: 'Write it as RFC 5545 does: FREQ=WEEKLY;COUNT=8.',
  },
  {
    code: 'hold-refused',
    status: 409,
    title: 'The slot cannot be held',
    detail: 'Book the checkout, or give back a slot you hold.',
  },
  {
    code: 'block-of-shop',
    status: 409,
    title: 'This time belongs to a visit to the shop',
    detail: 'Move or call off the visit under Shop; its time in the calendar follows.',
  },
);

/** 409: it is over, under way, or given back. */
export const notOpen = (title: string, detail: string): ProblemException =>
  new ProblemException('booking-not-open', { status: 409, title, detail });

/** 403: neither of the crew who may, nor an officer. */
export const notYours = (title: string, detail: string): ProblemException =>
  new ProblemException('forbidden', { status: 403, title, detail });
