/**
 * Numbers from a regulation or a club paper, dated. They never sit in a rule's code: a rule asks `p.number(id)` and the
 * accessor gives the value in force on the day of the flight, and records that it was asked.
 */
import type { LocalDate } from '../calendar/dates.js';

/** One value and since when it holds. A null value ends the parameter: asking for it then is unknown, never a guess. */
export interface DatedValue<T extends ParameterValue = ParameterValue> {
  /** First date it holds; null = since before any flight the engine may judge. */
  from: LocalDate | null;
  value: T | null;
  /** Section and, where it changed, the amending document. */
  reference: string;
}

export type ParameterValue = number | boolean | string;

/** A parameter: what it means, in which unit, its history, and when a person last held it against its source. */
export interface Parameter<T extends ParameterValue = ParameterValue> {
  /** 'us.passenger-recency.days', 'club.model-checkout.required', ... never reused. */
  id: string;
  title: string;
  unit:
    | 'days'
    | 'calendar-months'
    | 'months'
    | 'years'
    | 'hours'
    | 'count'
    | 'minutes'
    | 'ft'
    | 'kt'
    | 'lb'
    | 'nm'
    | 'sm'
    | 'hp'
    | 'date'
    | 'flag'
    | 'choice'
    | 'text'
    | 'degrees'
    | 'factor'
    | 'money'
    | 'points';
  values: DatedValue<T>[];
  checkedOn: LocalDate;
  status: 'seen' | 'from memory' | 'common practice, no source' | 'club paper';
  /** Re-check at least this often; older gives an advice finding. */
  recheckAfterMonths: number;
}

/** Declares a parameter; refuses one whose history is out of order, empty or not made of real dates. */
export function defineParameter<T extends ParameterValue>(parameter: Parameter<T>): Parameter<T> {
  if (!/^[a-z]+(\.[a-z0-9-]+)+$/.test(parameter.id))
    throw new Error(`parameter id ${parameter.id} is not dotted lower case`);
  if (parameter.values.length === 0) throw new Error(`parameter ${parameter.id} has no value`);
  let previous = '';
  for (const { from, reference } of parameter.values) {
    const start = from ?? '0000-00-00';
    if (from !== null && !/^\d{4}-\d{2}-\d{2}$/.test(from))
      throw new Error(`parameter ${parameter.id}: ${from} is not a date`);
    if (start <= previous)
      throw new Error(`parameter ${parameter.id}: values must be in date order, ${start} is not`);
    if (reference.trim() === '')
      throw new Error(`parameter ${parameter.id}: the value from ${start} names no reference`);
    previous = start;
  }
  return parameter;
}
