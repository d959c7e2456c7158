/** Numbers behind the rules, in words: value with its unit, since when, until when, from where. */
import type { LocalDate } from '../calendar/dates.js';
import type { ParameterBook } from '../engine/parameters.js';
import type { Parameter, ParameterValue } from '../parameters/parameter.js';
import { NO_VALUE, yesNo } from './words.js';

/** One dated value; `to` is the first date on which the next one holds. A null value ends the parameter. */
export interface ValueExplained {
  from: LocalDate | null;
  to: LocalDate | null;
  value: ParameterValue | null;
  /** With its unit: '90 days'. */
  says: string;
  reference: string;
}

/** A parameter as the rule book shows it. */
export interface ParameterExplained {
  id: string;
  title: string;
  unit: Parameter['unit'] | null;
  /** The club sets it for itself. */
  ofClub: boolean;
  /** When a person last held it against its source, and how well that source is known; null for the club's own. */
  checkedOn: LocalDate | null;
  status: Parameter['status'] | null;
  /** The value on the day asked for; null when none is in force. */
  inForce: ValueExplained | null;
  /** Oldest first, those to come included. */
  history: ValueExplained[];
}

type Words = (value: ParameterValue) => string;

const withUnit =
  (one: string, many = `${one}s`): Words =>
  (value) =>
    `${value} ${value === 1 ? one : many}`;

/** 18,000 ft, as the rules' sentences have it. */
const grouped =
  (unit: string): Words =>
  (value) =>
    `${typeof value === 'number' ? value.toLocaleString('en-US') : value} ${unit}`;

const UNIT: Record<Parameter['unit'], Words> = {
  days: withUnit('day'),
  'calendar-months': withUnit('calendar month'),
  months: withUnit('month'),
  years: withUnit('year'),
  hours: withUnit('hour'),
  count: String,
  minutes: withUnit('minute'),
  ft: grouped('ft'),
  kt: withUnit('kt', 'kt'),
  lb: grouped('lb'),
  nm: withUnit('NM', 'NM'),
  sm: withUnit('SM', 'SM'),
  hp: withUnit('hp', 'hp'),
  factor: (value) => `times ${value}`,
  date: String,
  flag: (value) => yesNo(value === true),
  choice: String,
  text: String,
  degrees: withUnit('degree'),
  money: String,
  points: withUnit('point'),
};

/** '90 days', 'yes', '18000 ft'; of a parameter that nobody declared, the bare value. */
export function valueSays(value: ParameterValue | null, unit: Parameter['unit'] | null): string {
  if (value === null || String(value).trim() === '') return NO_VALUE;
  return unit === null ? String(value) : UNIT[unit](value);
}

/** A parameter with all its dated values, and the one that holds on `day`. */
export function explainParameter(book: ParameterBook, id: string, day: LocalDate): ParameterExplained {
  const declared = book.declaration(id);
  const unit = declared?.unit ?? null;
  const values = book.history(id);
  const history = values.map(({ from, value, reference }, index): ValueExplained => ({
    from,
    to: values[index + 1]?.from ?? null,
    value,
    says: valueSays(value, unit),
    reference,
  }));
  const inForce = history.filter(({ from }) => from === null || from <= day).at(-1) ?? null;
  const ofClub = id.startsWith('club.');
  return {
    id,
    title: declared?.title ?? id,
    unit,
    ofClub,
    checkedOn: ofClub ? null : (declared?.checkedOn ?? null),
    status: ofClub ? null : (declared?.status ?? null),
    inForce: inForce?.value === null ? null : inForce,
    history,
  };
}
