import { addPlainMonths } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import { touchesNight } from '../../../sky/nights.js';
import { countLandings, landingsRemedies, throughWords } from '../../common/shared/landing-count.js';

/**
 * CARs 401.05(2)(b)(i): with a passenger aboard, five take-offs and five landings within the preceding six months in the
 * same category and class; all by night when any part of the flight is by night. Canadian night runs from the end of
 * evening to the beginning of morning civil twilight (CARs 101.01).
 */
export const passengerRecency = defineRule({
  id: 'recency.canada.passengers',
  title: 'Recent take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'aircraft.type'],
  parameters: ['ca.passenger-recency.months', 'ca.passenger-recency.count'],
  branches: {
    'nobody-carried': {
      status: 'not-applicable',
      says: 'No passengers are carried, so passenger recency does not bind.',
    },
    enough: {
      status: 'met',
      says: '{takeoffs} take-offs and {landings} landings in the preceding {months} months; good through {through}.',
    },
    short: {
      status: 'short',
      says: '{takeoffs} of {needed} take-offs and {landings} of {needed} landings in the preceding {months} months.',
    },
    'short-by-night': {
      status: 'short',
      says: 'Recent by day; the flight enters the night, and {takeoffs} of {needed} take-offs and {landings} of {needed} landings in the preceding {months} months were by night.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(2)(b)',
        status: 'seen',
        reading:
          'Six months run day for day, ending on the month end where the day is missing. The easier ways for gliders and ' +
          'balloons are not used. The log keeps night landings from an hour after sunset: short of civil night south of ' +
          '55 degrees, longer in a northern summer.',
      },
      judge(f, moment, p, take) {
        if (f.crew.passengers === 0) return take('nobody-carried');
        const type = f.get('aircraft.type');
        const log = f.get('pic.log');
        const months = p.number('ca.passenger-recency.months');
        const needed = p.number('ca.passenger-recency.count');
        const through = (on: string) => addPlainMonths(on, months, 'clamp-to-month-end');
        const day = countLandings(log, type, moment, { needed, through, night: false });
        const night = countLandings(log, type, moment, { needed, through, night: true });
        const dark = !night.enough && touchesNight(moment, f.flight.route, 'civil');
        const found = dark && day.enough ? night : day;
        const values = {
          takeoffs: found.takeoffs,
          landings: found.landings,
          needed,
          months,
        };
        if (day.enough && !dark)
          return take(
            'enough',
            { ...values, through: throughWords(day.through!, night) },
            { counted: day.counted },
          );
        return take(day.enough ? 'short-by-night' : 'short', values, {
          counted: found.counted,
          remedies: () => landingsRemedies(type, f, moment, { needed, through, night: dark }),
        });
      },
    },
  ],
});
