import { instructorCertificateRule } from '../common/people/instructor-certificate.js';

/** CARs 401.61 to 401.72, standard 421.65. */
export const instructorRating = instructorCertificateRule({
  id: 'instructor.canada.rating',
  citation: {
    text: 'CARs 401.61, 401.69; standard 421.65',
    status: 'seen',
    reading:
      'The day the rating ends is recorded as its printed end: the day before the first of the month named. The supervision that a class 4 instructor needs is left to the club.',
  },
  months: 'ca.instructor.months',
});
