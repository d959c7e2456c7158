/** What each value of the schema is on a flight: the flight as asked, its times, a person's papers. */
import { known, type FactSheet } from '../../../src/rules/index.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import * as R from '../../../src/rules/workshop/records.js';
import { finding, KNOWN_AT, memberWith, NOTHING, status } from './scene.js';
import { type Member, on, asked, typed, holds, missing, counted, changes } from './values-scene.js';

describe('the flight as asked', () => {
  test.each(['solo', 'passengers', 'dual', 'checkout', 'maintenance', 'ferry-to-inspection'] as const)(
    'for %s',
    (purpose) => holds(asked({ purpose }), `flight.purpose == "${purpose}"`),
  );

  test('by its rules, its length, its people', () => {
    holds(asked({ flightRules: 'IFR' }), 'flight.rules == "IFR"');
    holds(asked({ plannedTenths: 15 }), 'flight.hours == 1.5');
    holds(asked({ arrives: '2027-03-01T20:30:00Z' }), 'flight.durationHours == 2.5', 'flight.hours == 1.0');
    holds(asked({ forHire: true }), 'flight.forHire');
    holds(
      asked({ purpose: 'passengers', personsOnBoard: 3 }),
      'flight.passengers == 2 && flight.personsOnBoard == 3 && !flight.alone && !flight.twoPilots',
      '!flight.instructorNamed && !flight.instruction',
    );
    holds(
      asked({ secondPilotId: 'member-2', personsOnBoard: 2, secondPilotRequired: true }),
      'flight.twoPilots && flight.passengers == 0',
    );
    holds(asked({}), 'flight.alone && !flight.forHire && !flight.twoPilots && !flight.instructorNamed');
    holds(asked({ instructorId: 'instructor-1' }), 'flight.instructorNamed && !flight.instruction');
  });

  const NORTH = { ...HOME_FIELD, id: 'airfield-north', code: 'XQNR', name: 'North Ridge' };
  const [north, strip] = [
    { ...NORTH, latitudeDeg: 41, elevationFt: 6200 },
    { ...NORTH, code: 'XQST', latitudeDeg: 39.5, elevationFt: -10 },
  ];
  const runway = { ...HOME_FIELD.runways[0]!, lengthFt: 3000 };

  test('from field to field', () => {
    const there = asked({ route: [HOME_FIELD, north, HOME_FIELD, strip] });
    holds(
      there,
      'flight.from == "XQHB" && flight.to == "XQST" && flight.landings == 3',
      'flight.airfields == ["XQHB", "XQNR", "XQST"]',
      'flight.highestAirfieldFt == 6200.0',
      // A degree of latitude is 60 NM within a third of a percent: out and back, then half a degree south.
      'flight.distanceNm > 149.5 && flight.distanceNm < 150.5',
      'flight.farthestNm > 59.8 && flight.farthestNm < 60.2',
    );
    holds(asked({ route: [HOME_FIELD] }), 'flight.landings == 0', 'flight.distanceNm == 0.0');
    holds(asked({ route: [strip, strip] }), 'flight.highestAirfieldFt == -10.0', 'flight.farthestNm == 0.0');
  });

  test('on runways: of each field the longest, of those the shortest', () => {
    const short = {
      ...north,
      runways: [
        { ...runway, lengthFt: 1800 },
        { ...runway, lengthFt: 2500 },
      ],
    };
    holds(asked({ route: [HOME_FIELD, short] }), 'flight.shortestRunwayFt == 2500');
    holds(asked({ route: [HOME_FIELD, HOME_FIELD] }), 'flight.shortestRunwayFt == 4200');
  });

  test('on runways: a field without a paved or a lit one', () => {
    const [grass, dark] = [
      { ...runway, surface: 'grass' as const },
      { ...runway, lit: false },
    ];
    const with_ = (...runways: (typeof runway)[]) => asked({ route: [HOME_FIELD, { ...north, runways }] });
    holds(with_(grass), 'flight.unpavedOnly && !flight.unlitOnly');
    holds(with_(dark), 'flight.unlitOnly && !flight.unpavedOnly');
    holds(with_(grass, runway), '!flight.unpavedOnly && !flight.unlitOnly');
    holds(with_(dark, runway), '!flight.unlitOnly');
  });

  test('says what is missing of the route', () => {
    const lost = asked({ route: [HOME_FIELD, { ...north, latitudeDeg: 999 }] });
    expect(missing('flight.distanceNm > 1.0', lost)).toBe(
      'Cannot tell: where North Ridge lies is not on record.',
    );
    expect(missing('flight.farthestNm > 1.0', lost)).toContain('where North Ridge lies');
    const bare = asked({ route: [HOME_FIELD, { ...north, runways: [] }] });
    expect(missing('flight.unlitOnly', bare)).toBe('Cannot tell: no runway of North Ridge is on record.');
    const nowhere = asked({ route: [] });
    expect(missing('flight.from == "XQHB"', nowhere)).toBe('Cannot tell: the flight names no airfield.');
    expect(missing('flight.highestAirfieldFt > 0.0', nowhere)).toContain('the flight names no airfield');
    holds(nowhere, 'flight.landings == 0 && flight.airfields.size() == 0');
  });

  test.each([
    ['flight.altitudeFt <= 10000', { maxAltitudeFtMsl: null }, 'the highest altitude is not told'],
    ['"D" in flight.airspace', { airspace: null }, 'the airspace on the way is not told'],
  ])('%s waits for what the member has not told', (requirement, flight, says) => {
    const condition = 'Look at the chart.';
    expect(finding({ requirement, condition }, asked(flight))).toMatchObject({
      ...{ status: 'unknown', says: `Cannot tell: ${says}.`, conditions: [condition] },
    });
  });
});

