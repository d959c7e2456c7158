import type { ConstraintWords } from '../../platform/database/constraint-problems.js';

/** Values the database refuses. The service refuses nearly all of them before, with the same advice. */
const MODELS: ConstraintWords[] = [
  ['aircraft_models_name_chk', 'makeModel', 'Give make and model in words.'],
  [
    'aircraft_models_designator_chk',
    'typeDesignator',
    'Write the type designator with 2 to 4 capital letters or digits.',
  ],
  ['aircraft_models_category_chk', 'category', 'Name one of the categories of 14 CFR 61.5.'],
  ['aircraft_models_class_chk', 'class', "Name one of the classes of 14 CFR 61.5, or 'none'."],
  ['aircraft_models_engines_chk', 'engines', 'Give the number of engines from 0 to 4.'],
  [
    'aircraft_models_power_chk',
    'powerPerEngineHp',
    'Give the rated power of one engine, more than 0, or leave it out.',
  ],
  [
    'aircraft_models_weight_chk',
    'maxTakeoffLb',
    'Give the maximum take-off weight, more than 0, or leave it out.',
  ],
  ['aircraft_models_kinds_chk', 'kindsOfOperation', 'Name at least one of day-vfr, night-vfr, ifr.'],
];

const SHEETS: ConstraintWords[] = [
  ...['loading_sheets', 'performance_sheets'].flatMap((table): ConstraintWords[] => [
    [`${table}_source_chk`, 'source', 'Name document and section in up to 200 characters.'],
    [`${table}_of_chk`, undefined, 'A sheet is of a model or of an aircraft, and of one of them only.'],
  ]),
  ['loading_sheets_fuel_chk', 'fuelKind', 'Name one of avgas, jet.'],
  ['loading_sheets_max_takeoff_chk', 'maxTakeoffLb', 'Give a weight of more than 0 pounds, or leave it out.'],
  ['loading_sheets_max_landing_chk', 'maxLandingLb', 'Give a weight of more than 0 pounds, or leave it out.'],
  [
    'loading_sheets_max_zero_fuel_chk',
    'maxZeroFuelLb',
    'Give a weight of more than 0 pounds, or leave it out.',
  ],
  ['loading_sheets_stations_chk', 'stations', 'Give 1 to 20 stations, each with its kind and arm.'],
  ['loading_sheets_envelopes_chk', 'envelopes', 'Give each category limits with three corners or more.'],
  ['performance_sheets_lift_off_chk', 'liftOffKias', 'Give a speed of more than 0 knots, or leave it out.'],
  ['performance_sheets_takeoff_chk', 'takeoff', 'Give 1 to 6 tables, each with its weight, and factors.'],
  ['performance_sheets_landing_chk', 'landing', 'Give 1 to 6 tables, each with its weight, and factors.'],
];

const AIRCRAFT: ConstraintWords[] = [
  [
    'aircraft_registration_chk',
    'registration',
    'Write the registration with 2 to 10 capital letters, digits or hyphens.',
  ],
  ['aircraft_seats_chk', 'seats', 'Give the seats fitted, from 1 to 20.'],
  [
    'aircraft_occupants_chk',
    'occupantsCertificated',
    'Give the occupants it is certificated for, from 1 to 20.',
  ],
  ['aircraft_empty_weight_chk', 'emptyWeightLb', 'Give the empty weight, more than 0, or leave it out.'],
  ['aircraft_status_chk', 'status', 'Name one of in-service, out-of-service.'],
  [
    'aircraft_inspection_meter_chk',
    'inspectionMeter',
    'Name the meter inspections count by: hobbs, tachometer or airframe.',
  ],
  [
    'registrations_span_chk',
    'endedOn',
    'A registration ends on or after the day it was issued. Check both dates.',
  ],
  ['permits_span_chk', 'validThrough', 'A permit ends on or after the day it begins. Check both dates.'],
  ['equipment_name_chk', 'name', 'Give the equipment a name.'],
  [
    'equipment_span_chk',
    'removedOn',
    'Equipment is removed on or after the day it was installed. Check both dates.',
  ],
  ['equipment_basis_chk', 'basis', 'Name one of type-design, stc, alteration-record, portable.'],
  [
    'equipment_portable_chk',
    'basis',
    "Portable equipment has the basis 'portable', installed equipment another one.",
  ],
  ['aircraft_serial_chk', 'serialNumber', 'Give the serial number in up to 40 characters, or leave it out.'],
  ['equipment_weight_chk', 'weightLb', 'Give a weight of 0 pounds or more, or leave it out.'],
  [
    'equipment_removed_by_chk',
    'removedOn',
    'A piece removed by a change keeps its removal date. Take the change back instead.',
  ],
  ['upgrade_wishes_title_chk', 'title', 'Say in up to 200 characters what is wished for.'],
  ['upgrade_wishes_days_chk', 'shopDays', 'Give the days in the shop, more than 0 and up to 60.'],
  ['upgrade_wishes_worth_chk', 'worthHours', 'Give the hours it is worth, 0 or more.'],
  ...SHEETS,
  ['weighings_weight_chk', 'emptyWeightLb', 'Give the empty weight, more than 0 pounds.'],
  ['weighings_source_chk', 'source', 'Name one of weighing, computed, equipment-change.'],
  ['weighings_change_chk', 'source', 'A weight by an equipment change names the change.'],
  ['equipment_changes_title_chk', 'title', 'Say in up to 200 characters what was changed.'],
  ['equipment_changes_statement_chk', 'statement', 'Copy the statement from the maintenance record.'],
  ['equipment_changes_signed_chk', 'signedBy', 'Say who signed: name and certificate.'],
  ['equipment_changes_effects_chk', undefined, 'The change says what it did. Read it again and repeat.'],
  [
    'equipment_changes_taken_back_chk',
    'reason',
    'A change that is taken back says when, by whom and why, or none of these.',
  ],
  ['differences_title_chk', 'title', 'Say in a few words what is different.'],
];

