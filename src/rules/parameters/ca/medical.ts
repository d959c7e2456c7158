import { amendedLawValue, unchanged } from '../law-value.js';

const TABLE = 'CARs 404.04(6)';

/** CARs 404.04: how long a medical certificate lasts, by what is flown on it and by age; to the end of the month. */
export const CA_MEDICAL = [
  amendedLawValue(
    'ca.medical.age-years',
    'Age on the day of the examination from which durations are shorter',
    'years',
    unchanged(40, TABLE),
  ),
  amendedLawValue(
    'ca.medical.private-younger',
    'Private licence, below that age',
    'months',
    unchanged(60, TABLE),
  ),
  amendedLawValue(
    'ca.medical.private-older',
    'Private licence, from that age',
    'months',
    unchanged(24, TABLE),
  ),
  amendedLawValue(
    'ca.medical.recreational-younger',
    'Recreational permit, below that age',
    'months',
    unchanged(60, TABLE),
  ),
  amendedLawValue(
    'ca.medical.recreational-older',
    'Recreational permit, from that age',
    'months',
    unchanged(24, TABLE),
  ),
  amendedLawValue(
    'ca.medical.student',
    'Student pilot permit, any age',
    'months',
    unchanged(60, 'CARs 404.04(6), standard 421.19(2)'),
  ),
  amendedLawValue(
    'ca.medical.hire-younger',
    'Carriage for hire, below that age',
    'months',
    unchanged(12, TABLE),
  ),
  amendedLawValue(
    'ca.medical.hire-older',
    'Carriage of passengers for hire by a single pilot, from that age',
    'months',
    unchanged(6, 'CARs 404.04(6.2)'),
  ),
];
