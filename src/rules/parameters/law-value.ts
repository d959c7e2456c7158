/** Numbers of the law, of whichever country: all are held against their source anew within the year. */
import { defineParameter, type DatedValue, type Parameter, type ParameterValue } from './parameter.js';

/**
 * A value that an amendment changed, or that began on a date: oldest first. One that only a past body of a rule reads is
 * not ended here: the body's own dates end it.
 */
export function amendedLawValue(
  id: string,
  title: string,
  unit: Parameter['unit'],
  values: DatedValue[],
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

/** A value that has stood unchanged for as long as the engine judges flights. */
export function lawValue(
  id: string,
  title: string,
  unit: Parameter['unit'],
  value: ParameterValue,
  reference: string,
  status: Parameter['status'] = 'seen',
): Parameter {
  return amendedLawValue(id, title, unit, unchanged(value, reference), status);
}

/** The one value of a history without amendments. */
export const unchanged = (value: ParameterValue, reference: string): DatedValue[] => [
  { from: null, value, reference },
];
