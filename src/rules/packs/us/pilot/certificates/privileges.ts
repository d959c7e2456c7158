import { defineRule } from '../../../../engine/rule.js';
import { touchesNight } from '../../../../sky/nights.js';
import { exercised, LEVEL_WORDS, practicalTest, standingOf } from '../shared/certificates.js';
import { fromOrigin, roundNm } from '../../../common/shared/distance.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { FLY_WITHOUT_HIRE } from '../../../common/shared/flight-changes.js';
import { canStillAct } from '../../../common/people/plans.js';

/**
 * 14 CFR 61.113(a), 61.133: carrying persons or property for hire takes a commercial or airline transport certificate;
 * without an instrument rating a commercial pilot carries passengers for hire in an airplane or powered-lift only by day
 * and within 50 nautical miles. Flights without hire ask for no more than the rating.
 */
export const certificatePrivileges = defineRule({
  id: 'certificate.privileges',
  title: 'Certificate level for the flight',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: ['us.commercial.no-instrument-nm', ...NIGHT_PARAMETERS],
  branches: {
    'not-for-hire': {
      status: 'not-applicable',
      says: 'Nobody and nothing is carried for hire, so the rating itself is enough.',
    },
    held: { status: 'met', says: 'The {level} certificate allows carriage for hire.' },
    'level-needed': {
      status: 'short',
      says: 'Carriage for hire needs a commercial or airline transport pilot certificate; {level} is on record.',
    },
    'no-instrument-rating': {
      status: 'short',
      says: 'Without an instrument rating, passengers are carried for hire only by day and within {limit} NM; this flight {exceeds}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.113(a), 61.133(a), (b)(1)',
        status: 'from memory',
        reading:
          'Sharing the operating expenses in equal parts (61.113(c)) is not hire; the request says whether a flight is for hire. Night is that of 14 CFR 1.1.',
      },
      judge(f, moment, p, take) {
        if (!f.flight.forHire) return take('not-for-hire');
        const type = f.get('aircraft.type');
        const standing = standingOf(f.get('pic.certificates'), moment);
        const best = exercised(standing, type);
        const level = best ? LEVEL_WORDS[best.level] : 'none in force';
        if (!best || (best.level !== 'commercial' && best.level !== 'atp'))
          return take('level-needed', { level }, { remedies: () => [FLY_WITHOUT_HIRE] });
        const counted = [{ id: best.id, on: best.issuedOn, what: `${level} certificate` }];
        const limited =
          best.level === 'commercial' &&
          (type.category === 'airplane' || type.category === 'powered-lift') &&
          f.crew.passengers > 0 &&
          !standing.inForce.some(({ instrument }) => instrument.includes(type.category));
        if (!limited) return take('held', { level }, { counted });
        const limit = p.number('us.commercial.no-instrument-nm');
        const { farthestNm } = fromOrigin(f.flight.route);
        const far = farthestNm > limit;
        if (!far && !touchesNight(moment, f.flight.route, 'civil')) {
          const conditions = downBeforeNight(moment, f.flight.route, 'civil', p);
          return take('held', { level }, { counted, conditions });
        }
        const instrument = [...best.instrument, type.category];
        return take(
          'no-instrument-rating',
          { limit, exceeds: far ? `goes ${roundNm(farthestNm)} NM` : 'is partly at night' },
          {
            remedies: () => [
              ...(far ? [] : flyByDay(moment, f.flight.route, 'civil')),
              FLY_WITHOUT_HIRE,
              ...(canStillAct(moment)
                ? [
                    {
                      act: 'add-instrument-rating',
                      title: 'Pass the practical test for the instrument rating.',
                      by: 'examiner' as const,
                      effects: practicalTest('add-instrument-rating', best, { instrument }, type, moment),
                    },
                  ]
                : []),
            ],
          },
        );
      },
    },
  ],
});
