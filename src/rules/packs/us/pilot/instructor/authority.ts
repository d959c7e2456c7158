import { defineRule } from '../../../../engine/rule.js';
import { ratingToTeach } from '../../../common/people/instructor-rating.js';
import { kindWords, suspensionDuring } from '../shared/certificates.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';

/**
 * 14 CFR 61.195(b) and (c): instruction in an aircraft takes an instructor certificate for its category and class;
 * under instrument flight rules an instrument instructor rating as well.
 */
export const instructorAuthority = defineRule({
  id: 'instructor.authority',
  title: 'Instructor certificate for the aircraft',
  weight: 'law',
  binds: 'instructor',
  reads: ['instructor.instructor', 'aircraft.type'],
  parameters: [],
  branches: {
    'no-instruction': { status: 'not-applicable', says: 'No instruction is given on this flight.' },
    authorised: {
      status: 'met',
      says: 'The instructor holds the instructor rating for this aircraft ({kind}).',
    },
    'own-lesson': {
      status: 'short',
      says: 'The member is named as instructor of the same flight; name somebody else.',
    },
    'no-certificate': {
      status: 'short',
      says: 'No instructor certificate in force on the day of the flight is on record for the person named; name an instructor.',
    },
    suspended: {
      status: 'short',
      says: 'The instructor certificate is suspended {span}; name another instructor.',
    },
    'not-rated': {
      status: 'short',
      says: 'The instructor certificate carries no rating to teach in this aircraft ({kind}); name another instructor.',
    },
    'no-instrument': {
      status: 'short',
      says: 'Teaching under instrument flight rules needs an instrument instructor rating ({kind}), which is not on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.3(d), 61.195(b), (c)',
        status: 'from memory',
        reading:
          'Every dual flight under instrument flight rules counts as instrument instruction. The five hours in make and model for multiengine instruction (61.195(f)) are not judged.',
      },
      judge(f, moment, _p, take) {
        if (!f.crew.instruction) return take('no-instruction');
        if (f.flight.instructorId !== null && f.flight.instructorId === f.crew.learnerId)
          return take('own-lesson');
        const certificates = f
          .get('instructor.instructor')
          .filter((certificate) => moment.startsOnOrAfter(certificate.issuedOn))
          .sort((a, b) => (a.id < b.id ? -1 : 1));
        const suspended = suspensionDuring(
          certificates.flatMap(({ suspensions }) => suspensions),
          moment,
        );
        if (suspended) {
          const span = suspended.to ? `from ${suspended.from} to ${suspended.to}` : `since ${suspended.from}`;
          return take('suspended', { span });
        }
        if (certificates.length === 0) return take('no-certificate');
        const type = f.get('aircraft.type');
        const kind = kindWords(type);
        const needed = ratingToTeach(type);
        const holder = certificates.find(({ ratings }) => needed !== null && ratings.includes(needed));
        if (!holder) return take('not-rated', { kind });
        const instrument = certificates.some(
          ({ ratings }) => type.category === 'airplane' && ratings.includes('instrument-airplane'),
        );
        if (f.flight.flightRules === 'IFR' && !instrument)
          return take('no-instrument', { kind: type.category }, { remedies: () => [CHANGE_TO_VFR] });
        const counted = [{ id: holder.id, on: holder.issuedOn, what: 'instructor certificate' }];
        return take('authorised', { kind }, { counted });
      },
    },
  ],
});
