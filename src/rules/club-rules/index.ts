/** The rules that a club writes itself, in CEL over the published schema. */
export { WARNINGS, warningsOf, type ReadRule, type Warning, type WarningCode } from './analysis/warnings.js';
export { checkRule, type Check, type CheckedRule, type FieldFault, type RuleTexts } from './check.js';
export { compileUndated, rulesOfClub } from './compile.js';
export { type Cost } from './cost.js';
export { answerWith, tryRule, type Tried, type TriedCase } from './dry-run.js';
export { type ExpressionField, type Fault } from './fault.js';
export { MOST, MOST_WHILE_JUDGING } from './meter.js';
export {
  entryOf,
  isOwner,
  readsOf,
  SCHEMA,
  SCHEMA_VERSION,
  type ArgumentKind,
  type Entry,
  type Owner,
  type OwnerEntries,
  type ValueType,
} from './schema/index.js';
export { FUNCTIONS, METHODS } from './vet.js';
export { MOST_DAYS } from './vet-names.js';
