/** A row of a file as a log entry, or the reasons for which it is none. Pure. */
import { type Instant } from '../../rules/calendar/instants.js';
import type { LogFact } from '../../rules/facts/person.js';
import { faults as entryFaults, type Settled } from '../log.checks.js';
import { AircraftBook, type AircraftSaid } from './aircraft.js';
import type { Choices } from './choices.js';
import type { Column } from './detect.js';
import type { ImportField } from './fields.js';
import { timesOf, type TimesOf } from './row-times.js';
import { type Fault, type Values, valuesOf } from './row-values.js';
import type { TableRow } from './table.js';
import type { Times } from './untimed.js';

/** An entry as it would be written, and the line it is from. */
export type Draft = Settled & { line: number };

export interface RowOf extends TimesOf {
  columns: readonly Column[];
  has: ReadonlySet<ImportField>;
  choices: Choices;
  aircraft: AircraftBook;
  now: Instant;
}

export type RowRead =
  { draft: Draft; hours: number; rounded: boolean; kind?: string } | { faults: Fault[]; kind?: string };

/** What stands where the file does not say the place. */
export const NOT_STATED = 'not stated';

export function readRow(row: TableRow, of: RowOf): RowRead {
  const { values, faults } = valuesOf(row, of.columns, of);
  const aircraft = of.aircraft.find(values as AircraftSaid);
  if ('refused' in aircraft) faults.push(whole(aircraft.refused));
  const kind = 'refused' in aircraft ? aircraft.kind : undefined;
  const role = roleOf(values, of.choices.role);
  if (typeof role === 'object') faults.push(whole(role.refused));
  // Of a cell that could not be read nothing more is said.
  const total = totalOf(values, of);
  if (typeof total === 'object' && faults.length === 0) faults.push(whole(total.refused));
  const hours = typeof total === 'number' ? total : 0;
  const times = timesOf(values, tenths(hours), of);
  if ('fault' in times && faults.length === 0) faults.push(times.fault);
  if (faults.length > 0 || 'refused' in aircraft || typeof role === 'object' || 'fault' in times)
    return { faults, ...(kind === undefined ? {} : { kind }) };
  const { by, ...flown } = aircraft;
  const entry: Settled = {
    ...{ ...flown, ...times, ...places(values), role },
    soleManipulator: soleManipulator(values, role, of.choices),
    ...counts(values, of),
    ...{ approaches: number(values, 'approaches'), holding: values.holding === true },
    ...{
      interceptTrack: values.interceptTrack === true,
      device: (values.device as Settled['device']) ?? null,
    },
    ...{ ...parts(values, hours), remarks: String(values.remarks ?? '') },
  };
  const wrong = [...entryFaults(entry, of.now)].map(([field, message]) => whole(said(field, message, times)));
  if (wrong.length > 0) return { faults: wrong };
  const rounded = Math.abs(entry.totalTenths / 10 - hours) > 1e-9;
  const words = by === 'told' ? { kind: AircraftBook.wordsOf(values as AircraftSaid) } : {};
  return { draft: { ...entry, line: row.line }, hours, rounded, ...words };
}

const whole = (because: string): Fault => ({ column: null, cell: null, because });

const said = (field: string, message: string, { timesKnown, flownOn }: Times): string =>
  !timesKnown && field === 'arrivedAt'
    ? `It has no times, and ${flownOn} may not be over where it was flown: give the times, or import it later.`
    : message;

const number = (values: Values, field: ImportField): number => (values[field] as number | undefined) ?? 0;
const tenths = (hours: number): number => Math.round(Number((hours * 10).toFixed(6)));

const places = (values: Values): Pick<Settled, 'fromAirfield' | 'toAirfield'> => ({
  fromAirfield: String(values.fromAirfield ?? NOT_STATED),
  toAirfield: String(values.toAirfield ?? NOT_STATED),
});

