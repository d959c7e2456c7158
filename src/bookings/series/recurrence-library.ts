/**
 * The library of recurrences. It is CommonJS whose names Node cannot see from an ES module, only its default; compiled to CommonJS, as
 * the tests are, it has its names and no default.
 */
import * as names from 'rrule';

interface Library {
  RRule: typeof names.RRule;
}

const found = names as unknown as Library & { default?: Library };

export const { RRule } = found.default?.RRule ? found.default : found;
