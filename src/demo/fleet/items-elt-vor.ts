import { addDays, addYears } from '../../rules/index.js';
import { HOME } from '../places.js';
import type { When } from '../when.js';
import type { AircraftKey } from './aircraft.js';
import { MECHANIC, type ItemBook } from './item-book.js';

/** When each ELT battery reaches half its life, in days from today. */
const BATTERY_DAYS: Record<AircraftKey, number> = {
  'sprig-1': 610,
  'sprig-2': 905,
  wicket: 420,
  almanac: 1210,
  traverse: 760,
  lindle: 300,
  gemel: 24,
};

/** The emergency transmitter: its inspection and its battery. */
export function emergencyTransmitter(book: ItemBook, when: When): void {
  const inspection = book.add('elt-inspection', 'Emergency transmitter inspection', {
    reference: '14 CFR 91.207(d)',
    calendar_months: 12,
  });
  book.done(
    inspection,
    when.inMonth(book.aircraft.annualMonthsAgo, 20),
    'Inspected as 91.207(d) lists',
    MECHANIC,
  );
  const replaceOn = addDays(when.today, BATTERY_DAYS[book.aircraft.key]);
  const newOn = addYears(replaceOn, -4, 'clamp-to-month-end');
  const battery = book.add('elt-battery', 'Emergency transmitter battery', {
    reference: '14 CFR 91.207(c)',
    recurring: false,
  });
  book.done(battery, newOn, 'Battery replaced', MECHANIC, {
    tenths: null,
    detail: {
      eltBatteryNewOn: newOn,
      eltBatteryUsefulLifeEndsOn: addYears(replaceOn, 4, 'clamp-to-month-end'),
      eltBatteryReplaceOn: replaceOn,
      eltUseMinutes: 4,
    },
  });
}

/** Every four weeks or so, back through the 18 months. */
export function vorChecks(book: ItemBook, when: When): void {
  const { vorDaysAgo, key } = book.aircraft;
  if (vorDaysAgo === null) return;
  const item = book.add('vor-check', 'VOR check', { reference: '14 CFR 91.171', scope: 'ifr', days: 30 });
  for (let daysAgo = vorDaysAgo, nth = 0; daysAgo < when.span; daysAgo += 27 + (nth % 3), nth += 1) {
    book.done(item, when.daysAgo(daysAgo), 'Checked within limits', 'A. Verhey', {
      tenths: null,
      detail: {
        vorMethod: 'ground-checkpoint',
        vorErrorDeg: (nth + key.length) % 4,
        vorPlace: HOME.code,
        vorSignedBy: 'A. Verhey',
      },
    });
  }
}
