/** The published schema: every entry says what it is, gives what it says, and reads what it declares. */
import {
  checkRule,
  compileUndated,
  decideCrew,
  judgeRule,
  readsOf,
  SCHEMA,
  toSeconds,
} from '../../../src/rules/index.js';
import { traced } from '../../../src/rules/explain/trace.js';
import { BOOK, flown, flying, memberWith, rule, status } from './scene.js';
import { known, type Entry, type FactSheet } from '../../../src/rules/index.js';
import { KNOWN_AT } from './scene.js';

const ARGUMENTS = { days: '90', hours: '48', clock: '"18:00"', Date: 'date("2026-12-01")' } as const;
const written = (owner: string, entry: Entry): string =>
  `${owner}.${entry.name}${entry.takes ? `(${ARGUMENTS[entry.takes.kind]})` : ''}`;

/** A yes-or-no question about a value of each type that any value of it answers with yes. */
const ANY: Record<Entry['type'], (text: string) => string> = {
  bool: (text) => `${text} || !${text}`,
  int: (text) => `${text} >= -2000000`,
  double: (text) => `${text} >= -2000000.0`,
  string: (text) => `${text}.size() >= 0`,
  'list<string>': (text) => `${text}.size() >= 0`,
  Days: (text) => `${text} >= -2000000`,
  Date: (text) => `${text} >= date("1900-01-01") || ${text} < date("1900-01-01")`,
};
const ALL = SCHEMA.flatMap(({ owner, entries }) =>
  entries.map((entry) => ({ owner, entry, text: written(owner, entry) })),
);

/** A dual flight on which everything is told and on record. */
const full = (): FactSheet => {
  const sheet = memberWith(flying([flown('2027-02-01')], 500), {
    ...{ purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 },
    weather: {
      ...{ observedAt: '2027-03-01T17:30:00Z', windFromDeg: 188, windKt: 12, gustKt: 18 },
      ...{ visibilitySm: 10, ceilingFtAgl: 5000, temperatureC: 5, altimeterInHg: 29.92 },
    },
  });
  sheet.people['instructor-1'] = { ...sheet.people['instructor-1']!, ...flying([flown('2027-02-02')]) };
  const type = sheet.aircraft.type.known ? sheet.aircraft.type.value : null;
  const meters = (['hobbs', 'tachometer', 'airframe'] as const).map((kind) => ({
    ...{
      id: `meter-${kind}`,
      kind,
      tenths: 12_345,
      readAt: KNOWN_AT,
      countsForInspections: kind === 'tachometer',
    },
  }));
  return {
    ...sheet,
    aircraft: {
      ...sheet.aircraft,
      type: known(
        {
          ...type!,
          demonstratedCrosswindKt: 15,
          fuelBurnUsGalPerHour: 8,
          powerPerEngineHp: 160,
          usableFuelUsGal: 48,
        },
        KNOWN_AT,
      ),
      meters: known(meters, KNOWN_AT),
    },
  };
};

test.each(ALL)(
  '$text is told, gives its type, and reads no more and no less than it says',
  ({ owner, entry, text }) => {
    expect(entry.says).toMatch(/^\S.*[.]$/s);
    const requirement = ANY[entry.type](text);
    const check = checkRule({ appliesWhen: 'true', requirement, message: 'No.' });
    expect(check.faults).toBeNull();
    expect(check.rule!.reads).toEqual([...readsOf(owner, entry)].sort());

    const { rule: watched, trace } = traced(compileUndated(rule({ requirement })));
    const sheet = full();
    const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
    const { finding, nextChange } = judgeRule(
      watched,
      sheet,
      { rules: [watched], book: BOOK },
      crew,
      toSeconds(sheet.flight.departs),
    );
    expect([finding.says, finding.status]).toEqual([expect.any(String), 'met']);
    expect([...trace.facts.keys()].sort()).toEqual(check.rule!.reads);
    // What does not change over time asks the moment nothing.
    if (!entry.overTime) expect(nextChange).toBeNull();
  },
);

test('names are plain words, each once for its owner', () => {
  for (const { entries } of SCHEMA) {
    const names = entries.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z][A-Za-z]*$/);
  }
});

test('numbers say their unit where they have one, and words their list', () => {
  const known = (entry: Entry): string => {
    const range = entry.range ? `${entry.range.join('..')}` : '';
    return `${entry.type} ${range} ${entry.unit ?? ''} ${(entry.words ?? []).length}`;
  };
  for (const { entry, text } of ALL) {
    if (entry.type === 'double')
      expect([text, known(entry)]).toEqual([text, expect.stringMatching(/^double -?\d+\.\.\d+ \S+/)]);
    if (entry.type === 'int')
      expect([text, entry.range]).toEqual([text, [expect.any(Number), expect.any(Number)]]);
  }
});

