import { amendedLawValue, lawValue } from '../law-value.js';

/** Commercial pilots without an instrument rating, 14 CFR 61.133(b)(1). */
export const COMMERCIAL = [
  lawValue(
    'us.commercial.no-instrument-nm',
    'Distance to which a commercial pilot without an instrument rating may carry passengers for hire',
    'nm',
    50,
    '14 CFR 61.133(b)(1)',
    'from memory',
  ),
];

/** Student solo flight, 14 CFR 61.87, 61.89 and 61.93. */
export const STUDENT = [
  lawValue(
    'us.student.solo-days',
    'Days for which a solo endorsement counts',
    'days',
    90,
    '14 CFR 61.87(n), (o)',
  ),
  lawValue(
    'us.student.visibility-day-sm',
    'Visibility for a student by day, at least',
    'sm',
    3,
    '14 CFR 61.89(a)(6)',
  ),
  lawValue(
    'us.student.visibility-night-sm',
    'Visibility for a student at night, at least',
    'sm',
    5,
    '14 CFR 61.89(a)(6)',
  ),
  lawValue(
    'us.student.local-nm',
    'Distance from the origin beyond which a solo flight needs cross-country endorsements',
    'nm',
    25,
    '14 CFR 61.93(a)(1)(i), (b)(1)',
  ),
  lawValue('us.student.repeated-route-nm', 'Reach of the repeated route', 'nm', 50, '14 CFR 61.93(b)(2)'),
];

const LIMITS = '14 CFR 61.101(e)';

/** Recreational pilots, 14 CFR 61.101. */
export const RECREATIONAL = [
  lawValue('us.recreational.passengers', 'Passengers, at most', 'count', 1, '14 CFR 61.101(a)(1)'),
  lawValue(
    'us.recreational.occupants',
    'Occupants the aircraft may be certificated for',
    'count',
    4,
    `${LIMITS}(1)(i)`,
  ),
  lawValue('us.recreational.engines', 'Engines, at most', 'count', 1, `${LIMITS}(1)(ii)`),
  lawValue(
    'us.recreational.power-hp',
    'Engine power, at most (rotorcraft excepted)',
    'hp',
    180,
    `${LIMITS}(1)(iii)`,
  ),
  lawValue(
    'us.recreational.distance-nm',
    'Distance from the departure airport with the first endorsement',
    'nm',
    50,
    '14 CFR 61.101(b)',
  ),
  lawValue('us.recreational.altitude-ft-msl', 'Altitude, at most', 'ft', 10_000, `${LIMITS}(8)`),
  lawValue(
    'us.recreational.altitude-ft-agl',
    'Height above the surface, where higher',
    'ft',
    2000,
    `${LIMITS}(8)`,
  ),
  lawValue('us.recreational.visibility-sm', 'Visibility, at least', 'sm', 3, `${LIMITS}(9)`),
  lawValue(
    'us.recreational.retrain-below-hours',
    'Flight hours below which a break calls for retraining',
    'hours',
    400,
    '14 CFR 61.101(g)',
    'from memory',
  ),
  lawValue(
    'us.recreational.retrain-after-days',
    'Days without pilot-in-command time that make the break',
    'days',
    180,
    '14 CFR 61.101(g)',
    'from memory',
  ),
];

const NEW = '2025-10-22';
const OLD_AIRCRAFT = '14 CFR 1.1, light-sport aircraft (69 FR 44771)';
const NEW_AIRCRAFT = '14 CFR 61.316 (90 FR 35215)';

/** Sport pilots, 14 CFR 61.315; what they may fly came from 14 CFR 1.1 and comes from 61.316 since 2025-10-22. */
export const SPORT = [
  lawValue('us.sport.passengers', 'Passengers, at most', 'count', 1, '14 CFR 61.315(c)(4)'),
  lawValue('us.sport.altitude-ft-msl', 'Altitude, at most', 'ft', 10_000, '14 CFR 61.315(c)(11)'),
  lawValue(
    'us.sport.altitude-ft-agl',
    'Height above the surface, where higher',
    'ft',
    2000,
    '14 CFR 61.315(c)(11)',
  ),
  lawValue('us.sport.visibility-sm', 'Visibility, at least', 'sm', 3, '14 CFR 61.315(c)(12)'),
  amendedLawValue('us.sport.airplane-vs1-kcas', 'Stall speed VS1 of an airplane, at most', 'kt', [
    { from: '2004-09-01', value: 45, reference: OLD_AIRCRAFT },
    { from: NEW, value: 59, reference: NEW_AIRCRAFT },
  ]),
  amendedLawValue('us.sport.other-vs1-kcas', 'Stall speed VS1 of another aircraft, at most', 'kt', [
    { from: '2004-09-01', value: 45, reference: OLD_AIRCRAFT },
    { from: NEW, value: 45, reference: NEW_AIRCRAFT },
  ]),
  amendedLawValue('us.sport.airplane-seats', 'Seats of an airplane, at most', 'count', [
    { from: '2004-09-01', value: 2, reference: OLD_AIRCRAFT },
    { from: NEW, value: 4, reference: NEW_AIRCRAFT },
  ]),
  lawValue(
    'us.sport.other-seats',
    'Seats of another aircraft, at most',
    'count',
    2,
    NEW_AIRCRAFT,
    'from memory',
  ),
  amendedLawValue('us.sport.takeoff-lb', 'Maximum take-off weight of a landplane', 'lb', [
    { from: '2004-09-01', value: 1320, reference: OLD_AIRCRAFT },
  ]),
  amendedLawValue('us.sport.takeoff-water-lb', 'Maximum take-off weight of a seaplane', 'lb', [
    { from: '2004-09-01', value: 1430, reference: OLD_AIRCRAFT },
  ]),
  amendedLawValue(
    'us.sport.level-speed-kcas',
    'Maximum speed in level flight, at most',
    'kt',
    [{ from: '2004-09-01', value: 120, reference: OLD_AIRCRAFT }],
    'from memory',
  ),
];
