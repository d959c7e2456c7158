import { addDays } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import { defineRule } from '../../engine/rule.js';
import type { CertificateFact } from '../../facts/person.js';
import { touchesNight } from '../../sky/nights.js';
import { countLandings, landingsRemedies } from '../../packs/common/shared/landing-count.js';

/**
 * Part-FCL, FCL.060(b): to carry passengers, or fly commercial air transport, the pilot in command needs three take-offs,
 * approaches and landings in the preceding 90 days in the type or class; by night one of each by night, or an instrument
 * rating. European night runs from the end of evening to the beginning of morning civil twilight (FCL.010).
 */
export const easaPassengers1 = defineRule({
  id: 'recency.easa.passengers',
  title: 'Recent take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'pic.certificates', 'aircraft.type'],
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
      says: '{takeoffs} take-offs and {landings} landings in the preceding {days} days; by night the instrument rating stands for one by night.',
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
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.060(b)',
        status: 'seen',
        reading:
          'The text of 2011 was seen; later amendments are not checked. A landing exactly 90 days before counts. The log ' +
          'keeps night landings from an hour after sunset: short of civil night south of 55 degrees, longer in a northern summer.',
      },
      judge(f, moment, p, take) {
        if (f.crew.passengers === 0 && !f.flight.forHire) return take('nobody-carried');
        const type = f.get('aircraft.type');
        const log = f.get('pic.log');
        const days = p.number('eu.passenger-recency.days');
        const through = (on: string) => addDays(on, days);
        const byDay = { needed: p.number('eu.passenger-recency.count'), through, night: false };
        const byNight = { needed: p.number('eu.passenger-recency.night-count'), through, night: true };
        const day = countLandings(log, type, moment, byDay);
        const night = countLandings(log, type, moment, byNight);
        const dark = !night.enough && touchesNight(moment, f.flight.route, 'civil');
        const rated = dark && holdsInstrumentRating(f.get('pic.certificates'), type.category, moment);
        const values = { takeoffs: day.takeoffs, landings: day.landings, needed: byDay.needed, days };
        if (!day.enough) {
          const asked = { ...byDay, night: dark && !rated };
          return take('short', values, {
            counted: day.counted,
            remedies: () => landingsRemedies(type, f, moment, asked),
          });
        }
        if (dark && !rated) {
          const found = { takeoffs: night.takeoffs, landings: night.landings, needed: byNight.needed, days };
          return take('short-by-night', found, {
            counted: night.counted,
            remedies: () => landingsRemedies(type, f, moment, byNight),
          });
        }
        const serving = { ...values, through: day.through ?? '' };
        return rated
          ? take('instrument-rating', serving, {
              counted: day.counted,
              conditions: [
                'Make sure that the instrument rating is valid on the day; its revalidation is not on record here.',
              ],
            })
          : take('enough', serving, { counted: day.counted });
      },
    },
  ],
});

/** An instrument rating on a licence that stands throughout the flight. */
function holdsInstrumentRating(
  certificates: readonly CertificateFact[],
  category: CertificateFact['instrument'][number],
  moment: Moment,
): boolean {
  return certificates.some(
    (certificate) =>
      certificate.instrument.includes(category) &&
      moment.startsOnOrAfter(certificate.issuedOn) &&
      (certificate.validThrough === null || moment.endsOnOrBefore(certificate.validThrough)) &&
      certificate.suspensions.every(
        ({ from, to }) =>
          moment.endsOnOrBefore(addDays(from, -1)) || (to !== null && moment.startsOnOrAfter(addDays(to, 1))),
      ),
  );
}
