import { lawValue } from '../law-value.js';

/** Half of the useful life; the maintenance forecast reads the newest value from here. */
export const ELT_BATTERY_LIFE_PARTS = lawValue(
  'us.elt.battery-life-parts',
  'The ELT battery is replaced when one of so many equal parts of its useful life is spent (50 per cent)',
  'count',
  2,
  '14 CFR 91.207(c)(2)',
);

/** Inspection and check intervals of 14 CFR part 91. */
export const INSPECTIONS = [
  lawValue(
    'us.inspection.annual.calendar-months',
    'Calendar months an annual inspection lasts',
    'calendar-months',
    12,
    '14 CFR 91.409(a)',
  ),
  lawValue(
    'us.inspection.hundred-hour.hours',
    'Hours of time in service between inspections for hire and provided instruction',
    'hours',
    100,
    '14 CFR 91.409(b)',
  ),
  lawValue(
    'us.inspection.hundred-hour.overrun-hours',
    'Hours over, at most, while on the way to a place where the 100-hour inspection can be done',
    'hours',
    10,
    '14 CFR 91.409(b)',
  ),
  lawValue(
    'us.inspection.progressive.calendar-months',
    'Calendar months in which a progressive programme inspects the whole aircraft',
    'calendar-months',
    12,
    '14 CFR 91.409(d)',
  ),
  lawValue(
    'us.inspection.progressive.overrun-hours',
    'Hours over, at most, that the schedule of a progressive programme may allow while on the way to the inspection',
    'hours',
    10,
    '14 CFR 91.409(d)(2)(ii)',
  ),
  lawValue(
    'us.inspection.altimeter-static.calendar-months',
    'Calendar months an altimeter and static system test lasts',
    'calendar-months',
    24,
    '14 CFR 91.411(a)(1)',
  ),
  lawValue(
    'us.inspection.transponder.calendar-months',
    'Calendar months a transponder test lasts',
    'calendar-months',
    24,
    '14 CFR 91.413(a)',
  ),
  lawValue(
    'us.inspection.elt.calendar-months',
    'Calendar months an inspection of the emergency locator transmitter lasts',
    'calendar-months',
    12,
    '14 CFR 91.207(d)',
  ),
  lawValue(
    'us.elt.battery-use-minutes',
    'Cumulative minutes of use after more than which the ELT battery is replaced',
    'minutes',
    60,
    '14 CFR 91.207(c)(1)',
  ),
  ELT_BATTERY_LIFE_PARTS,
  lawValue(
    'us.elt.training-radius-nm',
    'Training wholly within this radius of the departure airport needs no ELT',
    'nm',
    50,
    '14 CFR 91.207(f)(3)',
  ),
  lawValue(
    'us.elt.removed-days',
    'Days an aircraft may fly while its ELT is away for repair, placarded and entered in the records',
    'days',
    90,
    '14 CFR 91.207(f)(10)',
  ),
  lawValue('us.vor-check.days', 'Days a VOR check lasts', 'days', 30, '14 CFR 91.171(a)(2)'),
  lawValue(
    'us.vor-check.ground-degrees',
    'Greatest bearing error against a test signal or a checkpoint on the ground',
    'degrees',
    4,
    '14 CFR 91.171(b)(1), (2)',
    'from memory',
  ),
  lawValue(
    'us.vor-check.airborne-degrees',
    'Greatest bearing error over an airborne checkpoint or a landmark on an airway',
    'degrees',
    6,
    '14 CFR 91.171(b)(3), (4)',
    'from memory',
  ),
  lawValue(
    'us.vor-check.dual-degrees',
    'Greatest difference between two receivers checked against each other',
    'degrees',
    4,
    '14 CFR 91.171(c)',
    'from memory',
  ),
];
