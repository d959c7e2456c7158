import { registerConstraint } from '../platform/database/constraint-problems.js';

/** Nobody writes these tables but the worker; a refusal is a fault of the service and keeps the row as it was. */
const NAMES = [
  'fact_changes_subject_chk',
  'fact_marks_pkey',
  'fact_marks_subject_chk',
  'standing_answers_pkey',
  'standing_answers_answer_chk',
  'standing_answers_because_chk',
  'standing_answers_reads_chk',
  'standing_changes_before_chk',
  'standing_changes_after_chk',
  'standing_changes_because_chk',
  'standing_changes_other_chk',
  'standing_clubs_law_chk',
];

registerConstraint(
  ...NAMES.map((constraint) => ({
    constraint,
    code: 'standing-answer-refused',
    status: 422,
    title: 'The standing answer cannot be kept',
    detail: 'It is written by the service itself. Nothing has changed; tell whoever runs the service.',
  })),
  ...['standing_answers_booking_fk', 'standing_changes_booking_fk'].map((constraint) => ({
    constraint,
    code: 'booking-unknown',
    status: 404,
    title: 'No such booking',
    detail: 'The club has no such booking. Check the id.',
  })),
);