/** As the file says; else by the column in which the hours stand, where that is one role only; else as chosen for the file. */
function roleOf(values: Values, chosen: LogFact['role'] | undefined): LogFact['role'] | { refused: string } {
  if (values.role !== undefined) return values.role as LogFact['role'];
  const [pic, sic, solo] = [number(values, 'picH'), number(values, 'sicH'), number(values, 'soloH')];
  const [taught, given] = [number(values, 'dualReceivedH'), number(values, 'dualGivenH')];
  const two = {
    refused: 'Its hours stand under more than one role. Enter it as two flights, or give its role.',
  };
  if (given > 0) return taught + sic + solo > 0 ? two : 'instructor';
  if (taught > 0) {
    // A rated pilot under instruction may log both for the whole flight (14 CFR 61.51(e)(1)(i), (h)).
    return sic + solo > 0 || (pic > 0 && pic !== taught) ? two : 'dual-received';
  }
  if (solo > 0) return sic > 0 || (pic > 0 && pic !== solo) ? two : 'solo';
  if (sic > 0) return pic > 0 ? two : 'second-in-command';
  if (pic > 0) return 'pilot-in-command';
  return (
    chosen ?? { refused: 'It does not say in which role it was flown, and none was chosen for such rows.' }
  );
}

/** Never more than the file or the member says: what counts towards 14 CFR 61.57(a)(1)(i) hangs on it. */
function soleManipulator(
  values: Values,
  role: LogFact['role'],
  { soleManipulator: chosen }: Choices,
): boolean {
  if (values.soleManipulator !== undefined) return values.soleManipulator === true;
  return chosen === true && ['pilot-in-command', 'dual-received', 'solo'].includes(role);
}

/** The hours of a flight; from its times where no column has them. */
function totalOf(values: Values, of: RowOf): number | { refused: string } {
  if (values.totalH !== undefined) return values.totalH as number;
  if (of.has.has('totalH')) return { refused: 'It has no hours.' };
  const times = timesOf(values, 0, of);
  if ('fault' in times) return { refused: times.fault.because };
  if (!times.timesKnown) return { refused: 'It has neither hours nor both times.' };
  return (Date.parse(times.arrivedAt) - Date.parse(times.departedAt)) / 3_600_000;
}

/** Take-offs and landings: all of them, or those by day and at night together. What is not said is not counted. */
function counts(values: Values, of: RowOf) {
  const of2 = (all: ImportField, day: ImportField, night: ImportField): number =>
    (values[all] as number | undefined) ?? number(values, day) + number(values, night);
  const night = of.has.has('nightLandings') ? 'nightLandings' : 'nightFullStopLandings';
  const fullStopLandings = of2('fullStopLandings', 'dayFullStopLandings', 'nightFullStopLandings');
  const told = of.has.has('landings') || of.has.has('dayLandings') || of.has.has('nightLandings');
  const landings = told ? of2('landings', 'dayLandings', night) : fullStopLandings;
  const counted = of.has.has('takeoffs') || of.has.has('dayTakeoffs');
  return {
    takeoffs:
      counted || of.choices.takeoffsAsLandings !== true
        ? of2('takeoffs', 'dayTakeoffs', 'nightTakeoffs')
        : Math.max(landings, number(values, 'nightTakeoffs')),
    ...{ landings, fullStopLandings, nightTakeoffs: number(values, 'nightTakeoffs') },
    nightFullStopLandings: number(values, 'nightFullStopLandings'),
  };
}

/** Hours to a tenth. The two kinds of instrument time are rounded together, so that rounding does not make them more than the flight. */
function parts(values: Values, total: number) {
  const [actual, simulated] = [number(values, 'actualInstrumentH'), number(values, 'simulatedInstrumentH')];
  return {
    totalTenths: tenths(total),
    nightTenths: tenths(number(values, 'nightH')),
    dualGivenTenths: tenths(number(values, 'dualGivenH')),
    crossCountryTenths: tenths(number(values, 'crossCountryH')),
    actualInstrumentTenths: tenths(actual),
    simulatedInstrumentTenths: tenths(actual + simulated) - tenths(actual),
  };
}
