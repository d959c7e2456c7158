import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import type { AircraftCategory } from '../../../facts/person.js';
import { touchesNight } from '../../../sky/nights.js';
import { easaPassengers1 } from '../../../versions/past/easa-passengers-1.js';
import {
  countLandings,
  landingsRemedies,
  throughWords,
  type LandingCount,
} from '../../common/shared/landing-count.js';
import { euStanding, isMotorGlider } from '../licence/standing.js';
import { ratingsOf } from '../ratings/class-of.js';

/**
 * Part-FCL, FCL.060(b): to carry passengers, or fly commercial air transport, the pilot in command needs three take-offs,
 * approaches and landings in the preceding 90 days in the type or class; by night one of each by night, or an instrument
 * rating. European night runs from the end of evening to the beginning of morning civil twilight (FCL.010).
 */
export const passengerRecency = defineRule({
  id: 'recency.easa.passengers',
  title: 'Recent take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'pic.certificates', 'pic.ratings', 'aircraft.type'],
  parameters: ['eu.passenger-recency.days', 'eu.passenger-recency.count', 'eu.passenger-recency.night-count'],
  branches: {
    'nobody-carried': {
      status: 'not-applicable',
      says: 'No passengers are carried, so recent experience does not bind.',
    },
    enough: {
      status: 'met',
      says: '{takeoffs} take-offs and {landings} landings in the preceding {days} days; good through {through}.',
    },
    'instrument-rating': {
      status: 'met',
      says: '{takeoffs} take-offs and {landings} landings in the preceding {days} days; by night the instrument rating, valid through {ratingThrough}, stands for one by night.',
    },
    short: {
      status: 'short',
      says: '{takeoffs} of {needed} take-offs and {landings} of {needed} landings in the preceding {days} days.',
    },
    'short-by-night': {
      status: 'short',
      says: 'Recent by day; the flight enters the night, and {takeoffs} of {needed} take-offs and {landings} of {needed} landings in the preceding {days} days were by night.',
    },
  },
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.060(b)',
        status: 'seen',
        reading:
          'A landing exactly 90 days before counts. The log keeps night landings from an hour after sunset: short of civil ' +
          'night south of 55 degrees, longer in a northern summer. Approaches are taken to go with the landings. Of gliders ' +
          'those in the model flown count, as the log does not tell motor gliders apart.',
      },
      judge(f, moment, p, take) {
        if (f.crew.passengers === 0 && !f.flight.forHire) return take('nobody-carried');
        const type = f.get('aircraft.type');
        const days = p.number('eu.passenger-recency.days');
        const log = f
          .get('pic.log')
          .filter((entry) => !isMotorGlider(type) || entry.modelId === type.modelId);
        const through = (on: string) => addDays(on, days);
        const byDay = { needed: p.number('eu.passenger-recency.count'), through, night: false };
        const byNight = { needed: p.number('eu.passenger-recency.night-count'), through, night: true };
        const day = countLandings(log, type, moment, byDay);
        const night = countLandings(log, type, moment, byNight);
        const words = (count: LandingCount, needed: number) => ({
          takeoffs: count.takeoffs,
          landings: count.landings,
          needed,
          days,
        });
        const dark = !night.enough && touchesNight(moment, f.flight.route, 'civil');
        const rating = dark ? instrumentThrough(f, type.category, moment) : null;
        if (!day.enough) {
          const asked = { ...byDay, night: dark && rating === null };
          return take('short', words(day, byDay.needed), {
            counted: day.counted,
            remedies: () => landingsRemedies(type, f, moment, asked),
          });
        }
        if (dark && rating === null)
          return take('short-by-night', words(night, byNight.needed), {
            counted: night.counted,
            remedies: () => landingsRemedies(type, f, moment, byNight),
          });
        const { counted } = day;
        if (rating !== null)
          return take(
            'instrument-rating',
            { ...words(day, byDay.needed), ratingThrough: rating },
            { counted },
          );
        return take(
          'enough',
          { ...words(day, byDay.needed), through: throughWords(day.through!, night) },
          { counted },
        );
      },
    },
  ],
  superseded: [easaPassengers1 as never],
  changed:
    'The instrument rating must be on record as valid; before, its end was not on record and came as a condition.',
});

/** Last day of an instrument rating for the category that covers the flight, or null. */
function instrumentThrough(
  f: FactView<'pic.certificates' | 'pic.ratings'>,
  category: AircraftCategory,
  moment: Moment,
): string | null {
  const { inForce } = euStanding(f.get('pic.certificates'), moment);
  if (!inForce.some(({ instrument }) => instrument.includes(category))) return null;
  const best = ratingsOf(f.get('pic.ratings'), { kind: 'instrument', designator: null }, moment)[0];
  const through = best?.validThrough ?? null;
  return through !== null && moment.endsOnOrBefore(through) ? through : null;
}
