import { registerReferences } from '../../platform/database/constraint-words.js';
import { registerConstraint, registerWords } from '../../platform/database/constraint-problems.js';

/** What the constraints of returns mean to a client. The service refuses first. */
registerWords({ code: 'return-refused', status: 422, title: 'The return contradicts itself' }, [
  ['returns_because_chk', 'because', 'Say why in at least 5 characters.'],
  ['returns_corrected_chk', 'because', 'A correction says what it corrects, and why.'],
  ['returns_span_chk', 'arrivedAt', 'The flight ends after it begins. Change one of the two times.'],
  ['returns_fuel_chk', 'fuelUsGal', 'Give the fuel left, 0 to 500 US gallons.'],
  ['returns_bought_chk', 'fuelBoughtUsGal', 'Give the fuel bought, 0 to 500 US gallons.'],
  ['returns_paid_chk', 'fuelPaid', 'Give what was paid, 0 to 100,000.'],
  ['returns_oil_chk', 'oilAddedQt', 'Give the oil added, 0 to 60 US quarts.'],
  ['return_meters_kind_chk', 'meters', 'Name one of the kinds of meters.'],
  ['return_meters_forward_chk', 'meters', 'A meter shows no less after the flight than before it.'],
  ['return_meters_pkey', 'meters', 'A meter is given twice. Leave one out.'],
  ['return_entries_pkey', 'entries', 'A person is named twice. Leave one out.'],
  ['return_entries_given_chk', 'entries', 'Send what goes into the log.'],
  ['returns_same_flight_chk', 'replacesId', 'It is no return of this flight. Read the flight again.'],
]);
registerWords({ code: 'not-out', status: 409, title: 'The aircraft is not out with this flight' }, [
  ['returns_out_chk', undefined, 'Only a flight that is out is returned. Read it again.'],
  ['returns_once_uq', undefined, 'The flight is back already. Read it again.'],
]);
registerWords({ code: 'return-corrected', status: 409, title: 'Somebody corrected it in between' }, [
  ['returns_replaces_uq', 'replacesId', 'Read the flight again and correct the return that stands now.'],
]);
registerWords({ code: 'flight-logged', status: 409, title: 'The flight is in the log already' }, [
  [
    'log_entries_flight_uq',
    undefined,
    'This flight stands in the log of this person already. Correct that entry.',
  ],
]);
registerReferences([
  ['returns_booking_fk', undefined, 'A return is of a booking of the club, and stays with it.'],
  ['returns_dispatch_fk', undefined, 'A return is of a flight that was handed out.'],
  ['returns_replaces_fk', 'replacesId', 'There is no such return.'],
  ['returns_by_fk', undefined, 'A return is made by a member of the club.'],
  ['returns_payer_fk', 'payerId', 'Who pays is a member of the club.'],
  ['return_meters_return_fk', undefined, 'The meters are of a return of the club.'],
  ['return_meters_reading_fk', 'meters', 'A meter is told by a reading on record.'],
  ['return_entries_return_fk', undefined, 'The entry is of a return of the club.'],
  ['return_entries_member_fk', 'entries', 'Who logs the flight is a member of the club.'],
  ['return_entries_log_fk', 'entries', 'The entry is in the log of the club.'],
  ['log_entries_booking_fk', undefined, 'An entry came from a booking of the club, which stays with it.'],
]);
registerConstraint(
  ...['returns_append_only', 'return_meters_append_only', 'return_entries_append_only'].map((constraint) => ({
    constraint,
    code: 'record-is-final',
    status: 409,
    title: 'Decisions are final records',
    detail: 'A return is never changed. Correct it by another one.',
  })),
);
