/**
 * References the database keeps. The same constraint refuses a row that names something unknown and the deletion of
 * something still named, so each text says both; the service names the case exactly wherever it can tell.
 */
import type { ConstraintWords } from '../../platform/database/constraint-words.js';

const reference = (...words: ConstraintWords): ConstraintWords => words;

const ofAircraft = (table: string, what: string) =>
  reference(
    `${table}_aircraft_fk`,
    undefined,
    `${what} belongs to an aircraft of the club. The aircraft is not there any more; or, when it was to be deleted, it ` +
      'has records: set its status to out-of-service instead.',
  );

export const FLEET_REFERENCES = [
  reference(
    'aircraft_model_fk',
    'modelId',
    "The aircraft's model is one of the club's models, and a model with aircraft is not deleted. Choose another model first.",
  ),
  reference(
    'aircraft_home_fk',
    'homeAirfieldId',
    "The home airfield is one of the club's airfields, and an airfield that is an aircraft's home is not deleted. Choose another home first.",
  ),
  ofAircraft('registrations', 'A registration'),
  ofAircraft('permits', 'A permit'),
  ofAircraft('equipment', 'A piece of equipment'),
  ofAircraft('meter_readings', 'A meter reading'),
  ofAircraft('airworthiness_items', 'An airworthiness item'),
  ofAircraft('squawks', 'A squawk'),
  ofAircraft('differences', 'A difference'),
  ofAircraft('weighings', 'A weighing'),
  ofAircraft('loading_sheets', 'A loading sheet'),
  ofAircraft('performance_sheets', 'A performance sheet'),
  ...['loading_sheets_model_fk', 'performance_sheets_model_fk'].map((constraint) =>
    reference(constraint, undefined, "A sheet belongs to one of the club's models. Read the models again."),
  ),
  ofAircraft('upgrade_wishes', 'An upgrade wish'),
  ofAircraft('equipment_changes', 'An equipment change'),
  reference(
    'equipment_changes_made_fk',
    undefined,
    'An equipment change is entered by a member of the club, and keeps that name.',
  ),
  reference(
    'equipment_changes_taken_back_fk',
    undefined,
    'An equipment change is taken back by a member of the club, and keeps that name.',
  ),
  ...[
    'equipment_installed_by_fk',
    'equipment_removed_by_fk',
    'weighings_change_fk',
    'differences_change_fk',
  ].map((constraint) =>
    reference(
      constraint,
      undefined,
      'It names a change of the same aircraft, and a change stays as long as its parts do. Take the change back instead.',
    ),
  ),
  reference(
    'meter_reading_voids_reading_fk',
    undefined,
    'A reading of the club is taken back, and both stay on record. Read the readings again.',
  ),
  reference(
    'meter_reading_voids_member_fk',
    undefined,
    'A reading is taken back by a member of the club, and keeps that name.',
  ),
  reference(
    'airworthiness_items_equipment_fk',
    'equipmentId',
    'An item hangs on equipment of the same aircraft. Choose one of its pieces; equipment with items is not deleted: give it a removal date.',
  ),
  reference(
    'compliances_item_fk',
    undefined,
    'A compliance belongs to an airworthiness item of the club. An item with compliances is not deleted: give it a retirement date.',
  ),
  reference(
    'squawks_reporter_fk',
    undefined,
    'A squawk is reported by a member of the club, and keeps that name.',
  ),
  reference(
    'squawks_equipment_fk',
    'equipmentId',
    'A squawk is about equipment of the same aircraft. Choose one of its pieces; equipment with squawks is not deleted: give it a removal date.',
  ),
  reference(
    'squawks_booking_fk',
    'bookingId',
    'A squawk names a booking of the club, and keeps it. Choose another booking, or leave it out.',
  ),
  reference(
    'squawks_duplicate_fk',
    'ofSquawkId',
    'A duplicate is kept in a squawk of the same aircraft, which stays as long. Choose one of its open squawks.',
  ),
  ...['squawk_parts_squawk_fk', 'attachments_squawk_fk'].map((constraint) =>
    reference(
      constraint,
      undefined,
      'It belongs to a squawk of the club, and both stay on record. Read the squawk again.',
    ),
  ),
  reference(
    'attachments_member_fk',
    undefined,
    'A photo is added by a member of the club, and keeps that name.',
  ),
  reference(
    'deferrals_squawk_fk',
    undefined,
    'A deferral belongs to a squawk of the club, and goes before it. Read the squawk again.',
  ),
];
