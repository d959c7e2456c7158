import { amendedLawValue, unchanged } from '../law-value.js';

/** First day of the Canadian Aviation Regulations; what was law before is not held. */
export const CARS_FROM = 'ca.cars.applies-from';

/** SOR/96-433. */
export const CA_SCOPE = [
  amendedLawValue(
    CARS_FROM,
    'First day on which the Canadian Aviation Regulations apply',
    'date',
    unchanged('1996-10-10', 'SOR/96-433'),
    'from memory',
  ),
];

/** CARs 401.22: the recreational pilot permit. */
export const CA_PERMIT = [
  amendedLawValue(
    'ca.recreational.passengers',
    'Passengers carried on a recreational permit, at most',
    'count',
    unchanged(1, 'CARs 401.22'),
  ),
  amendedLawValue(
    'ca.recreational.seats',
    'Seats of an aeroplane flown on a recreational permit, at most',
    'count',
    unchanged(4, 'CARs 401.22'),
  ),
];

const CLASS_4 = 'standard 421.65: first day of the thirteenth month';

/** CARs 421.65: flight instructor ratings. */
export const CA_INSTRUCTOR = [
  amendedLawValue(
    'ca.instructor.months',
    'Months for which a flight instructor rating is valid, at least (class 4)',
    'months',
    unchanged(12, CLASS_4),
  ),
];
