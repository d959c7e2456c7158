import { addDays } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import type { CheckoutFact } from '../../../facts/person.js';
import { plannedDay } from './planned-day.js';
import { best, countedSignOff, signOffRemedy, stands } from './sign-offs.js';

/** Club rule: the pilot in command has passed the club's check within so many days of the whole flight. */
export const annualCheck = defineRule({
  id: 'club.annual_check',
  title: 'Club check',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts'],
  parameters: ['club.annual-check.days', 'club.annual-check.instructors-too'],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no regular check.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Instruction is given, and the club asks its instructors for no regular check.',
    },
    checked: { status: 'met', says: 'Club check passed on {on}, good through {through}.' },
    'check-due': {
      status: 'short',
      says: 'No club check within {days} days of the flight is on record{last}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 3.3',
        status: 'club paper',
        reading: 'A check exactly that many days before the flight counts; the flight is tested to its end.',
      },
      judge(f, moment, p, take) {
        const days = p.number('club.annual-check.days');
        if (days === 0) return take('not-asked');
        if (f.crew.instruction && !p.flag('club.annual-check.instructors-too'))
          return take('with-instructor');
        // An end date on the sign-off itself may only shorten what the policy gives.
        const ends = (one: CheckoutFact): CheckoutFact => {
          const through = addDays(one.on, days);
          return {
            ...one,
            expiresOn: one.expiresOn !== null && one.expiresOn < through ? one.expiresOn : through,
          };
        };
        const checks = f
          .get('pic.checkouts')
          .filter((one) => one.kind === 'annual-check')
          .map(ends);
        const found = best(checks.filter((one) => stands(one, moment)));
        if (found) {
          return take(
            'checked',
            { on: found.on, through: found.expiresOn ?? '' },
            { counted: [countedSignOff(found, 'club check')] },
          );
        }
        const last = checks
          .map((one) => one.on)
          .filter((on) => moment.startsOnOrAfter(on))
          .sort()
          .at(-1);
        return take(
          'check-due',
          { days, last: last ? `; the newest is dated ${last}` : '' },
          {
            remedies: () => {
              const daysAhead = plannedDay(moment, days);
              if (daysAhead === null) return [];
              return [
                signOffRemedy({
                  act: 'fly-club-check',
                  title: 'Fly the club check with an instructor, who signs it off.',
                  moment,
                  daysAhead,
                  fields: { kind: 'annual-check', modelId: null, aircraftId: null },
                }),
              ];
            },
          },
        );
      },
    },
  ],
});
