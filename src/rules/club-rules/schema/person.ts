/** A person: the pilot in command, the member who asks, or the instructor. What is dated after the flight does not count. */
import { addYears } from '../../calendar/dates.js';
import type { CertificateFact, CertificateLevel } from '../../facts/person.js';
import type { Entry, Reading } from './entry.js';
import { FLYING } from './flying.js';
import { lasts, newest, suspendedDuring } from './papers.js';

const LEVELS: readonly CertificateLevel[] = [
  'student',
  'sport',
  'recreational',
  'lapl',
  'private',
  'commercial',
  'atp',
];
/** Older than this nobody flies. */
const OLDEST = 130;

export const PERSON: readonly Entry[] = [
  {
    name: 'certificateLevel',
    type: 'string',
    words: ['none', ...LEVELS],
    own: ['certificates'],
    overTime: true,
    says: "Highest level among the pilot certificates in force; 'none' while none is, or one is suspended.",
    get: (r) => {
      const levels = inForce(r).map((one) => LEVELS.indexOf(one.level));
      return levels.length === 0 ? 'none' : LEVELS[Math.max(...levels)]!;
    },
  },
  {
    name: 'ratings',
    type: 'list<string>',
    own: ['certificates'],
    overTime: true,
    says: "Ratings on the certificates in force: 'airplane single-engine-land', 'instrument airplane', 'type SPRW'.",
    get: (r) => sorted(inForce(r).flatMap(ratingsOf)),
  },
  {
    name: 'instrumentRated',
    type: 'bool',
    own: ['certificates'],
    aircraft: ['type'],
    overTime: true,
    says: "Holds an instrument rating for the aircraft's category.",
    get: (r) => {
      const { category } = r.aircraft('type');
      return inForce(r).some((one) => one.instrument.includes(category));
    },
  },
  {
    name: 'isInstructor',
    type: 'bool',
    own: ['instructor'],
    overTime: true,
    says: 'Holds an instructor certificate that is not suspended. Whether it is current, the law’s own rule says.',
    get: (r) =>
      r
        .person('instructor')
        .some((one) => r.moment.startsOnOrAfter(one.issuedOn) && !suspendedDuring(one.suspensions, r.moment)),
  },
  {
    name: 'endorsements',
    type: 'list<string>',
    own: ['endorsements'],
    overTime: true,
    says: "Kinds of endorsements that stand for the whole flight: 'tailwheel', 'complex', 'solo', ...",
    get: (r) =>
      sorted(
        r
          .person('endorsements')
          .filter((one) => lasts(one, r.moment))
          .map((one) => one.kind),
      ),
  },
  {
    name: 'ageYears',
    type: 'int',
    unit: 'years',
    range: [0, OLDEST],
    own: ['birthDate'],
    overTime: true,
    says: 'Age at departure.',
    get: (r) => {
      const born = r.person('birthDate');
      let age = 0;
      // The birthdays are asked one by one, so that the moment remembers the next one and nothing else.
      while (age < OLDEST && r.moment.startsOnOrAfter(addYears(born, age + 1, 'roll-to-next-month')))
        age += 1;
      return age;
    },
  },
  {
    name: 'medicalClass',
    type: 'int',
    range: [0, 4],
    own: ['medicals'],
    overTime: true,
    says: 'Best class (1 is best) among medical certificates not withdrawn; 0 without one. Whether it still lasts, the law’s own rule says.',
    get: (r) => {
      const classes = medicals(r).map((one) => one.class);
      return classes.length === 0 ? 0 : Math.min(...classes);
    },
  },
  {
    name: 'medicalExamOn',
    type: 'Date',
    own: ['medicals'],
    overTime: true,
    says: 'Newest medical examination.',
    get: (r) =>
      newest(
        r,
        medicals(r).map((one) => ({ id: one.id, on: one.examOn })),
        'medical examination',
      ),
  },
  {
    name: 'flightReviewOn',
    type: 'Date',
    own: ['reviews'],
    overTime: true,
    says: 'Newest flight review, or check that was endorsed as one.',
    get: (r) =>
      newest(
        r,
        r.person('reviews').filter((one) => one.kind === 'flight-review' || one.endorsedAsReview),
        'flight review',
      ),
  },
  {
    name: 'clubCheckOn',
    type: 'Date',
    own: ['checkouts'],
    overTime: true,
    says: "Newest of the club's regular checks.",
    get: (r) =>
      newest(
        r,
        r.person('checkouts').filter((one) => one.kind === 'annual-check'),
        'club check',
      ),
  },
  {
    name: 'checkedOutInModel',
    type: 'bool',
    own: ['checkouts'],
    aircraft: ['type'],
    overTime: true,
    says: "A checkout in the aircraft's model stands for the whole flight.",
    get: (r) => {
      const { modelId } = r.aircraft('type');
      return r
        .person('checkouts')
        .some((one) => one.kind === 'model' && one.modelId === modelId && lasts(one, r.moment));
    },
  },
  {
    name: 'standing',
    type: 'string',
    words: ['good', 'arrears', 'suspended'],
    own: ['standing'],
    says: 'Standing with the club.',
    get: (r) => r.person('standing').state,
  },
  {
    name: 'memberSince',
    type: 'Date',
    own: ['standing'],
    says: 'First day of the membership.',
    get: (r) => r.person('standing').membershipFrom,
  },
  ...FLYING,
];

/** Certificates in force; none while one is suspended: a person holds one pilot certificate. */
function inForce(r: Reading): CertificateFact[] {
  const all = r.person('certificates');
  r.spend(all.length);
  if (
    suspendedDuring(
      all.flatMap((one) => one.suspensions),
      r.moment,
    )
  )
    return [];
  return all.filter((one) => lasts({ on: one.issuedOn, expiresOn: one.validThrough }, r.moment));
}

const ratingsOf = (one: CertificateFact): string[] => [
  ...one.ratings.map((rating) =>
    rating.class === 'none' ? rating.category : `${rating.category} ${rating.class}`,
  ),
  ...one.instrument.map((category) => `instrument ${category}`),
  ...one.typeRatings.map((type) => `type ${type}`),
];

const medicals = (r: Reading) =>
  r
    .person('medicals')
    .filter((one) => r.moment.startsOnOrAfter(one.examOn))
    .filter((one) => one.withdrawnOn === null || !r.moment.startsOnOrAfter(one.withdrawnOn));

const sorted = (words: readonly string[]): string[] => [...new Set(words)].sort();
