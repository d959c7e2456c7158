import { defineRule } from '../../../../engine/rule.js';
import { exercised, practicalTest, standingOf } from '../shared/certificates.js';
import { canStillAct } from '../../../common/people/plans.js';

/** 14 CFR 61.31(a): large aircraft, turbojets and others so certificated need a type rating. */
export const certificateTypeRating = defineRule({
  id: 'certificate.type_rating',
  title: 'Type rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    'not-needed': { status: 'not-applicable', says: 'This aircraft needs no type rating.' },
    held: { status: 'met', says: 'The certificate carries the type rating {type}.' },
    missing: { status: 'short', says: 'This aircraft needs the type rating {type}, which is not on record.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.31(a)',
        status: 'seen',
        reading: 'The authorization in lieu of a type rating (61.31(b)) is not taken into account.',
      },
      judge(f, moment, _p, take) {
        const type = f.get('aircraft.type');
        const needed = type.typeRating;
        if (needed === null) return take('not-needed');
        const standing = standingOf(f.get('pic.certificates'), moment);
        const holder = standing.inForce.find((certificate) => certificate.typeRatings.includes(needed));
        if (holder) {
          return take(
            'held',
            { type: needed },
            { counted: [{ id: holder.id, on: holder.issuedOn, what: `type rating ${needed}` }] },
          );
        }
        const best = exercised(standing, type);
        const typeRatings = [...(best?.typeRatings ?? []), needed];
        return take(
          'missing',
          { type: needed },
          {
            remedies: () =>
              best && canStillAct(moment)
                ? [
                    {
                      act: 'add-type-rating',
                      title: `Pass the practical test for the type rating ${needed}.`,
                      by: 'examiner',
                      effects: practicalTest('add-type-rating', best, { typeRatings }, type, moment),
                    },
                  ]
                : [],
          },
        );
      },
    },
  ],
});
