/** What people are told when the database refuses a club, an airfield, a runway or a policy value. */
import { type ConstraintWords, registerConstraint } from '../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';

const impossible: ConstraintWords[] = [
  [
    'clubs_slug_chk',
    'slug',
    'Use lower-case letters and digits, in words joined by single hyphens, at most 60 characters.',
  ],
  ['clubs_name_chk', 'name', 'Give the club a name.'],
  ['clubs_jurisdiction_chk', 'jurisdiction', 'Name one of US, EU, CA: whose law binds the club.'],
  [
    'audit_log_action_chk',
    undefined,
    'The audit log knows insert, update, delete, override and sign-in only.',
  ],
  ['airfields_code_chk', 'code', 'Write the code with 2 to 8 capital letters or digits.'],
  ['airfields_name_chk', 'name', 'Give the airfield a name.'],
  ['airfields_latitude_chk', 'latitudeDeg', 'Give the latitude in degrees from -90 to 90, north positive.'],
  [
    'airfields_longitude_chk',
    'longitudeDeg',
    'Give the longitude in degrees from -180 to 180, east positive.',
  ],
  ['airfields_elevation_chk', 'elevationFt', 'Give the elevation in feet from -1500 to 20000.'],
  [
    'runways_designator_chk',
    'designator',
    "Write the designator with two digits and L, C or R where needed: '09', '27L'.",
  ],
  [
    'runways_heading_chk',
    'trueHeadingDeg',
    'Give the true heading in degrees from 0 up to, but not including, 360.',
  ],
  ['runways_length_chk', 'lengthFt', 'Give the length in feet from 100 to 20000.'],
  [
    'runways_slope_chk',
    'slopePercent',
    'Give the slope in percent from -20 to 20, up positive, or leave it out.',
  ],
  ['runways_surface_chk', 'surface', 'Name one of paved, grass, gravel, water.'],
  [
    'policy_values_parameter_chk',
    'parameterId',
    "Name a policy parameter of the club: its id begins with 'club.'.",
  ],
  ['policy_values_value_chk', 'value', 'Give a number, true or false, a text, or null to end the parameter.'],
  ['policy_values_reference_chk', 'reference', 'Name the club paper that says so.'],
];

registerChecks(impossible);

registerConstraint({
  constraint: 'clubs_slug_uq',
  code: 'slug-taken',
  status: 409,
  title: 'Short name taken',
  detail: 'Another club has this short name. Choose another one.',
  field: 'slug',
});
registerConstraint({
  constraint: 'audit_log_append_only',
  code: 'audit-log-kept',
  status: 409,
  title: 'The audit log is not edited',
  detail: 'Entries of the audit log stay as they were written.',
});
registerConstraint({
  constraint: 'airfields_code_uq',
  code: 'airfield-code-taken',
  status: 409,
  title: 'Airfield already there',
  detail: 'The club already has an airfield with this code. Edit that one, or use another code.',
  field: 'code',
});
registerReferences([
  [
    'runways_airfield_fk',
    undefined,
    'The airfield of this runway is not there any more, or still has runways. Read the airfields again and repeat.',
  ],
]);
registerConstraint({
  constraint: 'runways_designator_uq',
  code: 'runway-already-there',
  status: 409,
  title: 'Runway already there',
  detail: 'The airfield already has a runway with this designator. Edit that one, or use another designator.',
  field: 'designator',
});
registerConstraint({
  constraint: 'policy_values_from_uq',
  code: 'policy-value-already-there',
  status: 409,
  title: 'Value already there',
  detail: 'The parameter already has a value from this date. Edit that one, or choose another date.',
  field: 'validFrom',
});
