import { at, clock, type When } from '../when.js';
import { CONVERSION } from './aircraft.js';
import { type DirectiveKey, itemOf } from './directives.js';
import { equipmentId } from './equipment.js';
import { AVIONICS, hourly, MECHANIC, type ItemBook } from './item-book.js';

/** What the directives ask of the aircraft. */
export function directives(book: ItemBook, when: When): void {
  const { key } = book.aircraft;
  const add = (directive: DirectiveKey): string => {
    const { title, fields } = itemOf(directive, when);
    return book.add('directive', title, fields);
  };
  if (key === 'traverse') hourly(book, add('hub'), 'Hub inspected for cracks, none found');
  if (key === 'gemel')
    book.done(add('heater'), when.inMonth(14, 20), 'Heater inspected and pressure tested', MECHANIC);
  if (key === 'lindle') book.done(add('gear'), when.inMonth(6, 20), 'Actuator inspected, no leak', MECHANIC);
  if (key.startsWith('sprig'))
    book.done(add('rail'), when.inMonth(100, 14), 'Second stop fitted', MECHANIC, { tenths: null });
}

/** The club's own programme, and what the conversion brought and ended. */
export function clubItems(book: ItemBook, when: When): void {
  const { key } = book.aircraft;
  const oil = book.add('club', 'Oil and filter', { scope: 'advice', interval_tenths: 500 });
  book.done(
    oil,
    book.meters.dateBefore(book.aircraft, 180 + key.length * 15),
    'Oil and filter changed',
    MECHANIC,
  );
  const extinguisher = book.add('club', 'Fire extinguisher weighed', {
    scope: 'advice',
    calendar_months: 12,
  });
  book.done(extinguisher, when.inMonth(5, 9), 'Weighed, full', MECHANIC, { tenths: null });
  if (key !== 'almanac') return;
  const converted = when.daysAgo(CONVERSION.finishedDaysAgo);
  const battery = book.add('club', 'Backup battery of the displays, capacity', {
    reference: 'Alteration record of the electronic panel',
    calendar_months: 12,
    equipment_id: equipmentId('almanac', 'backup-battery', 'new'),
    recorded_at: at(converted, clock(16)),
  });
  book.done(battery, converted, 'Capacity checked at installation', AVIONICS);
  const pump = book.add('club', 'Vacuum pump replaced', {
    scope: 'advice',
    interval_tenths: 5000,
    equipment_id: equipmentId('almanac', 'air-pump', 'old'),
    retired_on: converted,
  });
  book.done(pump, when.inMonth(40, 11), 'Pump replaced', MECHANIC, { tenths: null });
}
