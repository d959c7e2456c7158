/** What people are told when the database refuses a row of the officer's board. Imported for its effect by the module. */
import { registerWords } from '../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { defineProblems } from '../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'report-closed',
    status: 409,
    title: 'The report is closed',
    detail: 'A closed report takes no more steps. Report what is new as a new one.',
  },
  {
    code: 'report-steps-open',
    status: 409,
    title: 'A step is still open',
    detail: 'Record for every step when it was done and what came of it, then close the report.',
  },
);

registerChecks([
  ['safety_reports_kind_chk', 'kind', 'Name one of hazard, occurrence.'],
  ['safety_reports_place_chk', 'place', 'Say where in up to 200 characters.'],
  ['safety_reports_title_chk', 'title', 'Say in up to 200 characters what it is about.'],
  ['safety_reports_narrative_chk', 'narrative', 'Tell in up to 8000 characters what happened.'],
  ['safety_reports_receipt_chk', undefined, 'A receipt is kept as its digest.'],
  ['safety_reports_receipt_uq', undefined, 'Send the report again.'],
  ['safety_reports_state_chk', undefined, 'A report is open or closed.'],
  ['safety_reports_finding_chk', 'finding', 'Give a finding of 10 to 4000 characters.'],
  ['safety_reports_closed_chk', 'finding', 'A report is closed with a finding, by somebody, at a time.'],
  [
    'safety_reports_named_chk',
    'confidential',
    'A confidential report names nobody; any other says who reports.',
  ],
  ['safety_reports_kept_chk', undefined, 'A report stays as it was told. Report anew what is different.'],
  ['safety_steps_what_chk', 'what', 'Say in up to 1000 characters what is to be done.'],
  ['safety_steps_outcome_chk', 'outcome', 'Say in up to 2000 characters what came of it.'],
  ['safety_steps_done_chk', 'outcome', 'Say when the step was done together with what came of it.'],
  ['override_reviews_finding_chk', 'finding', 'Give a finding of 5 to 2000 characters.'],
  ['override_reviews_append_only', undefined, 'A review stays as it was recorded. Record another one.'],
  ['override_reviews_says_chk', 'finding', 'Say what the review found, or when it is looked at next.'],
]);
registerWords({ code: 'report-closed', status: 409, title: 'The report is closed' }, [
  [
    'safety_steps_open_chk',
    undefined,
    'A closed report takes no more steps. Report what is new as a new one.',
  ],
]);
registerWords({ code: 'report-steps-open', status: 409, title: 'A step is still open' }, [
  ['safety_reports_steps_chk', undefined, 'Record for every step when it was done and what came of it.'],
]);
registerReferences(
  (
    [
      ['safety_reports_aircraft_fk', 'aircraftId'],
      ['safety_reports_reporter_fk', undefined],
      ['safety_reports_closer_fk', undefined],
      ['safety_steps_report_fk', undefined],
      ['safety_steps_responsible_fk', 'responsibleId'],
      ['override_reviews_override_fk', undefined],
      ['override_reviews_member_fk', undefined],
    ] as const
  ).map(([constraint, field]) => [
    constraint,
    field,
    'The record it names is not there, or something still points at it. Read both again.',
  ]),
);
