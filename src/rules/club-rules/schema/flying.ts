/**
 * What the log says. Totals are those of the club's record: the entries the sheet lists and the sums of those before.
 * Time in simulators and training devices is never among them. Look-backs count to the end of the flight, and an entry
 * exactly so many days back counts.
 */
import type { LocalDate } from '../../calendar/dates.js';
import type { AircraftType } from '../../facts/aircraft.js';
import type { LogFact, LogSum } from '../../facts/person.js';
import type { Entry, Reading } from './entry.js';
import { newest } from './papers.js';

/** What an entry of the log and a sum of earlier ones have in common. */
type Flown = Pick<
  LogFact,
  'modelId' | 'category' | 'class' | 'tailwheel' | 'role' | 'totalTenths' | 'nightTenths'
>;
type Narrow = (flown: Flown, type: AircraftType | null) => boolean;

const all: Narrow = () => true;
const inModel: Narrow = (flown, type) => flown.modelId === type!.modelId;
const inClass: Narrow = (flown, type) => flown.category === type!.category && flown.class === type!.class;

const totals = (
  name: string,
  says: string,
  narrow: Narrow,
  ofType: boolean,
  tenths: (flown: Flown) => number = (flown) => flown.totalTenths,
): Entry => ({
  name,
  type: 'double',
  unit: 'h',
  range: [0, 1_000_000],
  own: ['log', 'logBefore'],
  ...(ofType ? { aircraft: ['type'] as const } : {}),
  overTime: true,
  says,
  get: (r) => {
    const type = ofType ? r.aircraft('type') : null;
    const { sums } = r.person('logBefore');
    r.spend(sums.length);
    const before = sums.filter((one: LogSum) => narrow(one, type)).reduce((sum, one) => sum + tenths(one), 0);
    return (
      entries(r)
        .filter((one) => narrow(one, type))
        .reduce((sum, one) => sum + tenths(one), before) / 10
    );
  },
});

/** Sums what each entry of the last days gives. */
const recent = (
  name: string,
  of: { type: 'int' | 'double'; unit?: string; says: string; narrow?: Narrow; ofType?: boolean },
  give: (entry: LogFact) => number,
  what: (given: number) => string,
): Entry => ({
  name,
  type: of.type,
  ...(of.unit ? { unit: of.unit } : {}),
  range: [0, 1_000_000],
  own: ['log'],
  ...(of.ofType ? { aircraft: ['type'] as const } : {}),
  takes: { kind: 'days', name: 'days' },
  overTime: true,
  says: of.says,
  get: (r, days: number) => {
    const type = of.ofType ? r.aircraft('type') : null;
    const found = entries(r)
      .filter((one) => (of.narrow ?? all)(one, type) && give(one) > 0)
      .filter((one) => r.moment.endsWithinDaysOf(one.on, days));
    r.counted(found.map((one) => ({ id: one.id, on: one.on, what: what(give(one)) })));
    return found.reduce((sum, one) => sum + give(one), 0);
  },
});

const last = (
  name: string,
  says: string,
  serves: (one: LogFact, type: AircraftType | null) => boolean,
  ofType: boolean,
): Entry => ({
  name,
  type: 'Date',
  own: ['log'],
  ...(ofType ? { aircraft: ['type'] as const } : {}),
  overTime: true,
  says: `${says} Looks back as far as the log of the sheet goes: two years and more.`,
  get: (r): LocalDate | null => {
    const type = ofType ? r.aircraft('type') : null;
    return newest(
      r,
      entries(r).filter((one) => serves(one, type)),
      'last flight',
    );
  },
});

const landings = (count: number): string => `${count} landing${count === 1 ? '' : 's'}`;
const flights = (): string => 'a flight';
const hours = (count: number): string => `${count.toFixed(1)} h`;

export const FLYING: readonly Entry[] = [
  totals('totalHours', 'Hours in all.', all, false),
  totals(
    'commandHours',
    'Hours as pilot in command, alone included.',
    (one) => one.role === 'pilot-in-command' || one.role === 'solo',
    false,
  ),
  totals('nightHours', 'Hours by night.', all, false, (one) => one.nightTenths),
  totals('tailwheelHours', 'Hours in tailwheel aircraft.', (one) => one.tailwheel, false),
  totals('hoursInModel', "Hours in the aircraft's model.", inModel, true),
  totals('hoursInClass', "Hours in the aircraft's category and class.", inClass, true),
  recent(
    'hoursInDays',
    { type: 'double', unit: 'h', says: 'Hours flown within so many days of the flight.' },
    (one) => one.totalTenths / 10,
    hours,
  ),
  recent(
    'hoursInModelInDays',
    {
      ...{ type: 'double', unit: 'h', narrow: inModel, ofType: true },
      says: "Hours in the aircraft's model within so many days of the flight.",
    },
    (one) => one.totalTenths / 10,
    hours,
  ),
  recent(
    'flightsInDays',
    { type: 'int', says: 'Flights within so many days of the flight.' },
    () => 1,
    flights,
  ),
  recent(
    'flightsInModelInDays',
    {
      ...{ type: 'int', narrow: inModel, ofType: true },
      says: "Flights in the aircraft's model within so many days of the flight.",
    },
    () => 1,
    flights,
  ),
  recent(
    'lessonsInDays',
    {
      ...{ type: 'int', narrow: (one) => one.role === 'dual-received' },
      says: 'Flights with an instructor within so many days of the flight.',
    },
    () => 1,
    () => 'a lesson',
  ),
  recent(
    'landingsInDays',
    { type: 'int', says: 'Landings with hands on the controls within so many days of the flight.' },
    (one) => (one.soleManipulator ? one.landings : 0),
    landings,
  ),
  recent(
    'landingsInModelInDays',
    {
      ...{ type: 'int', narrow: inModel, ofType: true },
      says: "Landings in the aircraft's model with hands on the controls within so many days of the flight.",
    },
    (one) => (one.soleManipulator ? one.landings : 0),
    landings,
  ),
  recent(
    'nightLandingsInDays',
    {
      type: 'int',
      says: 'Landings to a full stop between one hour after sunset and one hour before sunrise, hands on the controls, within so many days of the flight.',
    },
    (one) => (one.soleManipulator ? one.nightFullStopLandings : 0),
    landings,
  ),
  last('lastFlightOn', 'Last flight of any kind.', () => true, false),
  last('lastFlightInModelOn', "Last flight in the aircraft's model.", inModel, true),
];

/** Flights of the log that are over when this one departs, or at least begun; devices left out. */
function entries(r: Reading): LogFact[] {
  const log = r.person('log');
  r.spend(log.length);
  return log.filter((one) => one.device === null && r.moment.departsAtOrAfter(one.departedAt));
}
