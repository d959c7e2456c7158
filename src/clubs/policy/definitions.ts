import { type Parameter, type ParameterValue, POLICY_PARAMETERS, rulesetFor } from '../../rules/index.js';
import { JURISDICTIONS } from '../club.dto.js';
import { parameterIsLaw, parameterUnknown, valueOfWrongType } from './policy.problems.js';

const policyById = new Map(POLICY_PARAMETERS.map((parameter) => [parameter.id, parameter]));

/**
 * The definition of a parameter that a club may set.
 * @throws ProblemException 422 when it is unknown, or the law's.
 */
export function policyParameter(id: string): Parameter {
  const parameter = policyById.get(id);
  if (parameter) return parameter;
  const law = lawParameter(id);
  throw law ? parameterIsLaw(law) : parameterUnknown(id);
}

/** The law's parameter with this id, in any jurisdiction. */
function lawParameter(id: string): Parameter | undefined {
  for (const jurisdiction of JURISDICTIONS) {
    const declared = rulesetFor(jurisdiction, { values: [] }).book.declaration(id);
    if (declared) return declared;
  }
  return undefined;
}

/** What kind of value a parameter takes: that of the value it starts with. */
export function valueTypeOf(parameter: Parameter): 'number' | 'boolean' | 'string' {
  const value = parameter.values.find((dated) => dated.value !== null)!.value!;
  return typeof value as 'number' | 'boolean' | 'string';
}

/** Units counted in whole numbers. */
const WHOLE: ReadonlySet<Parameter['unit']> = new Set([
  'days',
  'calendar-months',
  'months',
  'years',
  'count',
  'minutes',
]);
const LARGEST = 100_000;

/**
 * Holds a value against the parameter's definition.
 * @throws ProblemException 422 naming the parameter and what it takes.
 */
export function requireValueOf(parameter: Parameter, value: unknown): asserts value is ParameterValue | null {
  if (value === null) return;
  const wanted = wantedValue(parameter);
  if (!wanted.fits(value)) throw valueOfWrongType(parameter, wanted.words);
}

function wantedValue(parameter: Parameter): { words: string; fits: (value: unknown) => boolean } {
  const type = valueTypeOf(parameter);
  if (type === 'boolean') return { words: 'true or false', fits: (value) => typeof value === 'boolean' };
  if (type === 'string') {
    const fits = (value: unknown) => typeof value === 'string' && value.trim() !== '' && value.length <= 200;
    return { words: 'a text of up to 200 characters', fits };
  }
  const whole = WHOLE.has(parameter.unit);
  const fits = (value: unknown) =>
    typeof value === 'number' && value >= 0 && value <= LARGEST && (!whole || Number.isInteger(value));
  return { words: `a ${whole ? 'whole number' : 'number'} from 0 to ${LARGEST}`, fits };
}
