/** Where a pilot stands with instrument experience (14 CFR 61.57(c) and (d)) on a flight. */
import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import type { LogFact } from '../../../../facts/person.js';
import { INSTRUMENT_RECENCY } from '../../../../parameters/us/recency.js';
import {
  instrumentCurrency,
  withTasks,
  type InstrumentCurrency,
  type InstrumentNumbers,
} from './instrument-currency.js';

/** Facts that tell the state. */
export const INSTRUMENT_READS = ['pic.log', 'pic.reviews', 'aircraft.type'] as const;
export type InstrumentReads = (typeof INSTRUMENT_READS)[number];

/** Parameters that tell it. */
export const INSTRUMENT_PARAMETERS = INSTRUMENT_RECENCY.map(({ id }) => id);

/**
 * Amended by 83 FR 30232: from this day the tasks count in an aviation training device as in an aircraft, and no
 * instructor need be there. Before it three hours of more work within two months were asked for in one.
 */
export const DEVICES_SINCE: LocalDate = '2018-11-26';

/**
 * `current`; lapsed within the grace months (`grace`) or longer ago (`over`); or nothing on record (`none`). `through` is
 * the last day of privileges.
 */
export type InstrumentState = { numbers: InstrumentNumbers } & (
  | { kind: 'none' }
  | { kind: 'over'; through: LocalDate }
  | { kind: 'grace'; through: LocalDate; graceThrough: LocalDate }
  | ({ kind: 'current' } & InstrumentCurrency & { through: LocalDate })
);

/** Looks at the record. `trainingDevices`: tasks in aviation training devices count. */
export function instrumentState(
  f: FactView<InstrumentReads>,
  moment: Moment,
  p: Parameters,
  trainingDevices: boolean,
): InstrumentState {
  const { category } = f.get('aircraft.type');
  const numbers: InstrumentNumbers = {
    months: p.number('us.instrument.calendar-months'),
    approaches: p.number('us.instrument.approaches'),
    graceMonths: p.number('us.instrument.grace-calendar-months'),
  };
  const counts = (entry: LogFact): boolean =>
    (trainingDevices || entry.device !== 'aviation-training-device') &&
    moment.departsAtOrAfter(entry.departedAt);
  const entries = withTasks(f.get('pic.log'), category).filter(counts);
  const checks = f
    .get('pic.reviews')
    .filter(
      (review) =>
        review.kind === 'instrument-proficiency-check' &&
        review.category === category &&
        moment.startsOnOrAfter(review.on),
    );
  const currency = instrumentCurrency(entries, checks, numbers);
  const { through } = currency;
  if (through === null) return { kind: 'none', numbers };
  if (moment.endsOnOrBefore(through)) return { kind: 'current', numbers, ...currency, through };
  const graceThrough = throughCalendarMonths(through, numbers.graceMonths);
  return moment.endsOnOrBefore(graceThrough)
    ? { kind: 'grace', numbers, through, graceThrough }
    : { kind: 'over', numbers, through };
}