describe('when it is flown', () => {
  const at = (departs: string, arrives: string): FactSheet => asked({ departs, arrives });

  test('by the dates of the club’s zone', () => {
    // 23:30 on Sunday 28 February to 00:30 on Monday 1 March in Denver.
    const over = at('2027-03-01T06:30:00Z', '2027-03-01T07:30:00Z');
    holds(
      over,
      'flight.overnight && flight.weekday == "sunday" && flight.month == 2',
      'flight.date == date("2027-02-28") && flight.arrivalDate == date("2027-03-01")',
      'flight.date < flight.arrivalDate && flight.departsHour == 23',
      '!flight.departsBefore("23:30") && flight.departsBefore("23:31")',
      '!flight.arrivesAfter("00:30") && flight.arrivesAfter("00:29")',
    );
    holds(
      at('2027-12-03T19:00:00Z', '2027-12-03T20:00:00Z'),
      'flight.month == 12 && flight.weekday == "friday"',
    );
    holds(at('2027-03-01T07:00:00Z', '2027-03-01T08:00:00Z'), 'flight.departsHour == 0 && !flight.overnight');
  });

  test('a clock reading, and when the answer changes next', () => {
    // 11:00 to 12:00 in Denver, seven hours behind UTC.
    expect(changes('flight.departsBefore("11:30")')).toBe('2027-03-01T18:30:00Z');
    expect(changes('flight.departsBefore("10:00")')).toBe('2027-03-02T07:00:00Z');
    // After 12:15, that is from one second past it, an hour after departure.
    expect(changes('flight.arrivesAfter("12:15")')).toBe('2027-03-01T18:15:01Z');
    expect(changes('flight.departsHour == 11')).toBe('2027-03-01T19:00:00Z');
    // The hours of the evening, each to its last second.
    const late = at('2027-03-02T05:59:59Z', '2027-03-02T06:30:00Z');
    holds(late, 'flight.departsHour == 22');
    expect(changes('flight.departsHour == 22', late)).toBe('2027-03-02T06:00:00Z');
    // What shows little again past midnight does so at midnight, not a second later.
    expect(changes('flight.arrivesAfter("11:30")')).toBe('2027-03-02T06:00:00Z');
    // So does what is later than the last reading of the day.
    expect(changes('flight.arrivesAfter("23:59")')).toBe('2027-03-02T05:59:01Z');
  });

  test('hours from asking, to the second', () => {
    // Asked for at 18:00Z the day before.
    const at24 = asked({ departs: '2027-03-01T18:00:00Z' });
    holds(at24, 'flight.departsWithinHours(24)', '!flight.departsWithinHours(23)');
    expect(changes('flight.departsWithinHours(24)')).toBe('2027-03-01T18:00:01Z');
    expect(status('flight.departsWithinHours(0)')).toBe('short');
  });

  test('by night, and by the sun', () => {
    // The sun sets at 17:50 in Denver’s clock there, evening twilight ends at 18:17 (almanac, from memory).
    holds(at('2027-03-01T23:40:00Z', '2027-03-02T00:40:00Z'), '!flight.afterSunset && !flight.atNight');
    holds(at('2027-03-02T00:00:00Z', '2027-03-02T01:00:00Z'), 'flight.afterSunset && !flight.atNight');
    holds(at('2027-03-02T01:00:00Z', '2027-03-02T02:00:00Z'), 'flight.afterSunset && flight.atNight');
  });

  test('days since a date, as a question and as a number', () => {
    holds(
      asked({}),
      'flight.daysSince(date("2027-02-27")) == 2',
      'flight.daysSince(date("2027-02-27")) <= 2 && flight.daysSince(date("2027-02-27")) < 3',
      'flight.daysSince(date("2027-02-27")) >= 2 && flight.daysSince(date("2027-02-27")) > 1',
      '!(flight.daysSince(date("2027-02-27")) > 2) && !(flight.daysSince(date("2027-02-27")) < 2)',
      '2 >= flight.daysSince(date("2027-02-27")) && 3 > flight.daysSince(date("2027-02-27"))',
      '2 <= flight.daysSince(date("2027-02-27")) && 1 < flight.daysSince(date("2027-02-27"))',
      '!(2 < flight.daysSince(date("2027-02-27"))) && !(2 > flight.daysSince(date("2027-02-27")))',
      '!(1 >= flight.daysSince(date("2027-02-27"))) && !(3 <= flight.daysSince(date("2027-02-27")))',
      'flight.daysSince(date("2027-02-27")) != 3 && flight.daysSince(date("2027-02-27")) != 1',
      'int(flight.daysSince(date("2027-02-27"))) + 1 == 3 && string(flight.daysSince(date("2027-02-27"))) == "2"',
      // Two of them are compared as numbers.
      'flight.daysSince(date("2027-02-27")) < flight.daysSince(date("2027-02-26"))',
      'flight.daysSince(date("2027-02-26")) > flight.daysSince(date("2027-02-27"))',
      'flight.daysSince(date("2027-02-27")) <= flight.daysSince(date("2027-02-27"))',
      'flight.daysSince(date("2027-02-27")) >= flight.daysSince(date("2027-02-27"))',
      'flight.daysSince(date("2027-02-27")) == flight.daysSince(date("2027-02-27"))',
      '!(flight.daysSince(date("2027-02-27")) < flight.daysSince(date("2027-02-27")))',
      '!(flight.daysSince(date("2027-02-27")) > flight.daysSince(date("2027-02-27")))',
      '!(flight.daysSince(date("2027-02-26")) <= flight.daysSince(date("2027-02-27")))',
      '!(flight.daysSince(date("2027-02-27")) >= flight.daysSince(date("2027-02-26")))',
      'flight.daysSince(date("2027-02-27")) != flight.daysSince(date("2027-02-26"))',
      // A date to come lies behind by less than nothing.
      'flight.daysSince(date("2027-03-04")) == -3',
    );
  });

  test('dates compared, moved and written', () => {
    holds(
      asked({}),
      'date("2027-01-31").plusMonths(1) == date("2027-02-28")',
      'date("2027-02-27").plusDays(3) == date("2027-03-02") && date("2027-03-02").plusDays(-3) == date("2027-02-27")',
      'string(date("2027-01-31").plusMonths(-2)) == "2026-11-30"',
      'date("2027-01-01") < date("2027-01-02") && date("2027-01-02") > date("2027-01-01")',
      'date("2027-01-01") <= date("2027-01-01") && date("2027-01-01") >= date("2027-01-01")',
      '!(date("2027-01-01") < date("2027-01-01")) && !(date("2027-01-01") > date("2027-01-01"))',
      '!(date("2027-01-02") <= date("2027-01-01")) && !(date("2027-01-01") >= date("2027-01-02"))',
      'date("2027-01-01") != date("2027-01-02") && date("2027-01-01") == date("2027-01-01")',
      // The flight’s dates likewise, against dates beyond all that may be written.
      'flight.date < date("2199-12-31").plusDays(1) && !(flight.date >= date("2199-12-31").plusDays(1))',
      'flight.arrivalDate <= date("2199-12-31").plusDays(9) && flight.date.plusDays(1) > flight.date',
      'string(flight.date.plusMonths(1)) == "2027-04-01"',
    );
  });
});

