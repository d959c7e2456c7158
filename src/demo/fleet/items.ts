import type { Meters } from '../flying/meters.js';
import type { ComplianceRow, ItemRow } from '../rows.js';
import type { When } from '../when.js';
import { FLEET } from './aircraft.js';
import { AVIONICS, hourly, INSPECTOR, ItemBook } from './item-book.js';
import { emergencyTransmitter, vorChecks } from './items-elt-vor.js';
import { clubItems, directives } from './items-programme.js';
import { MODELS } from './models.js';

/** Every aircraft's airworthiness items, each with its compliances. */
export function itemRows(
  when: When,
  meters: Meters,
  recordedAt: string,
): { airworthiness_items: ItemRow[]; compliances: ComplianceRow[] } {
  const book = new ItemBook(when, meters, recordedAt);
  for (const aircraft of FLEET) {
    book.aircraft = aircraft;
    inspections(book, when);
    emergencyTransmitter(book, when);
    vorChecks(book, when);
    directives(book, when);
    clubItems(book, when);
  }
  return { airworthiness_items: book.items, compliances: book.compliances };
}

function inspections(book: ItemBook, when: When): void {
  const { annualMonthsAgo, avionicsMonthsAgo, transponderMonthsAgo, instruction, model } = book.aircraft;
  const airworthy = 'Inspected in accordance with an annual inspection and found in airworthy condition';
  const annual = book.add('annual', 'Annual inspection', {
    reference: '14 CFR 91.409(a)',
    calendar_months: 12,
  });
  for (const monthsAgo of [annualMonthsAgo, annualMonthsAgo + 12]) {
    book.done(annual, when.inMonth(monthsAgo, 20), airworthy, INSPECTOR);
  }
  if (instruction) {
    const hundred = book.add('hours-100', '100-hour inspection', {
      reference: '14 CFR 91.409(b)',
      scope: 'hire-or-instruction',
      interval_tenths: 1000,
      tolerance_tenths: 100,
    });
    hourly(
      book,
      hundred,
      'Inspected in accordance with a 100-hour inspection and found in airworthy condition',
    );
  }
  if (MODELS[model].ifr) {
    const altimeter = book.add('altimeter-static', 'Altimeter and static system', {
      reference: '14 CFR 91.411',
      scope: 'ifr',
      calendar_months: 24,
    });
    book.done(
      altimeter,
      when.inMonth(avionicsMonthsAgo, 22),
      'Tested in accordance with part 43 appendix E',
      AVIONICS,
    );
  }
  const transponder = book.add('transponder', 'Transponder test', {
    reference: '14 CFR 91.413',
    scope: 'transponder-use',
    calendar_months: 24,
  });
  book.done(
    transponder,
    when.inMonth(transponderMonthsAgo, 22),
    'Tested in accordance with part 43 appendix F',
    AVIONICS,
  );
}
