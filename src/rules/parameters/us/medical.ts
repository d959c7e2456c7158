import { amendedLawValue, lawValue } from '../law-value.js';

const DURATION = '14 CFR 61.23(d)';

/** 14 CFR 61.23(d): how long each privilege lasts, in calendar months from the month of the examination. */
export const MEDICAL_DURATION = [
  lawValue(
    'us.medical.age-years',
    'Age on the day of the examination from which durations are shorter',
    'years',
    40,
    DURATION,
  ),
  amendedLawValue('us.medical.first-younger', 'First-class privileges, below that age', 'calendar-months', [
    { from: null, value: 6, reference: `${DURATION} before 73 FR 43059` },
    { from: '2008-07-24', value: 12, reference: `${DURATION}; 73 FR 43059` },
  ]),
  lawValue('us.medical.first-older', 'First-class privileges, from that age', 'calendar-months', 6, DURATION),
  lawValue('us.medical.second', 'Second-class privileges, any age', 'calendar-months', 12, DURATION),
  amendedLawValue('us.medical.third-younger', 'Third-class privileges, below that age', 'calendar-months', [
    { from: null, value: 36, reference: `${DURATION} before 73 FR 43059` },
    { from: '2008-07-24', value: 60, reference: `${DURATION}; 73 FR 43059` },
  ]),
  lawValue(
    'us.medical.third-older',
    'Third-class privileges, from that age',
    'calendar-months',
    24,
    DURATION,
  ),
];

const BEGAN = '2017-05-01';
const AMENDED = '2024-11-18';
const OLD = '14 CFR 61.113(i), 82 FR 3149';
const NEW = '14 CFR 61.113(i), 89 FR 90572';

/** BasicMed: 14 CFR 61.23(c)(3), 61.113(i) and part 68, from 2017-05-01; wider aircraft from 2024-11-18. */
export const BASIC_MED = [
  lawValue(
    'us.basicmed.held-after',
    'A medical certificate must have been held after this date',
    'date',
    '2006-07-14',
    '14 CFR 61.23(c)(3)(i)(B)',
  ),
  lawValue(
    'us.basicmed.exam-months',
    'Months for which the physician’s examination counts (calendar months from 2024-11-18)',
    'months',
    48,
    '14 CFR 61.23(c)(3)(i)(D), 68.5',
  ),
  lawValue(
    'us.basicmed.course-calendar-months',
    'Calendar months for which the medical education course counts',
    'calendar-months',
    24,
    '14 CFR 61.23(c)(3)(i)(C), 68.3',
    'from memory',
  ),
  amendedLawValue('us.basicmed.occupants', 'Occupants the aircraft may be certificated for', 'count', [
    { from: BEGAN, value: 6, reference: OLD },
    { from: AMENDED, value: 7, reference: NEW },
  ]),
  amendedLawValue('us.basicmed.passengers', 'Passengers carried, at most', 'count', [
    { from: BEGAN, value: 5, reference: OLD },
    { from: AMENDED, value: 6, reference: NEW },
  ]),
  amendedLawValue('us.basicmed.takeoff-lb', 'Maximum certificated take-off weight', 'lb', [
    { from: BEGAN, value: 6000, reference: OLD },
    { from: AMENDED, value: 12_500, reference: NEW },
  ]),
  lawValue('us.basicmed.altitude-ft', 'Altitude above mean sea level, at most', 'ft', 18_000, OLD),
  lawValue('us.basicmed.speed-kias', 'Indicated airspeed, at most', 'kt', 250, OLD),
];
