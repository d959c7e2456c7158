/** Bookings a member has open, as the club's rules of fair use count them. */
import { toSeconds } from '../../../calendar/instants.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Branch } from '../../../engine/rule.js';
import type { CommitmentFact } from '../../../facts/person.js';
import type { FlightFacts } from '../../../facts/flight.js';
import { dateAndClock } from '../../when.js';

/** Branches that all rules of fair use share. */
export const FAIR_USE_BRANCHES = {
  'no-limit': { status: 'not-applicable', says: 'The club sets no limit.' },
  maintenance: { status: 'not-applicable', says: 'A flight for maintenance does not count.' },
  planned: { status: 'not-applicable', says: 'Asked ahead: this is asked when the flight is booked.' },
} as const satisfies Record<string, Branch>;

/** Why a rule of fair use asks nothing of the flight; null: it does. */
export function asksNothing(
  { planned = false, purpose }: Pick<FlightFacts, 'planned' | 'purpose'>,
  limit: number,
): keyof typeof FAIR_USE_BRANCHES | null {
  if (limit <= 0) return 'no-limit';
  if (planned) return 'planned';
  return purpose === 'maintenance' || purpose === 'ferry-to-inspection' ? 'maintenance' : null;
}

/** The member's own flights among what they are promised to, earliest first: lessons they give to others do not count. */
export const ownOpen = (all: readonly CommitmentFact[]): CommitmentFact[] =>
  all.filter(({ role }) => role === 'pilot').sort((a, b) => (order(a) < order(b) ? -1 : 1));

const order = (one: CommitmentFact): string => `${one.from} ${one.id}`;

export const lengthSeconds = ({ from, to }: CommitmentFact): number => toSeconds(to) - toSeconds(from);

/** Gives bookings back, so that the rest leaves room. */
export function giveBack(
  all: readonly CommitmentFact[],
  given: readonly CommitmentFact[],
  zone: string,
): Remedy {
  const gone = new Set(given.map(({ id }) => id));
  return {
    act: 'give-up-commitment',
    title: `Give up ${given.map(({ what, from }) => `${what} on ${dateAndClock(from, zone)}`).join(' and ')}.`,
    by: 'member',
    effects: [
      {
        op: 'set',
        fact: 'member.commitments',
        value: all.filter(({ id }) => !gone.has(id)).sort((a, b) => (a.id < b.id ? -1 : 1)),
      },
    ],
  };
}
