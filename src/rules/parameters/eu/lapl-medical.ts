import { lawValue } from '../law-value.js';

/** Part-MED, MED.A.045(a)(4): how long a LAPL medical certificate lasts, by age. */
export const EU_LAPL_MEDICAL = [
  lawValue(
    'eu.medical.lapl-young-months',
    'LAPL, examined young: validity',
    'months',
    60,
    'MED.A.045(a)(4)(i)',
  ),
  lawValue(
    'eu.medical.lapl-young-until',
    'Age at which the first LAPL validity ends',
    'years',
    40,
    'MED.A.045(a)(4)(i)',
  ),
  lawValue(
    'eu.medical.lapl-young-cap',
    'Age at which a LAPL certificate issued young ends',
    'years',
    42,
    'MED.A.045(a)(4)(i)',
  ),
  lawValue('eu.medical.lapl-months', 'LAPL, examined later: validity', 'months', 24, 'MED.A.045(a)(4)(ii)'),
];
