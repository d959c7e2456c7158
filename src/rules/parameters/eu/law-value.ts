import { defineParameter, type Parameter, type ParameterValue } from '../parameter.js';

/** A value of European law that has stood unchanged since Part-FCL began. */
export function euValue<T extends ParameterValue>(
  id: `eu.${string}`,
  title: string,
  unit: Parameter['unit'],
  value: T,
  reference: string,
  status: Parameter['status'] = 'seen',
): Parameter {
  return defineParameter<ParameterValue>({
    id,
    title,
    unit,
    values: [{ from: null, value, reference }],
    checkedOn: '2026-11-25',
    status,
    recheckAfterMonths: 12,
  });
}
