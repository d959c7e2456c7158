/**
 * The published schema, written down a second time. Clubs write rules by it and decisions are judged again with those rules years
 * later, so a name, its type, what it may be and what it hangs on change only on purpose: here and there.
 */
import { entryOf, isOwner, readsOf, SCHEMA, SCHEMA_VERSION, type Entry } from '../../../src/rules/index.js';

/** Counts what is written down below: whoever adds a line adds one here. */
const PUBLISHED_VERSION = 1;

/** Value | unit | least to greatest, or words | facts behind it | whether it changes by time alone | whether it is told late. */
const PUBLISHED = `
flight.purpose: string | solo passengers dual checkout maintenance ferry-to-inspection
flight.rules: string | VFR IFR
flight.personsOnBoard: int | 0 to 1000
flight.passengers: int | 0 to 1000
flight.instruction: bool
flight.instructorNamed: bool
flight.alone: bool
flight.twoPilots: bool
flight.forHire: bool
flight.hours: double | in h | 0 to 100000
flight.durationHours: double | in h | 0 to 100000
flight.from: string
flight.to: string
flight.airfields: list<string>
flight.landings: int | 0 to 100
flight.distanceNm: double | in NM | 0 to 1000000
flight.farthestNm: double | in NM | 0 to 11000
flight.shortestRunwayFt: int | in ft | 0 to 30000
flight.unpavedOnly: bool
flight.unlitOnly: bool
flight.highestAirfieldFt: double | in ft | -2000 to 30000
flight.altitudeFt: int | in ft above mean sea level | -2000 to 100000 | told late
flight.airspace: list<string> | A B C D E G | told late
flight.date: Date | over time
flight.arrivalDate: Date | over time
flight.overnight: bool | over time
flight.weekday: string | monday tuesday wednesday thursday friday saturday sunday | over time
flight.month: int | 1 to 12 | over time
flight.departsHour: int | 0 to 23 | over time
flight.departsBefore(clock: clock): bool | over time
flight.arrivesAfter(clock: clock): bool | over time
flight.departsWithinHours(hours: hours): bool | over time
flight.daysSince(day: Date): Days | in days | -1000000 to 1000000 | over time
flight.atNight: bool | over time
flight.afterSunset: bool | over time
pilot.certificateLevel: string | none student sport recreational lapl private commercial atp | from pic.certificates | over time
pilot.ratings: list<string> | from pic.certificates | over time
pilot.instrumentRated: bool | from pic.certificates aircraft.type | over time
pilot.isInstructor: bool | from pic.instructor | over time
pilot.endorsements: list<string> | from pic.endorsements | over time
pilot.ageYears: int | in years | 0 to 130 | from pic.birthDate | over time
pilot.medicalClass: int | 0 to 4 | from pic.medicals | over time
pilot.medicalExamOn: Date | from pic.medicals | over time
pilot.flightReviewOn: Date | from pic.reviews | over time
pilot.clubCheckOn: Date | from pic.checkouts | over time
pilot.checkedOutInModel: bool | from pic.checkouts aircraft.type | over time
pilot.standing: string | good arrears suspended | from pic.standing
pilot.memberSince: Date | from pic.standing
pilot.totalHours: double | in h | 0 to 1000000 | from pic.log pic.logBefore | over time
pilot.commandHours: double | in h | 0 to 1000000 | from pic.log pic.logBefore | over time
pilot.nightHours: double | in h | 0 to 1000000 | from pic.log pic.logBefore | over time
pilot.tailwheelHours: double | in h | 0 to 1000000 | from pic.log pic.logBefore | over time
pilot.hoursInModel: double | in h | 0 to 1000000 | from pic.log pic.logBefore aircraft.type | over time
pilot.hoursInClass: double | in h | 0 to 1000000 | from pic.log pic.logBefore aircraft.type | over time
pilot.hoursInDays(days: days): double | in h | 0 to 1000000 | from pic.log | over time
pilot.hoursInModelInDays(days: days): double | in h | 0 to 1000000 | from pic.log aircraft.type | over time
pilot.flightsInDays(days: days): int | 0 to 1000000 | from pic.log | over time
pilot.flightsInModelInDays(days: days): int | 0 to 1000000 | from pic.log aircraft.type | over time
pilot.lessonsInDays(days: days): int | 0 to 1000000 | from pic.log | over time
pilot.landingsInDays(days: days): int | 0 to 1000000 | from pic.log | over time
pilot.landingsInModelInDays(days: days): int | 0 to 1000000 | from pic.log aircraft.type | over time
pilot.nightLandingsInDays(days: days): int | 0 to 1000000 | from pic.log | over time
pilot.lastFlightOn: Date | from pic.log | over time
pilot.lastFlightInModelOn: Date | from pic.log aircraft.type | over time
aircraft.registration: string | from aircraft.type
aircraft.makeModel: string | from aircraft.type
aircraft.typeDesignator: string | from aircraft.type
aircraft.category: string | airplane rotorcraft glider lighter-than-air powered-lift | from aircraft.type
aircraft.class: string | single-engine-land single-engine-sea multi-engine-land multi-engine-sea helicopter gyroplane none | from aircraft.type
aircraft.seats: int | 0 to 1000 | from aircraft.type
aircraft.engines: int | 0 to 20 | from aircraft.type
aircraft.powerPerEngineHp: double | in hp | 0 to 100000 | from aircraft.type
aircraft.tailwheel: bool | from aircraft.type
aircraft.retractableGear: bool | from aircraft.type
aircraft.controllablePropeller: bool | from aircraft.type
aircraft.pressurised: bool | from aircraft.type
aircraft.usableFuelUsGal: double | in US gal | 0 to 100000 | from aircraft.type
aircraft.demonstratedCrosswindKt: double | in kt | 0 to 200 | from aircraft.type
aircraft.inService: bool | from aircraft.use
aircraft.openSquawks: int | 0 to 10000 | from aircraft.squawks | over time
aircraft.deferredSquawks: int | 0 to 10000 | from aircraft.squawks | over time
aircraft.equipment: list<string> | from aircraft.equipment | over time
aircraft.tachometerHours: double | in h | 0 to 1000000 | from aircraft.meters
aircraft.hobbsHours: double | in h | 0 to 1000000 | from aircraft.meters
aircraft.airframeHours: double | in h | 0 to 1000000 | from aircraft.meters
wind.speedKt: double | in kt | 0 to 300 | over time | told late
wind.gustKt: double | in kt | 0 to 300 | over time | told late
wind.crosswindKt: double | in kt | 0 to 300 | over time | told late
wind.headwindKt: double | in kt | -300 to 300 | over time | told late
wind.landingCrosswindKt: double | in kt | 0 to 300 | over time | told late
wind.landingTailwindKt: double | in kt | 0 to 300 | over time | told late
weather.visibilitySm: double | in statute miles | 0 to 1000 | over time | told late
weather.ceilingFt: double | in ft above ground | 0 to 100000 | over time | told late
weather.temperatureC: double | in degrees Celsius | -100 to 100 | over time | told late
loading.occupantsLb: double | in lb | 0 to 100000 | told late
loading.baggageLb: double | in lb | 0 to 100000 | told late
loading.fuelUsGal: double | in US gal | 0 to 100000 | told late
loading.fuelHours: double | in h | 0 to 100000 | from aircraft.type | told late
`;

