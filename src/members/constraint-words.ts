import { type ConstraintWords, registerWords } from '../platform/database/constraint-problems.js';

export type { ConstraintWords };

/** Checks: the value is not possible. */
export const registerChecks = (words: ConstraintWords[]): void =>
  registerWords({ code: 'value-not-possible', status: 422, title: 'Not a possible value' }, words);

/** Foreign keys: the same one refuses a row that names something unknown and the deletion of something still named. */
export const registerReferences = (words: ConstraintWords[]): void =>
  registerWords(
    {
      code: 'reference-not-kept',
      status: 409,
      title: 'Something this refers to is missing, or still needed',
    },
    words,
  );
