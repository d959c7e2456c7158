/** What to ask in the demo, of whom, and what the answer will be: printed at the start, and held by the tests. */
import { addDays, plusSeconds, toInstant, toSeconds, type Answer, type LocalDate } from '../rules/index.js';
import type { AircraftKey } from './fleet/aircraft.js';
import { aircraftBy } from './fleet/aircraft.js';
import type { FlightAsk } from './flight-ask.js';
import { daylight } from './flying/daylight.js';
import { byKey, type Person } from './people/person.js';
import { HOME } from './places.js';
import { at, clock, type When } from './when.js';

/** One question with its answer. */
export interface Try {
  person: Person;
  aircraft: AircraftKey;
  /** The flight in words. */
  what: string;
  /** The usual time of a try by day or after dark; null for a time of its own. */
  usual: 'day' | 'dark' | null;
  /** The answer hangs on more than who, what, when and where: weather and fuel, VOR, or a transponder that stays off must be told. */
  tells: boolean;
  ask: FlightAsk;
  answer: Answer;
  /** Why, in words. */
  because: string;
}

/** The day of most tries, from today; the fleet and the cast are kept free for them. */
const DAY = 2;

type Flight = Partial<Omit<FlightAsk, 'instructorId'>> & { with?: string };
type Told = [
  who: string,
  aircraft: AircraftKey,
  what: string,
  flight: Flight,
  answer: Answer,
  because: string,
];

/** All tries for a club as of a date. */
export function tries(people: readonly Person[], when: When): Try[] {
  const person = (key: string): Person => byKey(people, key);
  const byDay = (days: number): Flight => slot(addDays(when.today, days), clock(10), 90);
  const day = byDay(DAY);
  const dark = daylight(addDays(when.today, DAY)).dark + 20;
  const night: Flight = slot(addDays(when.today, DAY), Math.ceil(dark / 5) * 5, 60);
  const two: Flight = { ...day, purpose: 'passengers', personsOnBoard: 2 };
  const ifr: Flight = {
    ...day,
    flightRules: 'IFR',
    usesVor: true,
    airspace: ['D', 'E'],
    maxAltitudeFtMsl: 11_000,
  };
  const told: Told[] = [
    ['luis', 'almanac', 'with two friends, in an hour, weather and fuel told', soon(when), 'yes', 'current by day and night, panel shown'],
    ['luis', 'almanac', 'with a friend, after dark', { ...night, purpose: 'passengers', personsOnBoard: 2 }, 'yes-with-conditions', 'three night landings lately; weather and fuel still to be settled'],
    ['henrik', 'almanac', 'with a friend, after dark', { ...night, purpose: 'passengers', personsOnBoard: 2 }, 'dual-only', 'no night landings within 90 days'],
    ['henrik', 'sprig-2', 'with a friend, by day', two, 'yes-with-conditions', 'the deferred lights are not needed by day'],
    ['henrik', 'sprig-1', 'alone, by day', day, 'yes-with-conditions', 'own flying does not need the 100-hour inspection'],
    ['henrik', 'sprig-2', 'a lesson with Otis Farrow', { ...day, purpose: 'dual', personsOnBoard: 2, with: 'otis' }, 'no', 'his instructor experience has lapsed'],
    ['tobias', 'sprig-2', 'alone, by day', day, 'dual-only', 'student without a solo endorsement'],
    ['ines', 'sprig-2', 'alone, by day', day, 'yes-with-conditions', 'student with a solo endorsement that stands'],
    ['ines', 'sprig-1', 'a lesson of three hours with Iris Calloway', { ...day, arrives: plusSeconds(day.departs!, 12_600), plannedHours: 3, purpose: 'dual', personsOnBoard: 2, with: 'iris' }, 'no', 'it would overrun the 100-hour inspection'],
    ['ines', 'sprig-2', 'a lesson after dark with Iris Calloway', { ...night, purpose: 'dual', personsOnBoard: 2, with: 'iris' }, 'no', 'the position lights are deferred'],
    ['pavel', 'sprig-2', 'alone, by day', day, 'dual-only', 'the solo endorsement is over 90 days old'],
    ['ada', 'sprig-2', 'with a friend, by day', two, 'yes-with-conditions', 'a recreational pilot near home'],
    ['ada', 'sprig-2', 'to Sparrow Pass and back', { ...day, route: ['XQQM', 'XQSP', 'XQQM'] }, 'dual-only', 'more than 50 nautical miles from home'],
    ['corinne', 'almanac', 'with a friend, by day', two, 'dual-only', 'last landed 100 days ago'],
    ['priya', 'traverse', 'under instrument rules', ifr, 'yes-with-conditions', 'six approaches lately; fuel still to be settled'],
    ['gideon', 'traverse', 'under instrument rules', ifr, 'dual-only', 'instrument experience lapsed, may still be flown back'],
    ['gideon', 'traverse', 'alone, by day', day, 'yes-with-conditions', 'under visual rules nothing is wanting'],
    ['bettina', 'traverse', 'under instrument rules', ifr, 'dual-only', 'needs an instrument proficiency check'],
    ['roscoe', 'gemel', 'with a friend, by day', two, 'yes-with-conditions', 'commercial pilot, checked out in the twin'],
    ['roscoe', 'gemel', 'under instrument rules by VOR', ifr, 'no', 'the VOR check is over 30 days old'],
    ['roscoe', 'gemel', 'to Sparrow Pass and back, in 30 days', { ...byDay(30), route: ['XQQM', 'XQSP', 'XQQM'] }, 'no', 'the battery of the emergency transmitter is past half its life by then'],
    ['roscoe', 'lindle', 'alone, by day', day, 'no', 'grounded by a squawk'],
    ['sven', 'wicket', 'alone, transponder off', { ...day, usesTransponder: false }, 'yes-with-conditions', 'tailwheel endorsed and current'],
    ['sven', 'wicket', 'alone, transponder on', day, 'no', 'the transponder test has lapsed'],
    ['olga', 'almanac', 'alone, by day', day, 'dual-only', 'has not been shown the electronic panel'],
    ['walter', 'sprig-2', 'with a friend, by day', two, 'yes-with-conditions', 'flies on BasicMed'],
    ['dolores', 'sprig-2', 'alone, by day', day, 'dual-only', 'the BasicMed course has lapsed'],
    ['yusuf', 'sprig-2', 'alone, by day', day, 'yes-with-conditions', 'the medical still holds'],
    ['yusuf', 'sprig-2', 'alone, in 44 days', byDay(44), 'dual-only', 'the medical has run out by then'],
    ['nadia', 'sprig-2', 'alone, by day', day, 'dual-only', 'nobody has verified the new medical yet'],
    ['hana', 'sprig-2', 'alone, by day', day, 'yes-with-conditions', 'the flight review holds until the end of next month'],
    ['greta', 'sprig-2', 'alone, by day', day, 'dual-only', 'the flight review has lapsed'],
    ['clive', 'sprig-2', 'alone, by day', day, 'ask-officer', 'in arrears for longer than the club allows'],
    ['rex', 'sprig-2', 'alone, by day', day, 'ask-officer', 'suspended by the club'],
    ['felix', 'sprig-2', 'alone, in 25 days', byDay(25), 'ask-officer', 'the membership ends before'],
  ]; // prettier-ignore
  return told.map(([who, aircraft, what, flight, answer, because]) => {
    const { with: teacher, ...fields } = flight;
    const ask: FlightAsk = {
      memberId: person(who).id,
      purpose: 'solo',
      personsOnBoard: 1,
      usesTransponder: true,
      usesVor: false,
      airspace: ['E', 'G'],
      maxAltitudeFtMsl: 8500,
      maxSpeedKias: 140,
      ...(teacher ? { instructorId: person(teacher).id } : {}),
      ...fields,
    } as FlightAsk;
    const is = (one: Flight): boolean => ask.departs === one.departs && ask.arrives === one.arrives;
    const usual = is(day) ? 'day' : is(night) ? 'dark' : null;
    const tells = /told|VOR|transponder off/.test(what);
    return { person: person(who), aircraft, what, usual, tells, ask, answer, because };
  });
}

