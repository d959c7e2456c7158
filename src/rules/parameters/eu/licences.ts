import { lawValue } from '../law-value.js';

/** First day of Part-FCL; what European law said before is not held. */
export const PART_FCL_FROM = 'eu.part-fcl.applies-from';

/** Regulation (EU) No 1178/2011, article 12(1). */
export const EU_SCOPE = [
  lawValue(
    PART_FCL_FROM,
    'First day on which Part-FCL applies',
    'date',
    '2012-04-08',
    'Regulation (EU) No 1178/2011, article 12(1)',
    'from memory',
  ),
];

/** Part-FCL, FCL.105.A: the light aircraft licence. */
export const EU_LAPL = [
  lawValue(
    'eu.lapl.takeoff-lb',
    'Maximum take-off mass of the aircraft, in pounds (2 000 kg)',
    'lb',
    4409,
    'FCL.105.A(a)',
  ),
  lawValue('eu.lapl.passengers', 'Passengers, at most', 'count', 3, 'FCL.105.A(a)'),
  lawValue('eu.lapl.persons', 'Persons on board, at most', 'count', 4, 'FCL.105.A(a)'),
  lawValue(
    'eu.lapl.command-hours',
    'Hours in command since the licence was issued before passengers are carried',
    'hours',
    10,
    'FCL.105.A(b)',
  ),
];

/** Part-FCL, FCL.740 and FCL.740.A: class and type ratings. */
export const EU_RATINGS = [
  lawValue(
    'eu.rating.single-engine-years',
    'Years for which a single-pilot single-engine class rating is valid',
    'years',
    2,
    'FCL.740(a)',
  ),
  lawValue('eu.rating.other-years', 'Years for which any other rating is valid', 'years', 1, 'FCL.740(a)'),
  lawValue(
    'eu.revalidation.experience-months',
    'Months before the end of a rating in which experience counts towards revalidating it',
    'months',
    12,
    'FCL.740.A(b)(1)(ii)',
  ),
  lawValue(
    'eu.revalidation.check-months',
    'Months before the end of a rating in which a proficiency check revalidates it',
    'months',
    3,
    'FCL.740.A(a)(1), (b)(1)(i)',
  ),
  lawValue('eu.revalidation.hours', 'Flight time needed', 'hours', 12, 'FCL.740.A(b)(1)(ii)'),
  lawValue('eu.revalidation.command-hours', 'Of these, in command', 'hours', 6, 'FCL.740.A(b)(1)(ii)'),
  lawValue(
    'eu.revalidation.takeoffs-and-landings',
    'Take-offs, and landings, needed',
    'count',
    12,
    'FCL.740.A(b)(1)(ii)',
  ),
  lawValue(
    'eu.revalidation.training-hours',
    'Refresher training with an instructor needed',
    'hours',
    1,
    'FCL.740.A(b)(1)(ii)',
  ),
];

/** Part-FCL, FCL.140.A: recency of the light aircraft licence. */
export const EU_LAPL_RECENCY = [
  lawValue('eu.lapl.recency-months', 'Months that are looked back over', 'months', 24, 'FCL.140.A(a)'),
  lawValue('eu.lapl.recency-hours', 'Flight time needed in them', 'hours', 12, 'FCL.140.A(a)(1)'),
  lawValue(
    'eu.lapl.recency-takeoffs-and-landings',
    'Take-offs, and landings, needed in them',
    'count',
    12,
    'FCL.140.A(a)(1)',
  ),
  lawValue(
    'eu.lapl.recency-training-hours',
    'Refresher training with an instructor needed in them',
    'hours',
    1,
    'FCL.140.A(a)',
  ),
  lawValue(
    'eu.lapl.recency-class-hours',
    'Of the flight time, in each class, where the licence is for land and sea',
    'hours',
    1,
    'FCL.140.A(b)',
  ),
  lawValue(
    'eu.lapl.recency-class-takeoffs-and-landings',
    'Of the take-offs, and landings, in each class, where the licence is for land and sea',
    'count',
    6,
    'FCL.140.A(b)',
  ),
];

/** Part-FCL, FCL.940: instructor certificates. */
export const EU_INSTRUCTOR = [
  lawValue(
    'eu.instructor.months',
    'Months for which an instructor certificate is valid',
    'months',
    36,
    'FCL.940',
    'from memory',
  ),
];
