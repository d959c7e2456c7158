import { amendedLawValue, unchanged } from '../law-value.js';

const BEFORE = 'CARs 401.05(3) before SOR/2025-241';
const SINCE = 'CARs 401.05(3); SOR/2025-241, in force 2025-12-17';

/** CARs 401.05(3): recent instrument experience. */
export const CA_INSTRUMENT = [
  amendedLawValue(
    'ca.instrument.check-months',
    'Months for which an instrument flight test or proficiency check counts',
    'months',
    unchanged(24, 'CARs 401.05(3)'),
  ),
  amendedLawValue(
    'ca.instrument.free-calendar-months',
    'Calendar months after the check in which nothing more is asked',
    'calendar-months',
    [
      { from: null, value: 12, reference: BEFORE },
      { from: '2025-12-17', value: 6, reference: SINCE },
    ],
    'from memory',
  ),
  amendedLawValue(
    'ca.instrument.months',
    'Months in which approaches count after that',
    'months',
    unchanged(6, 'CARs 401.05(3)'),
  ),
  amendedLawValue('ca.instrument.approaches', 'Approaches needed', 'count', unchanged(6, 'CARs 401.05(3)')),
  amendedLawValue(
    'ca.instrument.hours',
    'Hours of instrument time needed besides; none since 2025-12-17',
    'hours',
    [
      { from: null, value: 6, reference: BEFORE },
      { from: '2025-12-17', value: 0, reference: SINCE },
    ],
    'from memory',
  ),
];