function slot(date: LocalDate, startMinute: number, minutes: number): Flight {
  return {
    departs: at(date, startMinute),
    arrives: plusSeconds(at(date, startMinute), minutes * 60),
    plannedHours: (minutes - 30) / 60,
  };
}

/** In an hour from now, with everything told that is otherwise settled before departure. */
function soon(when: When): Flight {
  const departs = toInstant(Math.ceil((toSeconds(when.asOf) + 3600) / 300) * 300);
  return {
    departs,
    arrives: plusSeconds(departs, 5400),
    plannedHours: 1,
    purpose: 'passengers',
    personsOnBoard: 3,
    route: [HOME.code, HOME.code],
    weather: {
      observedAt: when.asOf,
      windFromDeg: 100,
      windKt: 6,
      visibilitySm: 10,
      ceilingFtAgl: 12_000,
      temperatureC: 12,
      altimeterInHg: 30.02,
      wet: false,
    },
    loading: { rowsLb: [340, 170], baggageLb: 20, fuelUsGal: 45 },
  };
}

/** When a try takes up its aircraft and people, so that no booking is put there. */
export function keptFree(one: Try): { ids: string[]; from: string; to: string } {
  const ids = [
    aircraftBy(one.aircraft).id,
    one.person.id,
    ...(one.ask.instructorId ? [one.ask.instructorId] : []),
  ];
  return { ids, from: one.ask.departs, to: one.ask.arrives };
}
