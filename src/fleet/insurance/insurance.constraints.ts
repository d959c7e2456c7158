/** What people are told when the database refuses insurance terms. Imported for its effect by the module. */
import { registerConstraint } from '../../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';
import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems({
  code: 'insurance-terms-void',
  status: 409,
  title: 'Taken back already',
  detail: 'These terms were taken back before and do not count. Enter others.',
});

registerChecks([
  ['insurance_terms_source_chk', 'source', 'Say where the terms stand, in up to 200 characters.'],
  [
    'insurance_terms_minimums_chk',
    'minimums',
    'Hours, ages, days and months are above 0; hours lately go with days, 730 at most.',
  ],
  ['insurance_terms_because_chk', 'because', 'Say why, in 5 to 500 characters.'],
  [
    'insurance_terms_span_chk',
    'validThrough',
    'A policy ends on or after the day it begins. Check both dates.',
  ],
  ['insurance_terms_void_chk', 'because', 'Say why the terms are taken back.'],
]);
registerReferences([
  [
    'insurance_terms_aircraft_fk',
    undefined,
    'Insurance terms are of an aircraft, which stays while they are on record.',
  ],
  [
    'insurance_terms_recorder_fk',
    undefined,
    'A member of the club enters the terms, and stays on record with them.',
  ],
  ['insurance_named_pilots_terms_fk', undefined, 'Pilots are named in terms on record.'],
  ['insurance_named_pilots_member_fk', 'namedPilotIds', 'The policy names members of the club.'],
]);
registerConstraint(
  {
    ...{
      constraint: 'insurance_terms_once',
      code: 'insurance-terms-overlap',
      status: 409,
      field: 'validFrom',
    },
    title: 'Terms on record for these days',
    detail: 'Other terms hold on one of these days. End those first, or begin after their last day.',
  },
  {
    ...{ constraint: 'insurance_terms_kept_chk', code: 'insurance-terms-kept', status: 409 },
    title: 'Terms are not changed',
    detail: 'Terms are ended earlier or taken back, and otherwise stay as they were entered. Enter others.',
  },
  {
    ...{ constraint: 'insurance_named_pilots_append_only', code: 'insurance-terms-kept', status: 409 },
    title: 'Terms are not changed',
    detail: 'Whom the terms name stays as it was entered. End them and enter others.',
  },
  {
    ...{
      constraint: 'insurance_named_pilots_pkey',
      code: 'pilot-already-named',
      status: 409,
      field: 'namedPilotIds',
    },
    title: 'Named already',
    detail: 'The terms name this pilot already. Name each once.',
  },
);