describe('values', () => {
  const holds = (requirement: string, sheet = full()) =>
    expect([requirement, status(requirement, sheet)]).toEqual([requirement, 'met']);

  test('of the flight', () => {
    for (const requirement of [
      'flight.purpose == "dual" && flight.instruction && flight.instructorNamed',
      'flight.personsOnBoard == 2 && flight.passengers == 0 && !flight.alone && !flight.twoPilots',
      'flight.hours == 1.0 && flight.durationHours == 1.0 && flight.rules == "VFR"',
      'flight.from == "XQHB" && flight.to == "XQHB" && flight.airfields == ["XQHB"] && flight.landings == 1',
      'flight.distanceNm == 0.0 && flight.farthestNm == 0.0 && flight.highestAirfieldFt == 5100.0',
      'flight.shortestRunwayFt == 4200 && !flight.unpavedOnly && !flight.unlitOnly',
      'flight.altitudeFt == 8500 && flight.airspace == ["E", "G"]',
      // 2027-03-01T18:00Z is Monday, 11:00 in Denver.
      'flight.date == date("2027-03-01") && flight.arrivalDate == flight.date && !flight.overnight',
      'flight.weekday == "monday" && flight.month == 3 && flight.departsHour == 11',
      'flight.departsBefore("11:01") && !flight.departsBefore("11:00")',
      'flight.arrivesAfter("11:59") && !flight.arrivesAfter("12:00")',
      'flight.departsWithinHours(24) && !flight.departsWithinHours(23)',
      '!flight.atNight && !flight.afterSunset',
      'flight.daysSince(date("2027-02-01")) == 28 && flight.daysSince(member.lastFlightOn) == 28',
    ])
      holds(requirement);
  });

  test('of people: the pilot is the instructor while one teaches', () => {
    for (const requirement of [
      'pilot.certificateLevel == "commercial" && member.certificateLevel == "private"',
      'pilot.isInstructor && !member.isInstructor && instructor.isInstructor',
      'pilot.instrumentRated && !member.instrumentRated',
      'instructor.ratings == ["airplane single-engine-land", "instrument airplane"]',
      'member.totalHours == 51.0 && member.hoursInModel == 51.0 && member.hoursInClass == 51.0',
      'member.commandHours == 51.0 && member.nightHours == 2.0 && member.tailwheelHours == 0.0',
      'member.lastFlightOn == date("2027-02-01") && instructor.lastFlightOn == date("2027-02-02")',
      'member.flightsInDays(28) == 1 && member.flightsInDays(27) == 0 && member.landingsInDays(28) == 1',
      'member.ageYears == 36 && member.standing == "good" && member.medicalClass == 3 && pilot.medicalClass == 2',
      'string(member.clubCheckOn) == "2026-10-01" && member.checkedOutInModel && !("solo" in member.endorsements)',
      'member.memberSince < flight.date && member.flightReviewOn > date("2025-12-31")',
    ])
      holds(requirement);
  });

  test('of the aircraft, the wind, the weather, the loading', () => {
    for (const requirement of [
      'aircraft.makeModel == "Harrow Lark 160" && aircraft.category == "airplane" && !aircraft.tailwheel',
      'aircraft.tachometerHours == 1234.5 && aircraft.inService && aircraft.openSquawks == 0',
      '"transponder" in aircraft.equipment && !("autopilot" in aircraft.equipment)',
      'wind.speedKt == 12.0 && wind.gustKt == 18.0 && wind.crosswindKt > 17.99 && wind.crosswindKt < 18.01',
      'wind.headwindKt < 0.01 && wind.landingTailwindKt < 0.01 && wind.landingCrosswindKt > 17.99',
      'weather.visibilitySm == 10.0 && weather.ceilingFt == 5000.0 && weather.temperatureC == 5.0',
      'loading.fuelUsGal == 40.0 && loading.fuelHours == 5.0 && loading.occupantsLb == 170.0',
    ])
      holds(requirement);
  });

  test('a day that never was is before every other', () => {
    const never = memberWith(flying([]));
    for (const requirement of [
      'pilot.lastFlightOn < date("1900-01-01") && pilot.lastFlightOn <= flight.date && pilot.lastFlightOn != flight.date',
      'string(pilot.lastFlightOn) == "never" && string(pilot.lastFlightOn.plusDays(9)) == "never"',
      'flight.daysSince(pilot.lastFlightOn) > 1000000 && int(flight.daysSince(pilot.lastFlightOn)) == 999999',
      'string(flight.daysSince(pilot.lastFlightOn)) == "never" && flight.daysSince(pilot.lastFlightOn) != 3',
      'pilot.lastFlightOn == pilot.lastFlightInModelOn && pilot.lastFlightOn.plusMonths(1) < flight.arrivalDate',
    ])
      holds(requirement, never);
  });
});
