import { defineParameter, type DatedValue, type Parameter, type ParameterValue } from '../parameter.js';

/** A value of the Canadian Aviation Regulations, with its amendments, oldest first. */
export function caValue(
  id: `ca.${string}`,
  title: string,
  unit: Parameter['unit'],
  values: DatedValue<ParameterValue>[],
  status: Parameter['status'] = 'seen',
): Parameter {
  return defineParameter<ParameterValue>({
    id,
    title,
    unit,
    values,
    checkedOn: '2026-11-25',
    status,
    recheckAfterMonths: 12,
  });
}

/** A value that has stood unchanged. */
export const unchanged = (value: ParameterValue, reference: string): DatedValue<ParameterValue>[] => [
  { from: null, value, reference },
];
