import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { CertificateFact } from '../../../facts/person.js';
import { canStillAct } from '../../common/people/plans.js';
import { kindWords, lastEnd, rated, spanWords, validThroughWords } from '../../common/people/standing.js';
import { CA_LEVEL_WORDS, caStanding, flownOn } from './standing.js';

/**
 * CARs 401.03(1): the pilot in command holds a valid permit or licence with the class rating of the aircraft, and its type
 * rating where one is asked for.
 */
export const licence = defineRule({
  id: 'certificate.canada.licence',
  title: 'Permit or licence with class rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    rated: { status: 'met', says: 'The {level} carries the rating for this aircraft ({kind}){through}.' },
    student: {
      status: 'not-applicable',
      says: 'A student pilot permit carries no class rating; the limits of the permit decide.',
    },
    suspended: {
      status: 'short',
      says: 'The permit or licence is suspended {span}; only the end of the suspension opens this flight.',
    },
    ended: { status: 'short', says: 'The permit or licence ended on {endedOn}.' },
    none: {
      status: 'short',
      says: 'No Canadian permit or licence in force on the day of the flight is on record.',
    },
    'not-rated': { status: 'short', says: 'The {level} carries no rating for this aircraft ({kind}).' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.03(1), 401.12',
        status: 'seen',
        reading:
          'The last valid day is that of the aviation document booklet, where the club entered one. A suspension stops ' +
          'every permit and licence of the person. Foreign licence validations are recorded as the Canadian licence.',
      },
      judge(f, moment, _p, take) {
        const type = f.get('aircraft.type');
        const standing = caStanding(f.get('pic.certificates'), moment);
        if (standing.suspended) return take('suspended', { span: spanWords(standing.suspended) });
        const typed = type.typeRating;
        const serves = (one: CertificateFact): boolean =>
          rated(one, type) && (typed === null || one.typeRatings.includes(typed));
        const held = standing.inForce.find(serves) ?? flownOn(standing, type);
        if (!held) {
          const last = standing.ended[0];
          if (!last) return take('none');
          return take(
            'ended',
            { endedOn: lastEnd(standing.ended) },
            {
              remedies: () =>
                last.level === 'student' || rated(last, type)
                  ? reissued(
                      last,
                      'renew-certificate',
                      'Renew the document booklet and show it to the club.',
                      {},
                      moment,
                    )
                  : [],
            },
          );
        }
        if (held.level === 'student') return take('student');
        const kind = typed === null ? kindWords(type) : `${kindWords(type)}, type ${typed}`;
        const values = { level: CA_LEVEL_WORDS[held.level]!, kind };
        if (serves(held))
          return take(
            'rated',
            { ...values, through: validThroughWords(held) },
            {
              counted: [{ id: held.id, on: held.issuedOn, what: values.level }],
            },
          );
        const added: Partial<CertificateFact> = {
          ...(!rated(held, type) && {
            ratings: [...held.ratings, { category: type.category, class: type.class }],
          }),
          ...(typed !== null && { typeRatings: [...held.typeRatings, typed] }),
        };
        return take('not-rated', values, {
          remedies: () =>
            reissued(
              held,
              'add-class-rating',
              `Train for the rating (${kind}) and pass its flight test.`,
              added,
              moment,
            ),
        });
      },
    },
  ],
});

function reissued(
  from: CertificateFact,
  act: string,
  title: string,
  added: Partial<CertificateFact>,
  moment: Moment,
): Remedy[] {
  if (!canStillAct(moment)) return [];
  const value: CertificateFact = {
    ...from,
    ...{ id: `planned:${act}`, issuedOn: moment.knowledgeDate(), validThrough: null, suspensions: [] },
    ...added,
  };
  return [
    {
      act,
      title,
      by: act === 'renew-certificate' ? 'member' : 'examiner',
      effects: [{ op: 'append', fact: 'pic.certificates', value }],
    },
  ];
}
