/** What people are told when the database refuses a rate or an entry. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { registerConstraint } from '../platform/database/constraint-problems.js';

registerChecks([
  [
    'charge_rates_amount_chk',
    'perHourMinor',
    'Give what an hour costs, 0 to 100,000,000 of the smallest unit.',
  ],
  ['charge_rates_currency_chk', undefined, 'A currency is named by its ISO 4217 code.'],
  ['charge_rates_basis_chk', 'basis', 'Name one of hobbs, tachometer, clock.'],
  ['charge_rates_fuel_chk', 'fuel', 'Name one of wet, dry.'],
  ['charge_rates_fuel_price_chk', 'fuelPerUsGalMinor', 'Give a price of a gallon, 0 to 1,000,000.'],
  [
    'charge_rates_of_chk',
    undefined,
    'A rate is of an aircraft with its meter and fuel, or of an instructor.',
  ],
  ['charge_rates_append_only', undefined, 'A rate is never changed. Set a new one from the same day.'],
  ['ledger_entries_kind_chk', 'kind', 'An entry is a flight, a receipt, an adjustment or a reversal.'],
  ['ledger_entries_amount_chk', 'amountMinor', 'Give an amount of 1,000,000,000 at most either way.'],
  ['ledger_entries_unit_chk', undefined, 'A unit has 1, 10, 100, 1000 or 10,000 of the smallest.'],
  ['ledger_entries_lines_chk', undefined, 'The lines of a charge are a list.'],
  ['ledger_entries_words_chk', 'reason', 'Say why, in 5 to 500 characters.'],
  [
    'ledger_entries_flight_chk',
    undefined,
    'The charge of a flight names the flight, what was flown and its rate.',
  ],
  ['ledger_entries_sum_chk', undefined, 'The amount of a flight is the sum of its lines.'],
  [
    'ledger_entries_sign_chk',
    'amountMinor',
    'A receipt takes something off the account; an adjustment is not 0.',
  ],
  ['ledger_entries_reversal_chk', undefined, 'A reversal names what it reverses, another entry nothing.'],
  [
    'ledger_entries_own_chk',
    undefined,
    'Nobody enters on their own account what was received or taken off. Ask another administrator.',
  ],
  [
    'ledger_entries_takes_off_chk',
    undefined,
    'A reversal takes off an entry, to the last cent, and no reversal.',
  ],
  ['ledger_entries_append_only', undefined, 'An entry is never changed. Reverse it and enter it anew.'],
]);
registerReferences([
  ['charge_rates_aircraft_fk', undefined, 'A rate is of an aircraft of the club, which is not deleted.'],
  ['charge_rates_instructor_fk', undefined, 'A rate is of a member of the club, who is not deleted.'],
  ['charge_rates_setter_fk', undefined, 'A rate is set by a member of the club, who is not deleted.'],
  ['charge_rates_currency_uq', undefined, 'A rate stays in its currency.'],
  ['ledger_entries_owner_uq', undefined, 'An entry stays on its account.'],
  ['ledger_entries_member_fk', undefined, 'An account is a member’s, who is not deleted.'],
  ['ledger_entries_recorder_fk', undefined, 'An entry is made by a member of the club, who is not deleted.'],
  ['ledger_entries_booking_fk', undefined, 'A charge is of a flight of the club, which is not deleted.'],
  ['ledger_entries_rate_fk', undefined, 'A charge goes by a rate of the club, in its currency.'],
  ['ledger_entries_instruction_fk', undefined, 'Instruction goes by a rate of the club, in its currency.'],
  ['ledger_entries_reverses_fk', undefined, 'A reversal is on the account of what it reverses.'],
]);
registerConstraint(
  {
    ...{ constraint: 'ledger_entries_reverses_uq', code: 'reversed-already', status: 409 },
    ...{ title: 'Reversed already', detail: 'This entry has been reversed before. Read the statement anew.' },
  },
  {
    ...{ constraint: 'ledger_entries_charge_uq', code: 'charged-already', status: 409 },
    ...{
      title: 'Charged already',
      detail: 'Somebody charged this flight just now. Read the statement anew.',
    },
  },
  {
    ...{ constraint: 'ledger_entries_charged_chk', code: 'charged-already', status: 409 },
    ...{ title: 'Charged already', detail: 'This flight is charged. Reverse the charge first.' },
  },
  {
    ...{ constraint: 'ledger_entries_currency_excl', code: 'other-currency', status: 409 },
    title: 'Another currency',
    detail:
      'The accounts of the club are kept in another currency. Set the rate anew, in the currency of the accounts.',
  },
);
