import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';
import { registerConstraint, registerWords } from '../../platform/database/constraint-problems.js';

/** What the constraints of dispatches mean to a client. The service refuses first. */
registerChecks([
  ['dispatches_persons_chk', 'personsOnBoard', 'Count everyone aboard, 1 to 20.'],
  ['dispatches_fuel_chk', 'fuelUsGal', 'Give the fuel on board, 0 to 500 US gallons.'],
  ['dispatches_oil_chk', 'oilQt', 'Give the oil, 0 to 60 US quarts.'],
  ['dispatches_self_assessed_chk', 'selfAssessed', 'Go through the self-assessment before the flight.'],
  ['dispatch_meters_kind_chk', 'meters', 'Name one of the kinds of meters.'],
  ['dispatch_meters_gap_chk', 'meters', 'A meter does not show less than it did.'],
  ['dispatch_meters_because_chk', 'meters', 'Say what the hours since the last reading are.'],
  ['dispatch_meters_note_chk', 'meters', 'Say it in 3 to 500 characters.'],
  ['dispatch_meters_resolved_chk', 'meters', 'Say what the hours since the last reading are.'],
  ['dispatch_voids_reason_chk', 'reason', 'Say why in at least 5 characters.'],
]);
registerWords({ code: 'not-to-be-dispatched', status: 409, title: 'The aircraft cannot be handed out now' }, [
  ['dispatches_booked_chk', undefined, 'Only a flight that is booked is handed out. Read it again.'],
  ['dispatches_answer_chk', undefined, 'The answer does not let the flight go. Look at it again.'],
  ['dispatches_booking_uq', undefined, 'Somebody else is handing it out. Read the flight again.'],
  ['dispatches_number_chk', undefined, 'Somebody else is handing it out. Read the flight again.'],
  ['dispatch_meters_pkey', 'meters', 'A meter is given twice. Leave one out.'],
  ['dispatch_voids_pkey', undefined, 'It was taken back before. Read the flight again.'],
]);
registerReferences([
  ['dispatches_booking_fk', undefined, 'A dispatch is of a booking of the club, and stays with it.'],
  ['dispatches_decision_fk', undefined, 'A dispatch rests on a decision of the club, and stays with it.'],
  ['dispatches_by_fk', undefined, 'A dispatch is made by a member of the club.'],
  ['dispatch_meters_dispatch_fk', undefined, 'The meters are of a dispatch of the club.'],
  ['dispatch_meters_reading_fk', 'meters', 'A meter is confirmed by a reading on record.'],
  ['dispatch_voids_dispatch_fk', undefined, 'There is no such dispatch.'],
  ['dispatch_voids_by_fk', undefined, 'A dispatch is taken back by a member of the club.'],
]);
registerConstraint(
  ...['dispatches_append_only', 'dispatch_meters_append_only', 'dispatch_voids_append_only'].map(
    (constraint) => ({
      constraint,
      code: 'record-is-final',
      status: 409,
      title: 'Decisions are final records',
      detail: 'A dispatch is never changed. Take it back, or correct the return.',
    }),
  ),
);
