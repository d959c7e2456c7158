import { defineRule } from '../../../../engine/rule.js';
import type { LogFact } from '../../../../facts/person.js';
import { countRecent, sameKind, upTo } from './recent-landings.js';
import { landingsRemedies } from './landings-remedies.js';

/**
 * 14 CFR 61.57(a): to carry passengers the pilot in command needs three take-offs and three landings within the preceding
 * 90 days, as sole manipulator of the controls, in an aircraft of the same category and class (and type, if a type rating
 * is required); in a tailwheel airplane the landings must be to a full stop in a tailwheel airplane. It does not bind a
 * pilot who carries nobody.
 */
export const passengerRecencyDay = defineRule({
  id: 'recency.passengers.day',
  title: 'Recent take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'aircraft.type'],
  parameters: ['us.passenger-recency.days', 'us.passenger-recency.count'],
  branches: {
    'nobody-carried': {
      status: 'not-applicable',
      says: 'No passengers are carried, so no recent landings are asked for.',
    },
    enough: {
      status: 'met',
      says: '{takeoffs} take-offs and {landings} landings in the preceding {days} days; good through {through}.',
    },
    short: {
      status: 'short',
      says: '{takeoffs} of {needed} take-offs and {landings} of {needed} landings{how} in the preceding {days} days.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.57(a)',
        status: 'seen',
        reading:
          'A landing exactly 90 days before the flight counts; the flight is tested to its end. Aircraft certificated for more than one pilot are not told apart: only passengers call for it. 89 FR 80310 amends the section from 2024-12-02; it is known at second hand to say “persons” for “passengers” and to except flight instruction, whose terms were not read: a learner is no passenger here, as before.',
      },
      judge(f, moment, p, take) {
        if (f.crew.passengers === 0) return take('nobody-carried');
        const type = f.get('aircraft.type');
        const days = p.number('us.passenger-recency.days');
        const needed = p.number('us.passenger-recency.count');
        const give = (entry: LogFact) => {
          if (!sameKind(entry, type)) return { takeoffs: 0, landings: 0 };
          if (!type.tailwheel) return { takeoffs: entry.takeoffs, landings: entry.landings };
          return entry.tailwheel
            ? { takeoffs: entry.takeoffs, landings: entry.fullStopLandings }
            : { takeoffs: 0, landings: 0 };
        };
        const count = countRecent(f.get('pic.log'), moment, days, needed, give);
        const values = {
          takeoffs: count.takeoffs,
          landings: count.landings,
          days,
          needed,
          through: count.through ?? '',
          how: type.tailwheel ? ' to a full stop in a tailwheel airplane' : '',
        };
        if (count.enough) return take('enough', values, { counted: count.counted });
        return take(
          'short',
          { ...values, ...upTo(needed, count) },
          {
            counted: count.counted,
            remedies: () => landingsRemedies({ type, needed, days, night: false, moment, f }),
          },
        );
      },
    },
  ],
});
