import { addPlainMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { ReviewFact } from '../../../facts/person.js';
import { EU_RATINGS } from '../../../parameters/eu/licences.js';
import { canStillAct } from '../../common/people/plans.js';
import { euStanding, flownOn, licenceCategory } from '../licence/standing.js';
import { passProficiencyCheck } from '../proficiency-check.js';
import { isSingleEngine, ratingFor, ratingsOf, ratingWords } from './class-of.js';
import { enough, flownTowards, missingWords, remainingFlights, type Asked } from './revalidation-flights.js';

/**
 * Part-FCL, FCL.740.A: what revalidates the class rating before it ends. A single-engine piston or motor glider rating by
 * a proficiency check in its last three months, or by twelve hours with six in command, twelve take-offs and landings and
 * an hour of training in its last twelve; the others by a proficiency check. Advice: the rating itself is judged apart.
 */
export const revalidation = defineRule({
  id: 'rating.easa.revalidation',
  title: 'Revalidating the class rating',
  weight: 'advice',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.ratings', 'pic.log', 'pic.reviews', 'aircraft.type'],
  parameters: EU_RATINGS.map(({ id }) => id).filter((id) => id.startsWith('eu.revalidation.')),
  branches: {
    'no-rating': {
      status: 'not-applicable',
      says: 'No class rating with an end that lies ahead is on record for this aircraft.',
    },
    'not-yet': {
      status: 'not-applicable',
      says: 'The rating {rating} is valid through {through}; what revalidates it counts from {from}.',
    },
    'by-check': {
      status: 'met',
      says: 'The proficiency check of {on} revalidates the rating {rating}, which ends on {through}; have it endorsed.',
    },
    'by-experience': {
      status: 'met',
      says: 'Enough is flown to revalidate the rating {rating}, which ends on {through}; have it endorsed before.',
    },
    'to-do': {
      status: 'short',
      says: 'To revalidate the rating {rating} by {through}: {missing}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.740.A(a), (b)',
        status: 'seen',
        reading:
          'Months run back day for day from the last day endorsed. Training may be several flights; a proficiency check or skill test in the last twelve months stands for it. The class a check was flown in is not on record. What multi-engine and type ratings ask for besides the check is a condition. Hours in the other class of who holds land and sea ratings are not counted (stricter than FCL.740.A(b)(4), from memory). The owner of both a single-engine land and a motor glider rating may fly the hours in either.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        const licence = flownOn(euStanding(f.get('pic.certificates'), moment), type);
        const wanted =
          licence && licence.level !== 'lapl' && licence.level !== 'student' ? ratingFor(type) : null;
        if (!wanted) return take('no-rating');
        const ratings = f.get('pic.ratings');
        const through = ratingsOf(ratings, wanted, moment)[0]?.validThrough ?? null;
        if (through === null || !moment.endsOnOrBefore(through)) return take('no-rating');
        const back = (months: number): LocalDate => addPlainMonths(through, -months, 'clamp-to-month-end');
        const checkFrom = back(p.number('eu.revalidation.check-months'));
        const single = isSingleEngine(wanted);
        const from = single ? back(p.number('eu.revalidation.experience-months')) : checkFrom;
        const rating = ratingWords(wanted);
        if (!moment.startsOnOrAfter(from)) return take('not-yet', { rating, through, from });
        const checks = testsSince(f, type, from, moment);
        const check = checks.find(({ kind, on }) => kind === 'proficiency-check' && on >= checkFrom);
        if (check)
          return take(
            'by-check',
            { rating, through, on: check.on },
            {
              counted: [{ id: check.id, on: check.on, what: 'proficiency check' }],
              conditions: besides(type, single),
            },
          );
        const orCheck = `pass a proficiency check between ${checkFrom} and then`;
        const passes = () => passCheck(moment, checkFrom);
        if (!single) return take('to-do', { rating, through, missing: orCheck }, { remedies: passes });
        const asked: Asked = {
          tenths: p.number('eu.revalidation.hours') * 10,
          commandTenths: p.number('eu.revalidation.command-hours') * 10,
          landings: p.number('eu.revalidation.takeoffs-and-landings'),
          trainingTenths: checks.length > 0 ? 0 : p.number('eu.revalidation.training-hours') * 10,
        };
        const flown = flownTowards(f.get('pic.log'), type, ratings, from, moment);
        if (enough(flown, asked))
          return take('by-experience', { rating, through }, { counted: flown.counted });
        return take(
          'to-do',
          { rating, through, missing: `${missingWords(flown, asked)}; or ${orCheck}` },
          {
            counted: flown.counted,
            remedies: () => [...remainingFlights(type, flown, asked, from, moment), ...passes()],
          },
        );
      },
    },
  ],
});

/** FCL.740.A(a)(2), FCL.740.H(a)(2): what ratings of other than single-engine piston classes ask for besides the check. */
function besides({ category, engines, typeRating }: AircraftType, single: boolean): string[] {
  if (category === 'rotorcraft')
    return ['Make sure of two hours in the type within the validity of the rating.'];
  if (single || (engines === 1 && typeRating === null)) return [];
  return ['Make sure of ten route sectors within the validity of the rating, or one with an examiner.'];
}

/** Checks and skill tests since a day and before the flight, newest first. */
function testsSince(
  f: FactView<'pic.reviews'>,
  type: AircraftType,
  from: LocalDate,
  moment: Moment,
): ReviewFact[] {
  return f
    .get('pic.reviews')
    .filter(({ kind, on }) => (kind === 'proficiency-check' || kind === 'practical-test') && on >= from)
    .filter(
      ({ category }) => category === null || category === type.category || category === licenceCategory(type),
    )
    .filter(({ on }) => moment.startsOnOrAfter(on))
    .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1));
}

/** Passed now; nothing before its time. A flight that still lies ahead ends before the rating does, so it is never too late. */
function passCheck(moment: Moment, from: LocalDate): Remedy[] {
  const on = moment.knowledgeDate();
  if (!canStillAct(moment) || on < from) return [];
  return [passProficiencyCheck(moment)];
}
