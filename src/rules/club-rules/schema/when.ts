/** When the flight is flown. Each entry asks the moment, so that the answer is known to hold until it changes. */
import { clockSeconds, nextReading, readClock } from '../../calendar/clocks.js';
import { daysBetween, type LocalDate } from '../../calendar/dates.js';
import { touchesNight } from '../../sky/nights.js';
import { DateValue, DaysValue } from '../dates.js';
import type { Entry, Reading } from './entry.js';

export const DAYS_OF_THE_WEEK = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
const HOURS = Array.from({ length: 24 }, (_none, hour) => hour * 3600);

export const WHEN: readonly Entry[] = [
  {
    name: 'date',
    type: 'Date',
    overTime: true,
    says: "Date of departure in the club's zone.",
    get: ({ moment }) => DateValue.ofFlight(moment, 'departure'),
  },
  {
    name: 'arrivalDate',
    type: 'Date',
    overTime: true,
    says: "Date of arrival in the club's zone.",
    get: ({ moment }) => DateValue.ofFlight(moment, 'arrival'),
  },
  {
    name: 'overnight',
    type: 'bool',
    overTime: true,
    says: 'The flight ends on another date than it begins.',
    get: ({ moment }) => moment.departureDate() !== moment.arrivalDate(),
  },
  {
    name: 'weekday',
    type: 'string',
    words: DAYS_OF_THE_WEEK,
    overTime: true,
    says: "Day of the week of departure in the club's zone.",
    get: ({ moment }) => weekdayOf(moment.departureDate()),
  },
  {
    name: 'month',
    type: 'int',
    range: [1, 12],
    overTime: true,
    says: "Month of departure in the club's zone, 1 to 12.",
    get: ({ moment }) => Number(moment.departureDate().slice(5, 7)),
  },
  {
    name: 'departsHour',
    type: 'int',
    range: [0, 23],
    overTime: true,
    says: "Hour on the club's clock at departure, 0 to 23. `departsBefore` is better where it serves.",
    get: (r) => asked(r, 'departs', HOURS, (seconds) => Math.floor(seconds / 3600)),
  },
  {
    name: 'departsBefore',
    type: 'bool',
    takes: { kind: 'clock', name: 'clock' },
    overTime: true,
    says: "The club's clock shows less than so much at departure.",
    get: (r, clock: string) => {
      const limit = readClock(clock)!;
      return asked(r, 'departs', [0, limit], (seconds) => seconds < limit);
    },
  },
  {
    name: 'arrivesAfter',
    type: 'bool',
    takes: { kind: 'clock', name: 'clock' },
    overTime: true,
    says: "The club's clock shows more than so much at arrival. An arrival past midnight shows little: see `overnight`.",
    get: (r, clock: string) => {
      const limit = readClock(clock)!;
      return asked(r, 'arrives', [0, limit + 1], (seconds) => seconds > limit);
    },
  },
  {
    name: 'departsWithinHours',
    type: 'bool',
    takes: { kind: 'hours', name: 'hours' },
    overTime: true,
    says: 'The flight departs within so many hours from when it is asked for.',
    get: ({ moment }, hours: number) => moment.departsAtOrBefore(moment.hoursFromKnowledge(hours)),
  },
  {
    name: 'daysSince',
    type: 'Days',
    unit: 'days',
    range: [-1_000_000, 1_000_000],
    takes: { kind: 'Date', name: 'day' },
    overTime: true,
    says: 'Whole days from a date to the arrival, to be compared with a whole number; since a day that never was it is more than any.',
    get: ({ moment }, day: DateValue) => new DaysValue(day, moment),
  },
  {
    name: 'atNight',
    type: 'bool',
    overTime: true,
    says: 'Some of the flight lies between evening and morning civil twilight at an airfield of its route.',
    get: ({ flight, moment }) => touchesNight(moment, flight.route, 'civil'),
  },
  {
    name: 'afterSunset',
    type: 'bool',
    overTime: true,
    says: 'Some of the flight lies between sunset and sunrise at an airfield of its route.',
    get: ({ flight, moment }) => touchesNight(moment, flight.route, 'lights'),
  },
];

/** Asks what the club's clock shows at one end of the flight; it can change at the readings (seconds past midnight) only. */
function asked<T>(
  { moment }: Reading,
  end: 'departs' | 'arrives',
  readings: readonly number[],
  of: (seconds: number) => T,
): T {
  const { zone, durationSeconds } = moment;
  return moment.watch((span) => {
    const at = span[end];
    const next = nextReading(at, zone, readings);
    // `watch` takes the end of what is known as an arrival.
    return {
      answer: of(clockSeconds(at, zone)),
      edges: [],
      knownTo: end === 'departs' ? next + durationSeconds : next,
      clock: true,
    };
  });
}

/** Day of the week; 2024-01-01 was a Monday. */
export function weekdayOf(date: LocalDate): (typeof DAYS_OF_THE_WEEK)[number] {
  const day = daysBetween('2024-01-01', date) % 7;
  return DAYS_OF_THE_WEEK[(day + 7) % 7]!;
}
