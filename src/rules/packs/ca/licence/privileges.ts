import { hireRule } from '../../common/people/hire.js';
import { CA_LEVELS } from './standing.js';

/** CARs 401.28, 401.30: a private licence is not used for hire. */
export const hire = hireRule({
  id: 'certificate.canada.hire',
  citation: {
    text: 'CARs 401.28, 401.30, 700.02',
    status: 'from memory',
    reading:
      'Reimbursement and shared costs under 401.28 are not hire; the request says whether a flight is for hire.',
  },
  levels: CA_LEVELS,
  commercial: ['commercial', 'atp'],
  operator: 'the law about commercial air services (part VII of the CARs)',
});
