import { addPlainMonths } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule, type Citation } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { InstructorFact } from '../../../facts/person.js';
import { ratingToTeach } from './instructor-rating.js';
import { wouldServe } from './plans.js';
import { kindWords, spanWords, suspensionDuring } from './standing.js';

/**
 * An instructor's certificate or rating that ends on the day endorsed on it: it is of the kind taught, not suspended, and
 * valid to the end of the lesson.
 */
export function instructorCertificateRule(of: {
  id: string;
  citation: Citation;
  /** Parameter: months for which it is issued at least. */
  months: string;
}) {
  return defineRule({
    id: of.id,
    title: 'Instructor certificate for the aircraft',
    weight: 'law',
    binds: 'instructor',
    reads: ['instructor.instructor', 'aircraft.type'],
    parameters: [of.months],
    branches: {
      'no-instruction': { status: 'not-applicable', says: 'No instruction is given on this flight.' },
      valid: { status: 'met', says: 'The instructor’s certificate ({kind}) is valid through {through}.' },
      'own-lesson': {
        status: 'short',
        says: 'The member is named as instructor of the same flight; name somebody else.',
      },
      'no-certificate': {
        status: 'short',
        says: 'No instructor certificate is on record for the person named; name an instructor.',
      },
      suspended: {
        status: 'short',
        says: 'The instructor certificate is suspended {span}; name another instructor.',
      },
      'not-rated': {
        status: 'short',
        says: 'The instructor certificate does not allow teaching in this aircraft ({kind}); name another instructor.',
      },
      ended: {
        status: 'short',
        says: 'The instructor certificate ended on {through}; it must be revalidated or renewed, or another instructor named.',
      },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge(f, moment, p, take) {
          if (!f.crew.instruction) return take('no-instruction');
          if (f.flight.instructorId !== null && f.flight.instructorId === f.crew.learnerId)
            return take('own-lesson');
          const certificates = f
            .get('instructor.instructor')
            .filter((certificate) => moment.startsOnOrAfter(certificate.issuedOn));
          const suspended = suspensionDuring(
            certificates.flatMap(({ suspensions }) => suspensions),
            moment,
          );
          if (suspended) return take('suspended', { span: spanWords(suspended) });
          if (certificates.length === 0) return take('no-certificate');
          const type = f.get('aircraft.type');
          const needed = ratingToTeach(type);
          const kind = kindWords(type);
          const rated = certificates.filter(({ ratings }) => needed !== null && ratings.includes(needed));
          if (rated.length === 0) return take('not-rated', { kind });
          const dated = rated
            .filter(({ printedEndOn }) => printedEndOn !== null)
            .sort((a, b) =>
              a.printedEndOn !== b.printedEndOn
                ? a.printedEndOn! < b.printedEndOn!
                  ? 1
                  : -1
                : a.id < b.id
                  ? -1
                  : 1,
            );
          const best = dated[0];
          if (best && moment.endsOnOrBefore(best.printedEndOn!)) {
            const counted = [{ id: best.id, on: best.issuedOn, what: 'instructor certificate' }];
            return take('valid', { kind, through: best.printedEndOn! }, { counted });
          }
          if (dated.length < rated.length)
            need(
              null,
              'instructor.instructor',
              'until when the instructor certificate is valid is not on record',
            );
          const months = p.number(of.months);
          const remedies = () => renew(best!, months, moment);
          return take('ended', { through: best!.printedEndOn! }, { remedies });
        },
      },
    ],
  });
}

/** The instructor renews it now; nothing when that would no longer serve the flight. */
function renew(certificate: InstructorFact, months: number, moment: Moment): Remedy[] {
  const through = (today: string) => addPlainMonths(today, months, 'clamp-to-month-end');
  if (!wouldServe(moment, through)) return [];
  const on = moment.knowledgeDate();
  return [
    {
      act: 'renew-instructor-certificate',
      title: 'The instructor has the instructor certificate renewed before teaching.',
      by: 'examiner',
      effects: [
        {
          op: 'append',
          fact: 'instructor.instructor',
          value: {
            ...certificate,
            id: 'planned:renew-instructor-certificate',
            issuedOn: on,
            printedEndOn: through(on),
          },
        },
      ],
    },
  ];
}
