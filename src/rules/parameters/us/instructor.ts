import { lawValue } from '../law-value.js';

/** 14 CFR 61.197 and 61.199: how long instructor privileges last, and when a refresher course restores them. */
export const INSTRUCTOR_EXPERIENCE = [
  lawValue(
    'us.instructor.calendar-months',
    'Calendar months for which recent instructing experience counts',
    'calendar-months',
    24,
    '14 CFR 61.197(a)',
  ),
  lawValue(
    'us.instructor.refresher-calendar-months',
    'Calendar months after the lapse in which a refresher course restores privileges',
    'calendar-months',
    3,
    '14 CFR 61.199(a)(1) (89 FR 80020)',
  ),
];
