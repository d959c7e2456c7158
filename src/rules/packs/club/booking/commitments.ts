/** Time a person is already promised to, held against the flight. */
import type { Moment } from '../../../engine/moment.js';
import type { Counted } from '../../../engine/rule.js';
import type { CommitmentFact } from '../../../facts/person.js';
import { dateAndClock, dateOf } from '../../when.js';

/** Those that share time with the flight, earliest first. */
export function overlapping(commitments: readonly CommitmentFact[], moment: Moment): CommitmentFact[] {
  const order = (one: CommitmentFact): string => `${one.from} ${one.id}`;
  return commitments
    .filter((one) => moment.overlaps(one.from, one.to))
    .sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

/** What, from when until when, in the club's zone. */
export function inWords(one: CommitmentFact, zone: string): { what: string; from: string; to: string } {
  return { what: one.what, from: dateAndClock(one.from, zone), to: dateAndClock(one.to, zone) };
}

/** '; the next begins at 2027-03-01 14:00', for the end of a sentence; empty where none follows. */
export function nextInWords(commitments: readonly CommitmentFact[], moment: Moment): string {
  const later = moment.aside();
  const begins = commitments.map(({ from }) => from).filter((from) => !later.departsAtOrAfter(from));
  const next = begins.sort()[0];
  return next === undefined ? '' : `; the next begins at ${dateAndClock(next, moment.zone)}`;
}

export const countedCommitment = (one: CommitmentFact, zone: string): Counted => ({
  id: one.id,
  on: dateOf(one.from, zone),
  what: one.what,
});
