/** What people are told when the database refuses a log entry. Imported for its effect by the module. */
import {
  type ConstraintWords,
  registerChecks,
  registerReferences,
} from '../platform/database/constraint-words.js';

const CHECKS: ConstraintWords[] = [
  ['log_entries_aircraft_chk', 'aircraftWords', 'Say in words which aircraft was flown.'],
  ['log_entries_category_chk', 'category', 'Name one of the categories of 14 CFR 61.5.'],
  ['log_entries_role_chk', 'role', 'Name one of the roles in a flight.'],
  ['log_entries_takeoffs_chk', 'takeoffs', 'Give the number of take-offs, 0 or more.'],
  ['log_entries_landings_chk', 'landings', 'Give the number of landings, 0 or more.'],
  ['log_entries_approaches_chk', 'approaches', 'Give the number of approaches, 0 or more.'],
  ['log_entries_device_chk', 'device', 'Name one of the kinds of training devices, or leave it out.'],
  ['log_entries_total_chk', 'totalH', 'Give the hours, 0 or more.'],
  ['log_entries_night_hours_chk', 'nightH', 'Night hours are part of the total.'],
  ['log_entries_dual_chk', 'dualGivenH', 'Instruction given is part of the total.'],
  ['log_entries_cross_country_chk', 'crossCountryH', 'Cross-country hours are part of the total.'],
  ['log_entries_actual_chk', 'actualInstrumentH', 'Instrument hours are part of the total.'],
  [
    'log_entries_simulated_chk',
    'simulatedInstrumentH',
    'Simulated and actual instrument hours together are part of the total.',
  ],
  ['log_entries_span_chk', 'arrivedAt', 'The flight ends after it begins. Check both times.'],
  ['log_entries_full_stop_chk', 'fullStopLandings', 'Full-stop landings are part of the landings.'],
  ['log_entries_night_takeoffs_chk', 'nightTakeoffs', 'Night take-offs are part of the take-offs.'],
  [
    'log_entries_night_landings_chk',
    'nightFullStopLandings',
    'Night full-stop landings are part of the full-stop landings.',
  ],
];

const REFERENCES: ConstraintWords[] = [
  [
    'log_entries_member_fk',
    undefined,
    'A log entry belongs to a member of the club, and a member with a log is not deleted.',
  ],
  [
    'log_entries_aircraft_fk',
    'aircraftId',
    "An entry names one of the club's aircraft; an aircraft that was flown is not deleted but taken out of service.",
  ],
  [
    'log_entries_model_fk',
    'modelId',
    "An entry names one of the club's models; a model that was flown is not deleted.",
  ],
];

registerChecks(CHECKS);
registerReferences(REFERENCES);
