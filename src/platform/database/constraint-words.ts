/** The two kinds of refusal most constraints mean; the words are each one's own. */
import { registerWords, type ConstraintProblem, type ConstraintWords } from './constraint-problems.js';

export type { ConstraintWords };

type Kind = Pick<ConstraintProblem, 'code' | 'status' | 'title'>;

/** Checks: the value is not possible. */
export const VALUE_REFUSED: Kind = { code: 'value-refused', status: 422, title: 'Value not possible' };

/** Foreign keys: the same one refuses a row that names something unknown and the deletion of something still named. */
export const REFERENCE_NOT_KEPT: Kind = {
  code: 'reference-not-kept',
  status: 409,
  title: 'Something this refers to is missing, or still needed',
};

export const registerChecks = (words: readonly ConstraintWords[]): void =>
  registerWords(VALUE_REFUSED, words);

export const registerReferences = (words: readonly ConstraintWords[]): void =>
  registerWords(REFERENCE_NOT_KEPT, words);
