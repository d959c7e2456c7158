import { defineRule } from '../../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { exercised, practicalTest, rated, standingOf } from '../shared/certificates.js';
import { canStillAct } from '../../../common/people/plans.js';

/**
 * 14 CFR 61.3(e): under instrument flight rules the pilot in command holds the instrument rating for the category, or
 * an airline transport pilot certificate with the ratings of the aircraft.
 */
export const certificateInstrumentRating = defineRule({
  id: 'certificate.instrument_rating',
  title: 'Instrument rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    held: { status: 'met', says: 'The pilot in command holds {what}.' },
    missing: {
      status: 'short',
      says: 'Instrument flight rules need an instrument rating ({category}), which is not on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: '14 CFR 61.3(e)', status: 'seen' },
      judge(f, moment, _p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const type = f.get('aircraft.type');
        const standing = standingOf(f.get('pic.certificates'), moment);
        const byRating = standing.inForce.find((one) => one.instrument.includes(type.category));
        const byLevel = standing.inForce.find((one) => one.level === 'atp' && rated(one, type));
        const holder = byRating ?? byLevel;
        if (holder) {
          const what = byRating
            ? `an instrument rating (${type.category})`
            : 'an airline transport pilot certificate';
          return take('held', { what }, { counted: [{ id: holder.id, on: holder.issuedOn, what }] });
        }
        const best = exercised(standing, type);
        const instrument = [...(best?.instrument ?? []), type.category];
        return take(
          'missing',
          { category: type.category },
          {
            remedies: () => [
              CHANGE_TO_VFR,
              ...(best && best.level !== 'student' && canStillAct(moment)
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
