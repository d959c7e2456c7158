import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { type FieldError, ProblemException, pointerTo } from '../../platform/problems/problem-exception.js';
import type { FieldFault } from '../../rules/index.js';
import type { ClubRuleRow } from './club-rule.entity.js';

/** Rules of its own that a club may have in force or to come. */
export const MOST_IN_FORCE = 60;

defineProblems(
  {
    code: 'club-rule-refused',
    status: 422,
    title: 'The expressions cannot be taken',
    detail:
      'Change the expressions as listed under "errors". What they may read is at GET /api/v1/club-rules/schema.',
  },
  {
    code: 'club-rule-not-draft',
    status: 409,
    title: 'Not a draft',
    detail:
      'Decisions may rest on this version, so it stays as it is. Make the next version of the rule instead.',
  },
  {
    code: 'club-rule-still-draft',
    status: 409,
    title: 'Still a draft',
    detail: 'A draft is edited or removed; only a version that was put in force has a next one, or an end.',
  },
  {
    code: 'club-rule-not-tried',
    status: 409,
    title: 'Not tried yet',
    detail: 'Try the draft as it is first: POST /api/v1/club-rules/{ruleId}/dry-run.',
  },
  {
    code: 'club-rule-day',
    status: 422,
    title: 'Day not possible',
    detail: 'A rule begins and ends today or later: what was decided before rested on the rules of its day.',
  },
  {
    code: 'club-rule-code-taken',
    status: 409,
    title: 'Short name taken',
    detail:
      'The club has, or had, a rule with this short name. Choose another one, or make its next version.',
  },
  {
    code: 'club-rules-too-many',
    status: 409,
    title: 'Too many rules',
    detail: `A club has at most ${MOST_IN_FORCE} rules of its own in force or to come. End one first.`,
  },
);

/** All faults of a rule's expressions, each with its field, line and column. */
export const refusedExpressions = (faults: readonly FieldFault[]): ProblemException =>
  new ProblemException('club-rule-refused', { errors: faults.map(errorOf) });

const errorOf = ({ field, message, line, column }: FieldFault): FieldError => ({
  field,
  pointer: pointerTo(field),
  in: 'body',
  message: `Line ${line}, column ${column}: ${message}`,
  line,
  column,
});

export const notADraft = ({ version, inForceFrom }: ClubRuleRow): ProblemException =>
  new ProblemException('club-rule-not-draft', {
    detail:
      `Version ${version} was put in force from ${inForceFrom} and decisions may rest on it, so it stays as it is. ` +
      'Make the next version of the rule instead (POST .../versions).',
  });

export const stillADraft = (): ProblemException => new ProblemException('club-rule-still-draft');

export const notTried = (before: boolean): ProblemException =>
  new ProblemException('club-rule-not-tried', {
    detail: before
      ? 'The draft was edited since its last dry run. Try it as it is now: POST /api/v1/club-rules/{ruleId}/dry-run.'
      : 'The draft was never tried. Try it first: POST /api/v1/club-rules/{ruleId}/dry-run.',
  });

export const dayNotPossible = (field: 'from' | 'to', detail: string): ProblemException =>
  new ProblemException('club-rule-day', { field, detail });

export const codeTaken = (code: string): ProblemException =>
  new ProblemException('club-rule-code-taken', {
    field: 'slug',
    detail: `The club has, or had, a rule ${code}. Choose another short name, or make that rule's next version.`,
  });

export const weightStays = (): ProblemException =>
  new ProblemException('club-rule-weight-fixed', {
    status: 409,
    field: 'weight',
    detail: 'Earlier versions of the rule have another weight. End the rule and write another one instead.',
  });
