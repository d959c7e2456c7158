import { lawValue } from '../law-value.js';

/** 14 CFR 61.57(a) and (b): how many, how lately. */
export const PASSENGER_RECENCY = [
  lawValue(
    'us.passenger-recency.days',
    'Days in which take-offs and landings count towards carrying passengers',
    'days',
    90,
    '14 CFR 61.57(a)(1), (b)(1)',
  ),
  lawValue(
    'us.passenger-recency.count',
    'Take-offs, and landings, needed to carry passengers',
    'count',
    3,
    '14 CFR 61.57(a)(1), (b)(1)',
  ),
];

/** 14 CFR 61.57(c) and (d): instrument experience. */
export const INSTRUMENT_RECENCY = [
  lawValue(
    'us.instrument.calendar-months',
    'Calendar months for which instrument tasks, or a proficiency check, count',
    'calendar-months',
    6,
    '14 CFR 61.57(c)(1)',
  ),
  lawValue(
    'us.instrument.approaches',
    'Instrument approaches needed in that time',
    'count',
    6,
    '14 CFR 61.57(c)(1)(i)',
  ),
  lawValue(
    'us.instrument.grace-calendar-months',
    'Calendar months after the lapse in which the tasks alone restore instrument privileges',
    'calendar-months',
    6,
    '14 CFR 61.57(d)(1)',
  ),
];

/** 14 CFR 61.56: the flight review. */
export const FLIGHT_REVIEW = [
  lawValue(
    'us.flight-review.calendar-months',
    'Calendar months for which a flight review counts',
    'calendar-months',
    24,
    '14 CFR 61.56(c)',
  ),
  lawValue(
    'us.flight-review.ground-hours',
    'Ground training in a flight review, at least',
    'hours',
    1,
    '14 CFR 61.56(a)',
  ),
  lawValue(
    'us.flight-review.flight-hours',
    'Flight training in a flight review, at least',
    'hours',
    1,
    '14 CFR 61.56(a)',
  ),
];
