import { instructorCertificateRule } from '../common/people/instructor-certificate.js';

/** Part-FCL, FCL.900, FCL.940. */
export const instructorCertificate = instructorCertificateRule({
  id: 'instructor.easa.certificate',
  citation: {
    text: 'Regulation (EU) No 1178/2011, FCL.900(a), FCL.915(b), FCL.940',
    status: 'from memory',
    reading:
      'The day the certificate ends is recorded as its printed end. That the instructor holds the rating taught is judged with the pilot in command. Restricted certificates are not told apart.',
  },
  months: 'eu.instructor.months',
});
