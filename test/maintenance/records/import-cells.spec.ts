/** Headings and cells of an imported file: read one way, or refused. */
import {
  readCell,
  readDay,
  type DateOrder,
  type Read,
} from '../../../src/maintenance/records/import/cells.js';
import { FIELDS, SECTIONS, type Section } from '../../../src/maintenance/records/import/fields.js';
import { matchHeading } from '../../../src/maintenance/records/import/headings.js';
import { COLUMNS } from '../../../src/maintenance/records/status-csv.js';

const value = (read: Read) => ('value' in read ? read.value : `refused: ${read.refused}`);
const cell = (section: Section, heading: string, text: string, dates: DateOrder = 'year-first') => {
  const found = matchHeading(heading, [section])[section];
  if (!found) throw new Error(`${heading} is not known in ${section}`);
  return value(readCell(text, found, { dates, zone: 'America/Chicago' }));
};
const fieldOf = (section: Section, heading: string): string | null => {
  const found = matchHeading(heading, [section])[section];
  return found
    ? `${found.field.name}${found.unit === null ? '' : ` in ${found.unit}`}${found.assumed ? ', assumed' : ''}`
    : null;
};

it.each([
  ['item', 'Last Done (h)', 'last_done_h in h'],
  ['item', 'LAST DONE', 'last_done_on'],
  ['item', 'Last-done date', 'last_done_on'],
  ['item', 'Interval [hrs]', 'interval_h in hrs'],
  ['item', 'Interval months', 'months in months'],
  ['item', 'Interval (days)', 'days in days'],
  ['item', 'Interval', null],
  ['item', 'Next due', 'next_due_on'],
  ['item', 'Next due (hours)', 'next_due_h in hours'],
  ['item', 'AD No.', 'reference'],
  ['equipment', 'P/N', 'part_number'],
  ['equipment', 'S/N', 'serial_number'],
  ['equipment', 'Weight', 'weight_lb in lb, assumed'],
  ['equipment', 'Weight (kg)', 'weight_lb in kg'],
  ['equipment', 'Station mm', 'arm_in in mm'],
  ['equipment', 'Weight (stone)', null],
  ['meter', 'Total time', 'total_h in h, assumed'],
  ['meter', 'Hours', 'shown_h in h, assumed'],
  ['weight', 'Empty weight, lbs', 'weight_lb in lbs'],
  ['weight', 'CG (in)', 'arm_in in in'],
] as const)('%s: “%s” is %s', (section, heading, field) => {
  expect(fieldOf(section, heading)).toBe(field);
});

it('knows every heading of the export in the unit it has there', () => {
  const known = new Set(SECTIONS.flatMap((section) => FIELDS[section].map(({ name }) => name)));
  const own = [
    'section',
    'registration',
    'make_model',
    'as_of',
    'printed_by',
    'printed_at',
    'detail',
    'reported_at',
    'deferred_on',
    'deadline_on',
  ];
  expect(COLUMNS.filter((column) => !known.has(column) && !own.includes(column))).toEqual([]);
  expect(new Set(COLUMNS).size).toBe(COLUMNS.length);
  for (const section of SECTIONS)
    for (const { name } of FIELDS[section]) {
      const found = matchHeading(name, [section])[section]!;
      expect([section, name, found.field.name, found.factor]).toEqual([section, name, name, 1]);
    }
});

it('converts with the exact pound and inch', () => {
  // NIST SP 811, appendix B: 1 lb = 0.453 592 37 kg, 1 in = 25.4 mm, both exact. 10 kg = 22.0462… lb; 1 m = 39.3700… in.
  expect(cell('equipment', 'weight (kg)', '10')).toBe(22.05);
  expect(cell('equipment', 'arm (m)', '1')).toBe(39.37);
  expect(cell('equipment', 'arm (mm)', '-254')).toBe(-10);
  expect(cell('equipment', 'arm (cm)', '2.54')).toBe(1);
  expect(cell('equipment', 'weight (lb)', '10.125')).toBe(10.125);
});

it.each([
  ['2026-03-09', 'year-first', '2026-03-09'],
  ['2026/3/9', 'year-first', '2026-03-09'],
  ['9 Mar 2026', 'year-first', '2026-03-09'],
  ['09-March-2026', 'year-first', '2026-03-09'],
  ['Mar 9, 2026', 'year-first', '2026-03-09'],
  ['09/03/2026', 'day-first', '2026-03-09'],
  ['09.03.2026', 'day-first', '2026-03-09'],
  ['03/09/2026', 'month-first', '2026-03-09'],
  // 2028 is a leap year, 2026 is not (Gregorian calendar).
  ['29 Feb 2028', 'year-first', '2028-02-29'],
] as const)('reads %s, %s, as %s', (text, order, day) => {
  expect(value(readDay(text, order))).toBe(day);
});

it.each([
  ['09/03/2026', 'year-first', 'two ways'],
  ['29 Feb 2026', 'year-first', 'no date of the calendar'],
  ['31/04/2026', 'day-first', 'no date of the calendar'],
  ['09/25/2026', 'day-first', 'no date of the calendar'],
  ['9 Foo 2026', 'year-first', 'no date of the calendar'],
  ['09/03/26', 'day-first', 'no date that can be read'],
  ['46090', 'year-first', 'no date that can be read'],
  ['soon', 'year-first', 'no date that can be read'],
] as const)('refuses %s, %s: %s', (text, order, because) => {
  expect(value(readDay(text, order))).toContain(because);
});

it('reads numbers with a point, thousands with commas, and no other comma', () => {
  expect(cell('meter', 'shown (h)', '1,040.5')).toBe(1040.5);
  expect(cell('meter', 'shown (h)', '12,345')).toBe(12_345);
  for (const text of ['1040,5', '1.040,5', '1040.5 h', '1e3', '0x10', '1040:30', '--1'])
    expect(cell('meter', 'shown (h)', text)).toContain('refused');
  expect(cell('item', 'days', '30.5')).toContain('no whole number');
});

it('takes a day for its beginning in the club’s zone, and instants as they are', () => {
  // Chicago: UTC-6 in winter, UTC-5 from 2026-03-08 (IANA time zone database).
  expect(cell('meter', 'read on', '2026-03-01')).toBe('2026-03-01T06:00:00Z');
  expect(cell('meter', 'read on', '2026-03-09')).toBe('2026-03-09T05:00:00Z');
  expect(cell('meter', 'read_at', '2026-03-09T20:00:00+02:00')).toBe('2026-03-09T18:00:00Z');
  expect(cell('meter', 'read_at', '2026-03-09T20:00')).toContain('refused');
});

it('knows words by their usual spellings and says what it knows', () => {
  expect(cell('item', 'kind', '100 Hour')).toBe('hours-100');
  expect(cell('equipment', 'kind', 'VOR receiver')).toBe('vor-receiver');
  expect(cell('equipment', 'basis', 'Field approval')).toBe('alteration-record');
  expect(cell('equipment', 'also serves as', 'clock; Slip/Skid')).toEqual(['clock', 'slip-skid']);
  expect(cell('equipment', 'basis', 'constructor')).toContain(
    'type-design, stc, alteration-record, portable',
  );
  expect(cell('item', 'recurring', 'maybe')).toContain('neither yes nor no');
});
