/** Time a person is already promised to, held against the flight. */
import { localClock, localDateOf, toSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Counted } from '../../../engine/rule.js';
import type { CommitmentFact } from '../../../facts/person.js';

/** Those that share time with the flight, earliest first. */
export function overlapping(commitments: readonly CommitmentFact[], moment: Moment): CommitmentFact[] {
  const order = (one: CommitmentFact): string => `${one.from} ${one.id}`;
  return commitments
    .filter((one) => moment.overlaps(one.from, one.to))
    .sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

/** What, from when until when, in the club's zone. */
export function inWords(one: CommitmentFact, zone: string): { what: string; from: string; to: string } {
  const at = (instant: string): string => {
    const seconds = toSeconds(instant);
    return `${localDateOf(seconds, zone)} ${localClock(seconds, zone)}`;
  };
  return { what: one.what, from: at(one.from), to: at(one.to) };
}

export const countedCommitment = (one: CommitmentFact, zone: string): Counted => ({
  id: one.id,
  on: localDateOf(toSeconds(one.from), zone),
  what: one.what,
});
