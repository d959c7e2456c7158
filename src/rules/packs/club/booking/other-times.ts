/** Remedies that fly at another time or for a shorter one. They say when, and ask nothing about the present departure. */
import { toInstant, toSeconds, type EpochSeconds, type Instant } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';

/** The departure as a number, for building a remedy from it; what is built does not bear on the verdict. */
const departureOf = (moment: Moment): EpochSeconds =>
  moment.watch(({ departs }) => ({ answer: departs, edges: [], knownTo: Number.POSITIVE_INFINITY }));

/** Brings the aircraft back after so many seconds. */
export function shortenBooking(moment: Moment, seconds: number, limit: string): Remedy {
  const departs = departureOf(moment);
  return {
    act: 'shorten-booking',
    title: `Book it for no longer than ${limit}.`,
    by: 'member',
    effects: [
      { op: 'flight', fields: { departs: toInstant(departs), arrives: toInstant(departs + seconds) } },
    ],
  };
}

/** The same flight, starting at a later instant. */
export function departLater(moment: Moment, at: Instant, hours: number): Remedy {
  const fields = { departs: at, arrives: toInstant(toSeconds(at) + moment.durationSeconds) };
  return {
    act: 'depart-later',
    title: `Depart ${hours} h from now, or later.`,
    by: 'member',
    effects: [{ op: 'flight', fields }],
  };
}