function published(owner: (typeof SCHEMA)[number]['owner'], entry: Entry): string {
  const { name, takes, type, unit, range, words, overTime, toldLate } = entry;
  const reads = readsOf(owner, entry);
  return [
    `${owner}.${name}${takes ? `(${takes.name}: ${takes.kind})` : ''}: ${type}`,
    ...(unit ? [`in ${unit}`] : []),
    ...(range ? [range.join(' to ')] : []),
    ...(words ? [words.join(' ')] : []),
    ...(reads.length > 0 ? [`from ${reads.join(' ')}`] : []),
    ...(overTime === true ? ['over time'] : []),
    ...(toldLate === true ? ['told late'] : []),
  ].join(' | ');
}

test('every value is published as written down, and every one written down is there', () => {
  const lines = SCHEMA.filter(({ owner }) => owner !== 'member' && owner !== 'instructor').flatMap(
    ({ owner, entries }) => entries.map((entry) => published(owner, entry)),
  );
  expect(lines).toEqual(PUBLISHED.trim().split('\n'));
  expect(SCHEMA_VERSION).toBe(PUBLISHED_VERSION);
});

test('a meter is called one, and the time of the airframe is not', () => {
  expect(
    ['tachometerHours', 'hobbsHours', 'airframeHours'].map((name) => entryOf('aircraft', name)!.says),
  ).toEqual([
    'Newest reading of the tachometer, when the flight is asked for.',
    'Newest reading of the Hobbs meter, when the flight is asked for.',
    'Newest reading of the airframe time, when the flight is asked for.',
  ]);
});

test('the member and the instructor have the values of the pilot, each from their own facts', () => {
  const of = (owner: 'pilot' | 'member' | 'instructor', role: string): string[] =>
    SCHEMA.find((one) => one.owner === owner)!.entries.map((entry) =>
      published(owner, entry).replace(`${owner}.`, '').replaceAll(` ${role}.`, ' '),
    );
  expect(of('member', 'member')).toEqual(of('pilot', 'pic'));
  expect(of('instructor', 'instructor')).toEqual(of('pilot', 'pic'));
  expect(readsOf('instructor', entryOf('instructor', 'hoursInModel')!)).toEqual([
    'instructor.log',
    'instructor.logBefore',
    'aircraft.type',
  ]);
});

test('owners come in the order in which people read them; nothing else stands before a dot', () => {
  expect(SCHEMA.map(({ owner, role }) => [owner, role])).toEqual([
    ...[
      ['flight', null],
      ['pilot', 'pic'],
      ['member', 'member'],
      ['instructor', 'instructor'],
    ],
    ...[
      ['aircraft', null],
      ['wind', null],
      ['weather', null],
      ['loading', null],
    ],
  ]);
  expect(SCHEMA.every(({ owner }) => isOwner(owner))).toBe(true);
  expect(['Pilot', 'club', '', 'constructor'].map(isOwner)).toEqual([false, false, false, false]);
  expect(entryOf('flight', 'totalHours')).toBeUndefined();
});
