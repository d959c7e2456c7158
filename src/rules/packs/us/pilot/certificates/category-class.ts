import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { defineRule } from '../../../../engine/rule.js';
import type { CertificateFact } from '../../../../facts/person.js';
import { flyAlone } from '../../../leave-passengers.js';
import {
  exercised,
  isStudent,
  kindWords,
  LEVEL_WORDS,
  practicalTest,
  rated,
  standingOf,
} from '../shared/certificates.js';
import { canStillAct } from '../../../common/people/plans.js';
import { suspendedFromWords, validThroughWords } from '../../../common/people/standing.js';

/** Renewing the highest ended certificate that would open the flight. */
function renewal(
  ended: readonly CertificateFact[],
  opens: (one: CertificateFact) => boolean,
  moment: Moment,
): Remedy[] {
  const last = ended.find(opens);
  if (!last || !canStillAct(moment)) return [];
  const renewed = {
    ...last,
    id: 'planned:renew-certificate',
    issuedOn: moment.knowledgeDate(),
    validThrough: null,
  };
  return [
    {
      act: 'renew-certificate',
      title: `Renew the ${LEVEL_WORDS[last.level]} certificate and show it to the club.`,
      by: 'member',
      effects: [{ op: 'append', fact: 'pic.certificates', value: renewed }],
    },
  ];
}

/**
 * 14 CFR 61.3(a) and 61.31(d): the pilot in command holds a pilot certificate, in force, with the category and class
 * rating of the aircraft. A student pilot flies alone under 61.87 instead, which `student.solo` judges.
 */
export const certificateCategoryClass = defineRule({
  id: 'certificate.category_class',
  title: 'Pilot certificate with category and class rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    rated: {
      status: 'met',
      says: 'The {level} certificate carries the rating for this aircraft ({kind}){through}.',
    },
    'student-alone': {
      status: 'not-applicable',
      says: 'A student pilot alone aboard needs no rating; the rules for student solo flight decide.',
    },
    'student-not-alone': {
      status: 'short',
      says: 'A student pilot may act as pilot in command only when alone aboard; {aboard} are planned.',
    },
    suspended: {
      status: 'short',
      says: 'The pilot certificate is suspended {span}; only the end of the suspension opens this flight.',
    },
    ended: {
      status: 'short',
      says: 'The pilot certificate ended on {endedOn}; it must be renewed before this flight.',
    },
    none: {
      status: 'short',
      says: 'No pilot certificate of the pilot in command in force on the day of the flight is on record; an instructor must act as such, or another pilot who holds one.',
    },
    'not-rated': {
      status: 'short',
      says: 'The {level} certificate carries no rating for this aircraft ({kind}).',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.3(a), 61.31(d)',
        status: 'seen',
        reading:
          'A suspension counts from its first to its last day and stops every pilot certificate of the person. Supervised solo flight towards an additional rating (61.31(d)(2)) is not offered: the strict reading asks for the rating.',
      },
      judge(f, moment, _p, take) {
        const type = f.get('aircraft.type');
        const certificates = f.get('pic.certificates');
        const standing = standingOf(certificates, moment);
        const { suspended, ended } = standing;
        if (suspended) {
          const span = suspended.to ? `from ${suspended.from} to ${suspended.to}` : `since ${suspended.from}`;
          return take('suspended', { span });
        }
        const best = exercised(standing, type);
        if (!best) {
          if (ended.length === 0) return take('none');
          const endedOn = ended
            .map(({ validThrough }) => validThrough!)
            .sort()
            .at(-1)!;
          const opens = (one: CertificateFact) => (one.level === 'student' ? f.crew.alone : rated(one, type));
          return take('ended', { endedOn }, { remedies: () => renewal(standing.ended, opens, moment) });
        }
        const values = { level: LEVEL_WORDS[best.level], kind: kindWords(type) };
        if (isStudent(standing)) {
          if (f.crew.alone) return take('student-alone');
          return take(
            'student-not-alone',
            { aboard: f.flight.personsOnBoard },
            { remedies: () => flyAlone(f) },
          );
        }
        if (rated(best, type)) {
          return take(
            'rated',
            { ...values, through: validThroughWords(best) + suspendedFromWords(certificates, moment) },
            {
              counted: [{ id: best.id, on: best.issuedOn, what: `${values.level} certificate` }],
            },
          );
        }
        const ratings = [...best.ratings, { category: type.category, class: type.class }];
        return take('not-rated', values, {
          remedies: () =>
            canStillAct(moment)
              ? [
                  {
                    act: 'add-class-rating',
                    title: `Pass the practical test for the rating (${values.kind}).`,
                    by: 'examiner',
                    effects: practicalTest('add-class-rating', best, { ratings }, type, moment),
                  },
                ]
              : [],
        });
      },
    },
  ],
});
