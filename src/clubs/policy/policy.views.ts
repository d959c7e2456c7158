import { show } from '../../platform/http/views.js';
import type { LocalDate, Parameter } from '../../rules/index.js';
import { valueTypeOf } from './definitions.js';
import { PolicyParameterView, PolicyValueView } from './policy.dto.js';
import type { PolicyValueRow } from './policy-value.entity.js';

/** The value of one parameter that holds on a day: the newest that has begun. */
function inForceOn(ofParameter: PolicyValueRow[], day: LocalDate): PolicyValueRow | undefined {
  return ofParameter
    .filter((row) => row.validFrom <= day)
    .reduce<PolicyValueRow | undefined>(
      (last, row) => (last && last.validFrom > row.validFrom ? last : row),
      undefined,
    );
}

/** One dated value among all those of its parameter. */
export function valueView(
  row: PolicyValueRow,
  ofParameter: PolicyValueRow[],
  day: LocalDate,
): PolicyValueView {
  const current = inForceOn(ofParameter, day);
  const state = row.validFrom > day ? 'to-come' : row.id === current?.id ? 'in-force' : 'past';
  return show(PolicyValueView, row, { state });
}

/** A parameter with all its values, oldest first. */
export function parameterView(
  parameter: Parameter,
  rows: PolicyValueRow[],
  day: LocalDate,
): PolicyParameterView {
  const own = rows.filter((row) => row.parameterId === parameter.id);
  const history = own.map((row) => valueView(row, own, day));
  const current = history.find((value) => value.state === 'in-force' && value.value !== null) ?? null;
  return show(PolicyParameterView, parameter, {
    valueType: valueTypeOf(parameter),
    inForce: current,
    history,
  });
}
