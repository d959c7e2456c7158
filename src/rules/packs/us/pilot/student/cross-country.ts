import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { EndorsementFact } from '../../../../facts/person.js';
import { defineRule } from '../../../../engine/rule.js';
import { isStudent, standingOf } from '../shared/certificates.js';
import { fromOrigin, roundNm } from '../../../common/shared/distance.js';
import {
  countedEndorsement,
  endorsed,
  endorsementFor,
  type Wanted,
} from '../../../common/people/endorsements.js';
import { stayLocal } from '../../../common/shared/flight-changes.js';
import { canStillAct, wouldServe } from '../../../common/people/plans.js';

/**
 * 14 CFR 61.93: a student flying solo farther than 25 nautical miles from the airfield of departure, or landing anywhere
 * else, needs cross-country training endorsed for the make and model and an endorsement of the planning of the flight.
 * Exceptions: another airport within 25 NM (b)(1), and a repeated route within 50 NM (b)(2), each endorsed by name.
 */
export const studentSoloCrossCountry = defineRule({
  id: 'student.solo.cross_country',
  title: 'Student solo cross-country flight',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.endorsements', 'aircraft.type'],
  parameters: ['us.student.local-nm', 'us.student.repeated-route-nm', 'us.student.solo-days'],
  branches: {
    'not-student': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a student certificate.',
    },
    local: {
      status: 'met',
      says: 'The flight returns to {origin} and lands nowhere else, so it needs no cross-country endorsement.',
    },
    'other-airport': {
      status: 'met',
      says: 'Endorsed for solo flights to {places}, within {near} NM of {origin}{through}.',
    },
    'repeated-route': {
      status: 'met',
      says: 'Endorsed for the repeated route to {places}, within {far} NM of {origin}.',
    },
    endorsed: {
      status: 'met',
      says: 'Cross-country training and the planning of this flight ({places}, up to {nm} NM) are endorsed.',
    },
    short: {
      status: 'short',
      says: 'The flight lands at {places}, up to {nm} NM from {origin}; missing: {missing}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.93(a) to (c)',
        status: 'seen',
        reading:
          'The planning endorsement counts while the solo endorsement would (90 days) and where it lists airfields, for those alone; that it was written for this very flight is a condition. Both exceptions need the airfield by name, and one exception must cover every landing. The distance is measured from the airfield of departure.',
      },
      judge(f, moment, p, take) {
        if (!isStudent(standingOf(f.get('pic.certificates'), moment))) return take('not-student');
        const near = p.number('us.student.local-nm');
        const far = p.number('us.student.repeated-route-nm');
        const days = p.number('us.student.solo-days');
        const { origin, elsewhere, farthestNm } = fromOrigin(f.flight.route);
        if (elsewhere.length === 0)
          return take(
            'local',
            { origin: origin.code },
            { conditions: [`Stay within ${near} NM of ${origin.code}.`] },
          );

        const { makeModel } = f.get('aircraft.type');
        const endorsements = f.get('pic.endorsements');
        const codes = [...new Set(elsewhere.map(({ field }) => field.code))].sort();
        const values = { origin: origin.code, places: codes.join(', '), nm: roundNm(farthestNm), near, far };
        const find = (wanted: Wanted) => endorsementFor(endorsements, moment, wanted);
        const each = (kind: 'solo-other-airport-25nm' | 'solo-repeated-route-50nm') => {
          const found = codes.map((code) => find({ kind, airfields: [code], named: true }));
          return found.every((one) => one !== null) ? found : null;
        };

        const others = farthestNm <= near ? each('solo-other-airport-25nm') : null;
        if (others) {
          const counted = others.map((one) => countedEndorsement(one, 'solo to another airport'));
          return take('other-airport', { ...values, through: throughWords(others) }, { counted });
        }
        const training = trainingIn(makeModel);
        const trained = find(training);
        const routes = farthestNm <= far && trained ? each('solo-repeated-route-50nm') : null;
        if (routes) {
          const counted = routes.map((one) => countedEndorsement(one, 'repeated route'));
          return take('repeated-route', values, {
            counted: [countedEndorsement(trained!, 'cross-country training'), ...counted],
          });
        }
        const planning: Wanted = {
          kind: 'solo-cross-country-flight',
          airfields: codes,
          withinDays: days,
        };
        const planned = find(planning);
        if (trained && planned) {
          return take('endorsed', values, {
            counted: [
              countedEndorsement(trained, 'cross-country training'),
              countedEndorsement(planned, 'planning of the flight'),
            ],
            conditions: [
              `Make sure that the planning endorsement of ${planned.on} was given for this flight; one for an earlier flight does not serve.`,
            ],
          });
        }
        const missing = [
          ...(trained ? [] : [`a cross-country endorsement for the ${makeModel}`]),
          ...(planned ? [] : ['an instructor’s endorsement of the planning of this flight']),
        ];
        const wanted = [...(trained ? [] : [training]), ...(planned ? [] : [planning])];
        return take(
          'short',
          { ...values, missing: missing.join(' and ') },
          {
            remedies: () => [
              ...crossCountry(moment, wanted, days),
              ...(farthestNm <= near ? otherAirport(moment, codes) : []),
              stayLocal(f.flight.route),
            ],
          },
        );
      },
    },
  ],
});

/** '; good through 2027-05-31', for the end of a sentence: the first of them to run out; empty where none does. */
function throughWords(endorsements: readonly (EndorsementFact | null)[]): string {
  const ends = endorsements.flatMap((one) => one?.expiresOn ?? []).sort();
  return ends[0] === undefined ? '' : `; good through ${ends[0]}`;
}

/** The training endorsement names the make and model (61.93(c)(2)). */
const trainingIn = (makeModel: string): Wanted => ({ kind: 'solo-cross-country-training', makeModel });

function crossCountry(moment: Moment, wanted: readonly Wanted[], days: number): Remedy[] {
  if (!wouldServe(moment, (today) => addDays(today, days))) return [];
  const training = wanted.some(({ kind }) => kind === 'solo-cross-country-training');
  return [
    {
      act: training ? 'get-endorsement-solo-cross-country' : 'get-endorsement-solo-cross-country-flight',
      title: training
        ? 'Train cross-country with an instructor, be endorsed, and have the planning of this flight reviewed and endorsed.'
        : 'Have an instructor review and endorse the planning of this flight.',
      by: 'instructor',
      effects: wanted.map((one) => endorsed(moment, one)),
    },
  ];
}

function otherAirport(moment: Moment, codes: readonly string[]): Remedy[] {
  if (!canStillAct(moment)) return [];
  return [
    {
      act: 'get-endorsement-solo-other-airport-25nm',
      title: `Fly to ${codes.join(', ')} with an instructor and be endorsed for solo flights there.`,
      by: 'instructor',
      effects: [endorsed(moment, { kind: 'solo-other-airport-25nm', airfields: codes })],
    },
  ];
}
