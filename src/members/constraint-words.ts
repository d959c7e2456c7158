import { registerConstraint } from '../platform/database/constraint-problems.js';

/** What to say when a constraint refuses a row: its name, the field at fault, and what to do. */
export type ConstraintWords = [constraint: string, field: string | undefined, detail: string];

/** Checks: the value is not possible. */
export function registerChecks(words: ConstraintWords[]): void {
  for (const [constraint, field, detail] of words) {
    registerConstraint({
      constraint,
      code: 'value-not-possible',
      status: 422,
      title: 'Not a possible value',
      detail,
      field,
    });
  }
}

/** Foreign keys: the same one refuses a row that names something unknown and the deletion of something still named. */
export function registerReferences(words: ConstraintWords[]): void {
  const title = 'Something this refers to is missing, or still needed';
  for (const [constraint, field, detail] of words) {
    registerConstraint({ constraint, code: 'reference-not-kept', status: 409, title, detail, field });
  }
}