describe('a person’s papers', () => {
  const certified = (...records: Partial<typeof R.CERTIFICATE>[]): FactSheet =>
    memberWith({
      certificates: on(...records.map((one, at) => ({ ...R.CERTIFICATE, id: `certificate-${at}`, ...one }))),
    });

  test.each(['student', 'sport', 'recreational', 'lapl', 'private', 'commercial', 'atp'] as const)(
    'a certificate of level %s, beside a lower one',
    (level) => {
      holds(certified({ level }), `pilot.certificateLevel == "${level}"`);
      holds(certified({ level }, { level: 'student' }), `pilot.certificateLevel == "${level}"`);
      if (level !== 'atp') holds(certified({ level }, { level: 'atp' }), 'pilot.certificateLevel == "atp"');
    },
  );

  test('the levels rise in the order in which they are published', () => {
    // A light aircraft licence allows less than a private one and is no recreational certificate (Part-FCL, from memory).
    const highest = (...levels: (typeof R.CERTIFICATE)['level'][]) =>
      ['student', 'sport', 'recreational', 'lapl', 'private', 'commercial'].find(
        (level) =>
          status(
            `pilot.certificateLevel == "${level}"`,
            certified(...levels.map((one) => ({ level: one }))),
          ) === 'met',
      );
    expect(highest('sport', 'student')).toBe('sport');
    expect(highest('sport', 'recreational')).toBe('recreational');
    expect(highest('lapl', 'recreational')).toBe('lapl');
    expect(highest('lapl', 'private')).toBe('private');
    expect(highest('commercial', 'private')).toBe('commercial');
  });

  test('a certificate counts from the day it was issued; none is none', () => {
    holds(certified({ issuedOn: '2027-03-01' }), 'pilot.certificateLevel == "private"');
    holds(
      certified({ issuedOn: '2027-03-02' }),
      'pilot.certificateLevel == "none"',
      'pilot.ratings.size() == 0',
    );
    holds(certified(), 'pilot.certificateLevel == "none" && !pilot.instrumentRated');
    expect(changes('pilot.certificateLevel == "private"', certified({ issuedOn: '2027-03-02' }))).toBe(
      '2027-03-02T07:00:00Z',
    );
  });

  test('ratings, in order and each once', () => {
    const many = certified(
      {
        ratings: [R.RATING, { category: 'glider', class: 'none' }],
        instrument: ['airplane'],
        typeRatings: ['HL600'],
      },
      { level: 'commercial' },
    );
    holds(
      many,
      'pilot.ratings == ["airplane single-engine-land", "glider", "instrument airplane", "type HL600"]',
      'pilot.instrumentRated',
    );
    holds(typed({ category: 'glider' }, many), '!pilot.instrumentRated');
  });

  test('an instructor, once certificated and while not suspended', () => {
    const taught = (fields: Partial<typeof R.INSTRUCTOR>): FactSheet =>
      memberWith({ instructor: on({ ...R.INSTRUCTOR, ...fields }) });
    holds(taught({ issuedOn: '2027-03-01' }), 'pilot.isInstructor');
    holds(taught({ issuedOn: '2027-03-02' }), '!pilot.isInstructor');
    holds(taught({ suspensions: [R.SUSPENSION] }), '!pilot.isInstructor');
    holds(taught({ suspensions: [{ ...R.SUSPENSION, to: '2027-02-28' }] }), 'pilot.isInstructor');
    holds(memberWith({ instructor: on() }), '!pilot.isInstructor');
  });

  test('endorsements that stand for the whole flight', () => {
    const endorsed = (...all: Partial<typeof R.ENDORSEMENT>[]): FactSheet =>
      memberWith({
        endorsements: on(...all.map((one, at) => ({ ...R.ENDORSEMENT, id: `e-${at}`, ...one }))),
      });
    holds(
      endorsed({ kind: 'tailwheel' }, { kind: 'complex' }, { kind: 'tailwheel' }),
      'pilot.endorsements == ["complex", "tailwheel"]',
    );
    holds(
      endorsed({ expiresOn: '2027-03-01' }, { on: '2027-03-02', kind: 'solo' }),
      'pilot.endorsements == ["complex"]',
    );
    holds(
      endorsed({ expiresOn: '2027-02-28' }, { on: '2027-03-01', kind: 'solo' }),
      'pilot.endorsements == ["solo"]',
    );
  });

  test('medical certificates: the best of those not withdrawn, the newest examination', () => {
    const examined = (...all: Partial<typeof R.MEDICAL>[]): FactSheet =>
      memberWith({ medicals: on(...all.map((one, at) => ({ ...R.MEDICAL, id: `m-${at}`, ...one }))) });
    const two = examined({ class: 3, examOn: '2026-06-01' }, { class: 2, examOn: '2025-06-01' });
    holds(two, 'pilot.medicalClass == 2', 'pilot.medicalExamOn == date("2026-06-01")');
    expect(counted('pilot.medicalExamOn > date("2020-01-01")', two)).toEqual([
      'm-0 2026-06-01: medical examination',
    ]);
    holds(examined({ examOn: '2027-03-01' }), 'pilot.medicalClass == 3');
    holds(
      examined({ examOn: '2027-03-02' }),
      'pilot.medicalClass == 0',
      'string(pilot.medicalExamOn) == "never"',
    );
    holds(
      examined({ class: 1, withdrawnOn: '2027-02-01' }, { class: 3, examOn: '2025-01-01' }),
      'pilot.medicalClass == 3 && pilot.medicalExamOn == date("2025-01-01")',
    );
    // Canada’s category 4 (SOR/96-433 404.04, from memory).
    holds(examined({ class: 4 }), 'pilot.medicalClass == 4');
    holds(examined(), 'pilot.medicalClass == 0');
    // Of two of the same day the first by its name is the evidence, however they are listed.
    const same = (...ids: string[]) => examined(...ids.map((id) => ({ id })));
    for (const sheet of [same('a', 'b'), same('b', 'a')])
      expect(counted('pilot.medicalExamOn > date("2020-01-01")', sheet)).toEqual([
        'a 2026-03-15: medical examination',
      ]);
  });

  test('flight reviews, and checks endorsed as one', () => {
    const reviewed = (...all: Partial<typeof R.REVIEW>[]): FactSheet =>
      memberWith({ reviews: on(...all.map((one, at) => ({ ...R.REVIEW, id: `r-${at}`, ...one }))) });
    const mixed = reviewed(
      { on: '2025-05-01' },
      { on: '2026-05-01', kind: 'instrument-proficiency-check', endorsedAsReview: true },
      { on: '2026-09-01', kind: 'practical-test' },
      { on: '2027-03-02' },
    );
    holds(mixed, 'pilot.flightReviewOn == date("2026-05-01")');
    expect(counted('pilot.flightReviewOn > date("2020-01-01")', mixed)).toEqual([
      'r-1 2026-05-01: flight review',
    ]);
    holds(reviewed({ on: '2027-03-01' }, { on: '2026-03-01' }), 'pilot.flightReviewOn == flight.date');
    holds(reviewed({ kind: 'practical-test' }), 'string(pilot.flightReviewOn) == "never"');
    // A day that is yet to come is when the answer changes.
    expect(changes('pilot.flightReviewOn < date("2027-03-02")', mixed)).toBe('2027-03-02T07:00:00Z');
  });

  test('sign-offs of the club', () => {
    const signed = (...all: Partial<typeof R.CHECKOUT>[]): FactSheet =>
      memberWith({ checkouts: on(...all.map((one, at) => ({ ...R.CHECKOUT, id: `c-${at}`, ...one }))) });
    const both = signed({ on: '2026-12-01' }, { on: '2026-10-01', kind: 'annual-check', modelId: null });
    holds(both, 'pilot.clubCheckOn == date("2026-10-01")', 'pilot.checkedOutInModel');
    expect(counted('pilot.clubCheckOn > date("2020-01-01")', both)).toEqual(['c-1 2026-10-01: club check']);
    holds(
      signed({ kind: 'differences' }),
      '!pilot.checkedOutInModel',
      'string(pilot.clubCheckOn) == "never"',
    );
    holds(signed({ modelId: 'model-heron' }), '!pilot.checkedOutInModel');
    holds(signed({ expiresOn: '2027-03-01' }), 'pilot.checkedOutInModel');
    holds(signed({ expiresOn: '2027-02-28' }), '!pilot.checkedOutInModel');
    holds(signed({ on: '2027-03-02' }), '!pilot.checkedOutInModel');
  });

  test.each(['good', 'arrears', 'suspended'] as const)('standing: %s', (state) => {
    const sheet = memberWith({ standing: known({ ...R.STANDING, state }, KNOWN_AT) });
    holds(sheet, `member.standing == "${state}"`, 'member.memberSince == date("2020-01-01")');
  });

  test.each<[keyof Member & string, string]>([
    ['birthDate', 'pilot.ageYears >= 18'],
    ['certificates', 'pilot.certificateLevel == "private"'],
    ['certificates', 'pilot.instrumentRated'],
    ['instructor', 'pilot.isInstructor'],
    ['endorsements', '"solo" in pilot.endorsements'],
    ['medicals', 'pilot.medicalClass > 0'],
    ['reviews', 'pilot.flightReviewOn > date("2020-01-01")'],
    ['checkouts', 'pilot.checkedOutInModel'],
    ['standing', 'member.standing == "good"'],
    ['log', 'pilot.flightsInDays(90) > 0'],
    ['logBefore', 'pilot.totalHours > 1.0'],
  ])('without %s it cannot be told whether %s', (fact, requirement) => {
    expect(missing(requirement, memberWith({ [fact]: NOTHING }))).toBe('Cannot tell: it is not on record.');
  });

  test('nobody is older than anybody was', () => {
    holds(memberWith({ birthDate: known('1890-01-01', KNOWN_AT) }), 'pilot.ageYears == 130');
    holds(memberWith({ birthDate: known('2027-01-01', KNOWN_AT) }), 'pilot.ageYears == 0');
    // The next birthday is when the answer changes.
    const sheet = memberWith({ birthDate: known('1990-06-01', KNOWN_AT) });
    expect(changes('pilot.ageYears >= 36', sheet)).toBe('2027-06-01T06:00:00Z');
  });
});
