import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { SquawkFact } from '../../../facts/aircraft.js';

/** Has the squawks repaired and closed, in one visit to the shop. */
export function fixSquawks(squawks: readonly SquawkFact[], moment: Moment): Remedy[] {
  const now = moment.hoursFromKnowledge(0);
  if (squawks.length === 0 || !moment.departsAtOrAfter(now)) return [];
  return [
    {
      act: 'fix-squawk',
      title: `Have repaired: ${squawks.map(({ title }) => `"${title}"`).join(', ')}.`,
      by: 'mechanic',
      effects: [...squawks]
        .sort((a, b) => (a.id < b.id ? -1 : 1))
        .map(({ id }) => ({
          op: 'amend' as const,
          fact: 'aircraft.squawks' as const,
          id,
          fields: { state: 'fixed', closedAt: now },
        })),
    },
  ];
}