const METERS: ConstraintWords[] = [
  ['meter_readings_kind_chk', 'kind', 'Name one of hobbs, tachometer, airframe.'],
  ['meter_readings_shown_chk', 'shownH', 'Give what the meter shows, 0 or more.'],
  [
    'meter_reading_voids_reason_chk',
    'reason',
    'Say in at least 5 characters what was wrong with the reading.',
  ],
  ['meter_readings_source_chk', 'source', 'Name one of coordinator, replacement.'],
];

const ITEMS: ConstraintWords[] = [
  ['airworthiness_items_kind_chk', 'kind', 'Name one of the kinds of airworthiness items.'],
  ['airworthiness_items_title_chk', 'title', 'Give the item a title.'],
  [
    'airworthiness_items_scope_chk',
    'scope',
    'Name the flights it binds: all, ifr, hire-or-instruction, night, transponder-use or advice.',
  ],
  [
    'airworthiness_items_calendar_chk',
    'calendarMonths',
    'Give calendar months, 1 or more, or leave them out.',
  ],
  ['airworthiness_items_plain_chk', 'plainMonths', 'Give months, 1 or more, or leave them out.'],
  ['airworthiness_items_days_chk', 'days', 'Give days, 1 or more, or leave them out.'],
  [
    'airworthiness_items_interval_chk',
    'intervalH',
    'Give an interval of more than 0 hours, or leave it out.',
  ],
  [
    'airworthiness_items_fixed_hours_chk',
    'fixedDueH',
    'Give the hours at which it is due, more than 0, or leave them out.',
  ],
  [
    'airworthiness_items_span_chk',
    'retiredOn',
    'An item ends on or after the day it begins. Check both dates.',
  ],
  ['airworthiness_items_tolerance_chk', 'toleranceH', 'Give a tolerance of 0 hours or more.'],
  ['compliances_done_chk', 'doneH', 'Give the hours at which it was done, 0 or more.'],
  ['compliances_due_chk', 'dueH', 'Give the hours at which it had been due, 0 or more.'],
  ['compliances_statement_chk', 'statement', 'Copy the statement from the maintenance record.'],
  ['compliances_signed_chk', 'signedBy', 'Say who signed: name and certificate.'],
];

const SQUAWKS: ConstraintWords[] = [
  ['squawks_title_chk', 'title', 'Say in up to 200 characters what is wrong.'],
  [
    'squawks_state_chk',
    'state',
    'Name one of reported, grounding, deferred, fixed, no-fault-found, duplicate.',
  ],
  [
    'squawks_closed_chk',
    undefined,
    'A squawk is closed when it is fixed, no fault was found or it is a duplicate, and only then. Read it again and repeat.',
  ],
  ['squawks_fixed_chk', 'correctiveAction', 'A fixed squawk says what was done and who signed for it.'],
  ['squawks_cleared_chk', 'finding', 'Say what was tested, and who signed for it.'],
  [
    'squawks_certificate_chk',
    'signedCertificate',
    'Give the certificate in up to 200 characters, or leave it out.',
  ],
  ['squawks_closings_chk', undefined, 'Closings are counted from 0. Read the squawk again and repeat.'],
  [
    'squawks_closed_from_chk',
    undefined,
    'A squawk is closed out of an open state. Read it again and repeat.',
  ],
  ['squawks_reopened_chk', 'because', 'Say in at least 5 characters why it is opened again.'],
  [
    'squawks_duplicate_chk',
    'ofSquawkId',
    'A duplicate, and only a duplicate, names the squawk it is kept in.',
  ],
  ['squawks_duplicate_open_chk', 'ofSquawkId', 'Choose another squawk of this aircraft that is open.'],
  [
    'squawks_duplicate_weaker_chk',
    'ofSquawkId',
    'The squawk it is kept in has to ground the aircraft, and name the equipment, as this one does. Change that one first.',
  ],
  [
    'squawks_kept_equipment_chk',
    'equipmentId',
    'Squawks that are kept in this one are about this equipment. Reopen them first, or leave the equipment as it is.',
  ],
  [
    'squawk_parts_closing_chk',
    undefined,
    'A part belongs to a closing, counted from 1. Read the squawk again.',
  ],
  ['squawk_parts_number_chk', 'parts', 'Give each part its number in up to 80 characters.'],
  ['squawk_parts_serial_chk', 'parts', 'Give the serial number in up to 80 characters, or leave it out.'],
  ['squawk_parts_name_chk', 'parts', 'Give each part a name in up to 200 characters.'],
  ['squawk_parts_quantity_chk', 'parts', 'Give a quantity of more than 0, and at most 10,000.'],
  ['attachments_media_chk', 'photo', 'Send a photo as JPEG, PNG or WebP.'],
  ['attachments_size_chk', 'photo', 'Send a photo of at most 8 MB.'],
  ['attachments_content_chk', 'photo', 'The photo is not what its length and digest say. Send it again.'],
  ['attachments_count_chk', 'photo', 'A squawk holds six photos at most. Report what is more in words.'],
  [
    'deferrals_span_chk',
    'deadlineOn',
    'The deadline lies on or after the day of the deferral. Check both dates.',
  ],
];

export const FLEET_CHECKS: ConstraintWords[] = [...MODELS, ...AIRCRAFT, ...METERS, ...ITEMS, ...SQUAWKS];
