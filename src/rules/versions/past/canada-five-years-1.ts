import { addYears } from '../../calendar/dates.js';
import { defineRule } from '../../engine/rule.js';
import type { LogFact } from '../../facts/person.js';

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'second-in-command', 'solo', 'instructor'];

/** CARs 401.05(1)(a): a flight as pilot in command or co-pilot of an aircraft within the preceding five years. */
export const canadaFiveYears1 = defineRule({
  id: 'recency.canada.five_years',
  title: 'A flight in command or as co-pilot in five years',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log'],
  parameters: ['ca.recent-command.years'],
  branches: {
    recent: { status: 'met', says: 'In command or co-pilot on {on}; good through {through}.' },
    lapsed: {
      status: 'short',
      says: 'No flight in command or as co-pilot in the preceding {years} years; a flight review and an examination are needed, which only the authority’s standard settles.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(1)',
        status: 'seen',
        reading:
          'Regaining by flight review and examination, (1)(b), is not held: no fact records the examination. A student who ' +
          'never flew alone is refused too.',
      },
      judge(f, moment, p, take) {
        const years = p.number('ca.recent-command.years');
        const newest = f
          .get('pic.log')
          .filter((entry) => entry.device === null && COMMAND.includes(entry.role))
          .map((entry) => ({ entry, through: addYears(entry.on, years, 'clamp-to-month-end') }))
          .filter(
            ({ entry, through }) =>
              moment.departsAtOrAfter(entry.departedAt) && moment.endsOnOrBefore(through),
          )
          .sort((a, b) =>
            a.entry.departedAt !== b.entry.departedAt
              ? a.entry.departedAt < b.entry.departedAt
                ? 1
                : -1
              : a.entry.id < b.entry.id
                ? 1
                : -1,
          )[0];
        if (!newest) return take('lapsed', { years });
        const { entry, through } = newest;
        return take(
          'recent',
          { on: entry.on, through },
          { counted: [{ id: entry.id, on: entry.on, what: entry.role.replaceAll('-', ' ') }] },
        );
      },
    },
  ],
});
