import { hireRule } from '../../common/people/hire.js';
import { EU_LEVELS } from './standing.js';

/** Part-FCL, FCL.105, FCL.205.A, FCL.305.A: a private or light aircraft licence is used without remuneration. */
export const hire = hireRule({
  id: 'certificate.easa.hire',
  citation: {
    text: 'Regulation (EU) No 1178/2011, FCL.105, FCL.205.A, FCL.305.A; Regulation (EU) No 965/2012, ORO.AOC.100',
    status: 'from memory',
    reading:
      'Cost-shared flights and introductory flights (Regulation (EU) No 965/2012, article 6(4a)) are not hire; the request says whether a flight is for hire.',
  },
  levels: EU_LEVELS,
  commercial: ['commercial', 'atp'],
  operator: 'the law about commercial air transport (operator certificate, Part-CAT)',
});
