import { defineRule, type Citation } from '../../../engine/rule.js';
import type { CertificateLevel, RatingFact } from '../../../facts/person.js';
import { touchesNight } from '../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../shared/by-day.js';
import { canStillAct } from './plans.js';
import { standingAmong } from './standing.js';

/** A rating to fly at night, which the higher licences include. It does not end. */
export function nightRatingRule(of: {
  id: string;
  citation: Citation;
  levels: readonly CertificateLevel[];
  /** Licences that include it. */
  included: readonly CertificateLevel[];
  /** Permits to which it cannot be added. */
  never: readonly CertificateLevel[];
}) {
  return defineRule({
    id: of.id,
    title: 'Night rating',
    weight: 'law',
    binds: 'pilot',
    reads: ['pic.certificates', 'pic.ratings'],
    parameters: [...NIGHT_PARAMETERS],
    branches: {
      included: { status: 'met', says: 'The licence includes flying at night.' },
      held: { status: 'met', says: 'A night rating of {on} is on record.' },
      'by-day': { status: 'met', says: 'The flight is over by day, so no night rating is needed.' },
      missing: {
        status: 'short',
        says: 'Part of the flight is at night, and no night rating of the pilot in command is on record.',
      },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge(f, moment, p, take) {
          const { inForce } = standingAmong(of.levels, f.get('pic.certificates'), moment);
          const licence = inForce[0];
          if (licence && of.included.includes(licence.level))
            return take(
              'included',
              {},
              { counted: [{ id: licence.id, on: licence.issuedOn, what: 'licence' }] },
            );
          const closed = licence !== undefined && of.never.includes(licence.level);
          const ratings = f.peek('pic.ratings');
          const held =
            !closed && ratings.known
              ? ratings.value
                  .filter(({ kind, on }) => kind === 'night' && moment.startsOnOrAfter(on))
                  .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? -1 : 1))[0]
              : undefined;
          if (held)
            return take(
              'held',
              { on: held.on },
              { counted: [{ id: held.id, on: held.on, what: 'night rating' }] },
            );
          // Only now does the sun matter.
          const { route } = f.flight;
          if (!touchesNight(moment, route, 'civil'))
            return take('by-day', {}, { conditions: downBeforeNight(moment, route, 'civil', p) });
          if (!closed) f.get('pic.ratings');
          return take(
            'missing',
            {},
            {
              remedies: () => [
                ...flyByDay(moment, route, 'civil'),
                ...(!closed && licence && canStillAct(moment)
                  ? [
                      {
                        act: 'get-night-rating',
                        title: 'Complete the night training and have the night rating endorsed.',
                        by: 'instructor' as const,
                        effects: [
                          {
                            op: 'append' as const,
                            fact: 'pic.ratings' as const,
                            value: nightRating(moment.knowledgeDate()),
                          },
                        ],
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
}

const nightRating = (on: string): RatingFact => ({
  id: 'planned:get-night-rating',
  kind: 'night',
  designator: null,
  on,
  validThrough: null,
});
