import { defineParameter, type Parameter, type ParameterValue } from '../parameter.js';

/** A value of 14 CFR that has stood unchanged for as long as the engine judges flights. */
export function lawValue<T extends ParameterValue>(
  id: string,
  title: string,
  unit: Parameter['unit'],
  value: T,
  reference: string,
  status: Parameter['status'] = 'seen',
): Parameter<ParameterValue> {
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

/**
 * A value of 14 CFR that an amendment changed, or that began on a date: oldest first. One that only a past body of a rule
 * reads is not ended here: the body's own dates end it.
 */
export function amendedLawValue(
  id: string,
  title: string,
  unit: Parameter['unit'],
  values: Parameter['values'],
  status: Parameter['status'] = 'seen',
): Parameter<ParameterValue> {
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
