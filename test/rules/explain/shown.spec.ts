/** Every record as people read it: a line each, made of what is there, and nothing said of what is not. */
import { known, type FactSheet } from '../../../src/rules/index.js';
import { explainFact } from '../../../src/rules/explain/index.js';
import { showFact } from '../../../src/rules/explain/shown/index.js';
import type { FactKey } from '../../../src/rules/facts/keys.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import * as R from '../../../src/rules/workshop/records.js';

const ZONE = 'America/Denver';
const shown = (key: FactKey, value: unknown) => showFact(key, value, { fields: new Set(), zone: ZONE });
/** The line of one record. */
const line = (key: FactKey, ...records: object[]): string[] => shown(key, records).map(({ says }) => says);

describe('a person’s papers', () => {
  test.each<[string, string, Partial<typeof R.CERTIFICATE>]>([
    ['of a private pilot', 'private pilot certificate of 2015-05-04, airplane single engine land', {}],
    [
      'with an instrument rating, types, a limitation and an end',
      'airline transport pilot certificate of 2015-05-04, airplane single engine land and airplane multi engine sea, instrument rating for airplane and powered lift, type ratings HL600 and HL610, night flying prohibited, valid through 2028-01-31',
      {
        level: 'atp',
        ratings: [R.RATING, { category: 'airplane', class: 'multi-engine-sea' }],
        instrument: ['airplane', 'powered-lift'],
        typeRatings: ['HL600', 'HL610'],
        limitations: ['night flying prohibited'],
        validThrough: '2028-01-31',
      },
    ],
    [
      'for a category without classes',
      'commercial pilot certificate of 2015-05-04, glider',
      { level: 'commercial', ratings: [{ category: 'glider', class: 'none' }] },
    ],
    [
      'of a balloonist',
      'private pilot certificate of 2015-05-04, lighter than air',
      { ratings: [{ category: 'lighter-than-air', class: 'none' }] },
    ],
    [
      'with one instrument rating and one type',
      'private pilot certificate of 2015-05-04, instrument rating for airplane, type ratings HL600',
      { ratings: [], instrument: ['airplane'], typeRatings: ['HL600'] },
    ],
    ['without a rating', 'student pilot certificate of 2015-05-04', { level: 'student', ratings: [] }],
    ['of a sport pilot', 'sport pilot certificate of 2015-05-04', { level: 'sport', ratings: [] }],
    ['recreational', 'recreational pilot certificate of 2015-05-04', { level: 'recreational', ratings: [] }],
    ['of light aircraft', 'light aircraft pilot certificate of 2015-05-04', { level: 'lapl', ratings: [] }],
    [
      'suspended, once and again',
      'private pilot certificate of 2015-05-04, suspended 2026-02-01 to 2026-03-01 and since 2027-01-01',
      {
        ratings: [],
        suspensions: [{ ...R.SUSPENSION, id: 's-0', from: '2026-02-01', to: '2026-03-01' }, R.SUSPENSION],
      },
    ],
  ])('a certificate %s', (_, says, fields) => {
    expect(line('pic.certificates', { ...R.CERTIFICATE, ...fields })).toEqual([says]);
  });

  test.each<[string, string, Partial<typeof R.INSTRUCTOR>]>([
    [
      'with recent experience',
      'instructor certificate of 2019-06-01, airplane single engine and instrument airplane, recent experience on 2026-06-10',
      {},
    ],
    [
      'with a printed end, suspended',
      'instructor certificate of 2019-06-01, glider, printed end 2025-06-30, suspended since 2027-01-01',
      {
        ratings: ['glider'],
        recentExperienceOn: null,
        printedEndOn: '2025-06-30',
        suspensions: [R.SUSPENSION],
      },
    ],
  ])('an instructor certificate %s', (_, says, fields) => {
    expect(line('pic.instructor', { ...R.INSTRUCTOR, ...fields })).toEqual([says]);
  });

  test('limits, each figure that is set', () => {
    const bare = {
      ...{ windKt: null, crosswindKt: null, gustSpreadKt: null, ceilingDayFtAgl: null },
      ...{ ceilingNightFtAgl: null, visibilityDaySm: null, visibilityNightSm: null, runwayFt: null },
    };
    expect(
      line(
        'pic.limits',
        R.LIMITS,
        { ...R.LIMITS, ...bare, setBy: 'instructor', through: '2027-04-01', night: true },
        { ...R.LIMITS, ...bare, windKt: 0, night: null },
      ),
    ).toEqual([
      'set by the pilot, from 2027-01-10, wind at most 20 kt, crosswind at most 8 kt, gusts at most 8 kt over the wind, ceiling by day at least 2000 ft, ceiling by night at least 3000 ft, visibility by day at least 5 SM, visibility by night at least 8 SM, runway at least 2500 ft, no flying at night',
      'set by an instructor, from 2027-01-10, binding through 2027-04-01',
      'set by the pilot, from 2027-01-10, wind at most 0 kt',
    ]);
  });

  test('medical certificates', () => {
    expect(line('pic.medicals', R.MEDICAL)).toEqual(['class 3, examined 2026-03-15']);
    const withdrawn = { ...R.MEDICAL, class: 1, limitations: ['lenses', 'not by night'] };
    expect(line('pic.medicals', { ...withdrawn, withdrawnOn: '2026-09-01' })).toEqual([
      'class 1, examined 2026-03-15, lenses, not by night, withdrawn 2026-09-01',
    ]);
  });

  test('BasicMed papers tell what was answered, either way, and stay silent where nothing was', () => {
    expect(line('pic.basicMed', R.BASIC_MED)).toEqual([
      'physician’s examination 2024-06-10, course 2025-08-01, driver’s licence through 2030-01-01, medical held after 2006-07-14, last application not denied, last certificate not revoked or suspended',
    ]);
    const other = {
      ...R.BASIC_MED,
      heldMedicalAfter20060714: false,
      lastApplicationDenied: true,
      lastCertificateRevokedOrSuspended: true,
    };
    expect(
      line('pic.basicMed', { ...other, examOn: null, courseOn: null, licenceValidThrough: null }),
    ).toEqual([
      'no medical held after 2006-07-14, last application denied, last certificate revoked or suspended',
    ]);
    const empty = Object.fromEntries(Object.keys(R.BASIC_MED).map((key) => [key, null]));
    expect(line('pic.basicMed', { ...empty, id: 'b' })).toEqual(['nothing entered']);
  });

  test('BasicMed papers stand by the examination, or by the course where there is none', () => {
    const [exam, course, neither] = [
      { ...R.BASIC_MED, id: 'exam', examOn: '2024-06-10', courseOn: '2026-08-01' },
      { ...R.BASIC_MED, id: 'course', examOn: null, courseOn: '2025-08-01' },
      { ...R.BASIC_MED, id: 'neither', examOn: null, courseOn: null },
    ];
    expect(shown('pic.basicMed', [neither, exam, course]).map(({ id }) => id)).toEqual([
      'course',
      'exam',
      'neither',
    ]);
  });

  test('reviews and checks', () => {
    expect(line('pic.reviews', R.REVIEW)).toEqual([
      'flight review on 2026-01-10, airplane, 1.0 h on the ground, 1.2 h in the air',
    ]);
    const check = { ...R.REVIEW, kind: 'instrument-proficiency-check', category: 'powered-lift' };
    const bare = { ...check, groundTenths: null, flightTenths: null };
    expect(line('pic.reviews', { ...bare, endorsedAsReview: true })).toEqual([
      'instrument proficiency check on 2026-01-10, powered lift, endorsed as a flight review',
    ]);
    expect(line('pic.reviews', { ...bare, category: null, groundTenths: 0, flightTenths: 0 })).toEqual([
      'instrument proficiency check on 2026-01-10, 0.0 h on the ground, 0.0 h in the air',
    ]);
  });

  test('endorsements', () => {
    expect(line('pic.endorsements', R.ENDORSEMENT)).toEqual(['complex on 2020-01-01']);
    expect(
      line('pic.endorsements', {
        ...R.ENDORSEMENT,
        kind: 'solo-other-airport-25nm',
        makeModel: 'Harrow Lark 160',
        airfields: ['XQNR', 'XQSL'],
        expiresOn: '2020-03-31',
      }),
    ).toEqual([
      'solo other airport 25nm on 2020-01-01, for the Harrow Lark 160, for XQNR and XQSL, until 2020-03-31',
    ]);
    expect(line('pic.endorsements', { ...R.ENDORSEMENT, kind: 'solo', airfields: ['XQNR'] })).toEqual([
      'solo on 2020-01-01, for XQNR',
    ]);
    // Who flew such aircraft in time needs no endorsement (14 CFR 61.31).
    expect(line('pic.endorsements', { ...R.ENDORSEMENT, kind: 'grandfather-high-performance' })).toEqual([
      'flown before the endorsement was asked for: high performance on 2020-01-01',
    ]);
  });

  test('ratings with an end, and those without', () => {
    expect(line('pic.ratings', R.LICENCE_RATING)).toEqual([
      'single engine piston land rating of 2026-03-20, valid through 2028-03-31',
    ]);
    const language = { ...R.LICENCE_RATING, kind: 'language', designator: 'English', validThrough: null };
    expect(line('pic.ratings', language)).toEqual(['language rating of 2026-03-20, English, without an end']);
  });

  test('a date of birth is no record of its own', () => {
    expect(shown('pic.birthDate', '1990-06-01')).toEqual([{ id: null, on: null, says: '1990-06-01' }]);
  });

  test('papers that wait for an officer', () => {
    expect(line('pic.unverified', R.UNVERIFIED)).toEqual(['medical certificate of class 3, of 2027-02-01']);
    expect(line('pic.unverified', { ...R.UNVERIFIED, on: null })).toEqual(['medical certificate of class 3']);
  });
});

describe('a person’s flying', () => {
  test.each<[string, string, Partial<typeof R.LOG>]>([
    [
      'of a plain hour',
      '2027-02-20: pilot in command, airplane single engine land, 0 take-offs and 0 landings, 1.0 h',
      {},
    ],
    [
      'by day and by night, with instrument work',
      '2027-02-20: instruction received, airplane single engine land, 3 take-offs and 4 landings, 2 to a full stop, by night 1 take-off and 2 landings to a full stop, 3 instrument approaches, holding, tracking, not at the controls alone, 1.5 h',
      {
        role: 'dual-received',
        takeoffs: 3,
        landings: 4,
        fullStopLandings: 2,
        nightTakeoffs: 1,
        nightFullStopLandings: 2,
        approaches: 3,
        holding: true,
        interceptTrack: true,
        soleManipulator: false,
        totalTenths: 15,
      },
    ],
    [
      'with a take-off in the dark and no landing then',
      '2027-02-20: solo, airplane single engine land, 1 take-off and 1 landing, 1 to a full stop, by night 1 take-off and 0 landings to a full stop, 1.0 h',
      { role: 'solo', takeoffs: 1, landings: 1, fullStopLandings: 1, nightTakeoffs: 1 },
    ],
    [
      'with a landing in the dark and a take-off before',
      '2027-02-20: instruction given, airplane single engine land, 1 take-off and 1 landing, 1 to a full stop, by night 0 take-offs and 1 landing to a full stop, 1.0 h',
      { role: 'instructor', takeoffs: 1, landings: 1, fullStopLandings: 1, nightFullStopLandings: 1 },
    ],
    [
      'in a device',
      '2027-02-20: second in command, in a flight training device, 0 take-offs and 0 landings, 1 instrument approach, 1.0 h',
      { role: 'second-in-command', device: 'flight-training-device', approaches: 1 },
    ],
  ])('a log entry %s', (_, says, fields) => {
    expect(line('pic.log', { ...R.LOG, ...fields })).toEqual([says]);
  });

  test('the sums of what came before, up to a day of the club’s', () => {
    // Six in the evening of the 30th in Denver is already the 31st by UTC.
    const before = { through: '2024-12-31T01:00:00Z', sums: [{ ...R.LOG_SUM, flights: 1, landings: 1 }] };
    expect(shown('pic.logBefore', before)).toEqual([
      {
        ...{ id: null, on: '2024-12-30' },
        says: 'through 2024-12-30, pilot in command, airplane single engine land, 1 flight, 1 landing, 100.0 h',
      },
    ]);
    // Sheets that were stored before the class was kept have none.
    const { class: _class, ...classless } = R.LOG_SUM;
    expect(line('pic.log', { ...R.LOG, class: undefined })[0]).toContain('airplane, 0 take-offs');
    expect(shown('pic.logBefore', { through: null, sums: [classless] })[0]!.says).toBe(
      'pilot in command, airplane, 100 flights, 150 landings, 100.0 h',
    );
    const { flights: _flights, landings: _landings, ...hoursAlone } = R.LOG_SUM;
    expect(shown('pic.logBefore', { through: null, sums: [{ ...hoursAlone, class: 'none' }] })).toEqual([
      { id: null, on: null, says: 'pilot in command, airplane, 100.0 h' },
    ]);
  });

  test('sign-offs of the club', () => {
    expect(line('pic.checkouts', R.CHECKOUT)).toEqual(['model checkout on 2025-05-01']);
    const check = { ...R.CHECKOUT, kind: 'annual-check', expiresOn: '2026-05-31' };
    expect(line('pic.checkouts', check)).toEqual(['club check on 2025-05-01, good through 2026-05-31']);
    expect(line('pic.checkouts', { ...R.CHECKOUT, kind: 'differences' })).toEqual([
      'differences checkout on 2025-05-01',
    ]);
  });

  test('standing with the club', () => {
    expect(shown('member.standing', R.STANDING)).toEqual([
      {
        ...{ id: 'standing-1', on: '2020-01-01' },
        says: 'in good standing since 2020-01-01, member from 2020-01-01',
      },
    ]);
    const left = { ...R.STANDING, since: '2026-11-01', membershipThrough: '2027-12-31' };
    const says = (state: string): string => shown('member.standing', { ...left, state })[0]!.says;
    expect(says('arrears')).toBe(
      'account in arrears since 2026-11-01, member from 2020-01-01 through 2027-12-31',
    );
    expect(says('suspended')).toMatch(/^suspended from booking since 2026-11-01/);
  });

  test('what a person is busy with, by the club’s clock', () => {
    expect(line('instructor.commitments', { ...R.COMMITMENT, role: 'second-pilot' })).toEqual([
      'another booking, second pilot, 2027-03-05 11:00 until 2027-03-05 13:00',
    ]);
  });
});

describe('an aircraft’s records', () => {
  test('meters', () => {
    expect(line('aircraft.meters', R.METER)).toEqual([
      'tachometer 1050.0 h, read 2027-02-25 13:00, inspections count by it',
    ]);
    const says = (kind: string): string[] =>
      line('aircraft.meters', { ...R.METER, kind, countsForInspections: false });
    expect(says('hobbs')).toEqual(['Hobbs meter 1050.0 h, read 2027-02-25 13:00']);
    expect(says('airframe')).toEqual(['airframe time 1050.0 h, read 2027-02-25 13:00']);
  });

  test.each<[string, string, Partial<typeof R.ITEM>]>([
    [
      'by calendar months',
      'Annual inspection: last done 2026-09-05, at 1000.0 h, every 12 calendar months',
      {},
    ],
    [
      'never done',
      'Annual inspection: never done, every 12 calendar months',
      { lastDoneOn: null, lastDoneTenths: null },
    ],
    [
      'done when the meter was new',
      'Annual inspection: last done 2026-09-05, at 0.0 h, every 12 calendar months',
      { lastDoneTenths: 0 },
    ],
    [
      'by every other measure',
      'Annual inspection: last done 2026-09-05, at 1000.0 h, every 6 months, every 30 days, every 100.0 h, due 2027-04-01, due at 1100.0 h',
      {
        calendarMonths: null,
        plainMonths: 6,
        days: 30,
        intervalTenths: 1000,
        fixedDueOn: '2027-04-01',
        fixedDueTenths: 11_000,
      },
    ],
    [
      'with all that can be told of it',
      'Annual inspection: last done 2026-09-05, at 1000.0 h, static system opened 2027-01-10, VOR check by ground checkpoint, 2 degrees found, at XQHB, signed, battery new 2025-06-15, useful life ends 2031-06-15, to be replaced by 2028-06-15, 5 minutes used',
      { calendarMonths: null, detail: R.ITEM_DETAIL },
    ],
    [
      'with a check that found no error and a battery not used',
      'Annual inspection: last done 2026-09-05, at 1000.0 h, 0 degrees found, 0 minutes used',
      { calendarMonths: null, detail: { vorErrorDeg: 0, eltUseMinutes: 0 } },
    ],
    [
      'with nothing told of it',
      'Annual inspection: last done 2026-09-05, at 1000.0 h',
      { calendarMonths: null, detail: {} },
    ],
  ])('an item %s', (_, says, fields) => {
    expect(line('aircraft.items', { ...R.ITEM, ...fields })).toEqual([says]);
  });

  test('registrations', () => {
    expect(line('aircraft.registration', R.REGISTRATION)).toEqual(['certificate of 2023-05-10']);
    const ended = { ...R.REGISTRATION, printedExpiryOn: '2030-05-31', endedOn: '2026-12-01' };
    expect(line('aircraft.registration', ended)).toEqual([
      'certificate of 2023-05-10, printed expiry 2030-05-31, ended 2026-12-01',
    ]);
  });

  test('equipment, named once where its name says no more than its kind', () => {
    const gps = { ...R.EQUIPMENT, kind: 'gps-navigator', name: 'gps-navigator' };
    expect(line('aircraft.equipment', gps)).toEqual(['gps navigator, installed 2000-01-01']);
    const all = { ...gps, name: 'Wayfinder 4', removedOn: '2026-01-01', portable: true };
    expect(line('aircraft.equipment', { ...all, requiredByTypeDesign: true })).toEqual([
      'Wayfinder 4 (gps navigator), installed 2000-01-01, removed 2026-01-01, portable, required by the type design',
    ]);
  });

  test.each([
    ['reported', 'reported, not yet looked at'],
    ['grounding', 'grounds the aircraft'],
    ['deferred', 'deferred'],
    ['fixed', 'fixed'],
    ['no-fault-found', 'no fault found'],
  ])('a squawk that is %s', (state, word) => {
    expect(line('aircraft.squawks', { ...R.SQUAWK, state })).toEqual([
      `“something is wrong”, reported 2027-02-20 13:00, ${word}`,
    ]);
  });

  test('a squawk that is deferred tells since when, until when and whether it is placarded', () => {
    const of = (fields: Partial<typeof R.DEFERRAL>): string =>
      line('aircraft.squawks', {
        ...{ ...R.SQUAWK, state: 'deferred' },
        deferral: { ...R.DEFERRAL, ...fields },
      })[0]!.replace(/^.*deferred, /, '');
    expect(of({})).toBe('since 2027-02-20, placarded');
    expect(of({ deadlineOn: '2027-03-20', placarded: false })).toBe('since 2027-02-20, until 2027-03-20');
    expect(of({ placarded: null })).toBe('since 2027-02-20');
  });

  test('permits and changes of equipment', () => {
    expect(line('aircraft.permits', R.PERMIT)).toEqual([
      'ferry to inspection, 2027-02-25 through 2027-03-10',
    ]);
    expect(line('aircraft.work', R.WORK)).toEqual(['Annual inspection: not signed']);
    expect(line('aircraft.work', { ...R.WORK, backAt: '2027-03-01T18:00:00Z' })).toEqual([
      'Annual inspection: not signed, expected back 2027-03-01 11:00',
    ]);
    const signed = { ...R.WORK, signedAt: '2027-02-28T18:00:00Z', backAt: '2027-03-01T18:00:00Z' };
    expect(line('aircraft.work', signed)).toEqual(['Annual inspection: signed 2027-02-28 11:00']);
    expect(line('aircraft.work', { ...signed, checkFlightBecause: 'trim' })).toEqual([
      'Annual inspection: signed 2027-02-28 11:00, check flight to be made: trim',
    ]);
    const flown = { ...signed, checkFlightBecause: 'trim', checkFlownAt: '2027-02-28T20:00:00Z' };
    expect(line('aircraft.work', flown)).toEqual([
      'Annual inspection: signed 2027-02-28 11:00, check flight made 2027-02-28 13:00',
    ]);
    expect(line('aircraft.differences', R.DIFFERENCES)).toEqual([
      'New navigator and attitude display (glass panel), since 2026-11-10',
    ]);
  });

  test('bookings tell who has it and when, never what for', () => {
    const at = '2027-03-05 11:00 until 2027-03-05 13:00';
    expect(line('aircraft.reservations', R.RESERVATION)).toEqual([`another member, ${at}, 1.5 h expected`]);
    expect(line('aircraft.reservations', { ...R.RESERVATION, expectedTenths: 1 })[0]).toContain(
      '0.1 h expected',
    );
    const block = { ...R.RESERVATION, holder: 'new tyres', expectedTenths: 0 };
    expect(line('aircraft.reservations', { ...block, kind: 'maintenance' })).toEqual([
      `maintenance (new tyres), ${at}`,
    ]);
    expect(line('aircraft.reservations', { ...block, kind: 'club', holder: 'open day' })).toEqual([
      `the club (open day), ${at}`,
    ]);
  });
});

describe('an aircraft’s type and use', () => {
  const of = (key: FactKey, value: object, ...fields: string[]): string =>
    showFact(key, value, { fields: new Set(fields), zone: ZONE })
      .map(({ says }) => says)
      .join();
  const type = (fields: Partial<typeof R.AIRCRAFT_TYPE>): string =>
    of('aircraft.type', { ...R.AIRCRAFT_TYPE, ...fields }, ...Object.keys(fields));

  test.each<[Partial<typeof R.AIRCRAFT_TYPE>, string]>([
    [{ registration: 'NX101B' }, 'NX101B'],
    [{ makeModel: 'Harrow Lark 160' }, 'Harrow Lark 160'],
    [{ typeDesignator: 'LARK' }, 'type designator LARK'],
    [{ category: 'powered-lift', class: 'none' }, 'category powered lift, no class'],
    [{ class: 'multi-engine-sea' }, 'class multi engine sea'],
    [{ typeRating: 'HL600' }, 'type rating HL600 needed'],
    [{ seats: 1 }, '1 seat'],
    [{ seats: 4, occupantsCertificated: 1 }, '4 seats, certificated for 1 occupant'],
    [{ occupantsCertificated: 6, engines: 1 }, 'certificated for 6 occupants, 1 engine'],
    [{ engines: 2, powerPerEngineHp: 180 }, '2 engines, 180 hp an engine'],
    [{ retractableGear: true, flaps: true }, 'landing gear retracts, has flaps'],
    [{ retractableGear: false, flaps: false }, 'landing gear fixed, no flaps'],
    [{ controllablePropeller: true, tailwheel: true }, 'controllable propeller, tailwheel'],
    [{ controllablePropeller: false, tailwheel: false }, 'fixed-pitch propeller, no tailwheel'],
    [{ pressurised: true, serviceCeilingFt: 24_000 }, 'pressurised, service ceiling 24000 ft'],
    [
      { pressurised: false, maxOperatingAltitudeFt: 14_000 },
      'not pressurised, maximum operating altitude 14000 ft',
    ],
    [{ maxTakeoffLb: 2400, emptyWeightLb: 1450 }, 'maximum take-off weight 2400 lb, empty weight 1450 lb'],
    [{ usableFuelUsGal: 48, fuelBurnUsGalPerHour: 9 }, '48 US gal of usable fuel, burns 9 US gal an hour'],
    [{ vs1Kcas: 50, demonstratedCrosswindKt: 15 }, 'stall speed VS1 50 kt, demonstrated crosswind 15 kt'],
    [{ kindsOfOperation: ['day-vfr'] }, 'type design allows VFR by day'],
    [
      { kindsOfOperation: ['day-vfr', 'night-vfr', 'ifr'] },
      'type design allows VFR by day, VFR at night and IFR',
    ],
    [{ kindsOfOperation: [] }, 'type design allows nothing on record'],
    [{ certificatedAfter19960311: true, turbine: true }, 'certificated after 1996-03-11, turbine'],
    [
      { certificatedAfter19960311: false, turbine: false },
      'certificated on or before 1996-03-11, no turbine',
    ],
    [{ transportCategory: true, altitudeEngine: true }, 'transport category, altitude engine'],
    [{ transportCategory: false, altitudeEngine: false }, 'not transport category, no altitude engine'],
    [
      { manufacturedOn: '2005-04-01', engineDrivenElectrical: true },
      'manufactured 2005-04-01, engine-driven electrical system',
    ],
    [{ engineDrivenElectrical: false }, 'no engine-driven electrical system'],
    [{ approvedEquipmentList: true }, 'flown under an approved equipment list'],
    [{ approvedEquipmentList: false }, 'not flown under an approved equipment list'],
    // A model's id says nothing to people, nor does the want of a type rating.
    [{ modelId: 'model-lark' }, ''],
    [{ typeRating: null }, ''],
  ])('%j', (fields, says) => {
    expect(type(fields)).toBe(says);
  });

  test.each<[keyof typeof R.AIRCRAFT_TYPE, string]>([
    ['powerPerEngineHp', 'engine power'],
    ['serviceCeilingFt', 'service ceiling'],
    ['maxOperatingAltitudeFt', 'maximum operating altitude'],
    ['maxTakeoffLb', 'maximum take-off weight'],
    ['emptyWeightLb', 'empty weight'],
    ['usableFuelUsGal', 'usable fuel'],
    ['vs1Kcas', 'stall speed VS1'],
    ['fuelBurnUsGalPerHour', 'fuel burn'],
    ['demonstratedCrosswindKt', 'demonstrated crosswind'],
    ['altitudeEngine', 'altitude engine'],
    ['manufacturedOn', 'date of manufacture'],
    ['engineDrivenElectrical', 'engine-driven electrical system'],
    ['approvedEquipmentList', 'approved equipment list'],
  ])('%s that nobody entered is told to be missing', (field, name) => {
    expect(type({ [field]: null })).toBe(`${name} not on record`);
    // A sheet of old may not have the field at all.
    expect(type({ [field]: undefined })).toBe(`${name} not on record`);
  });

  test('only the fields that were read are told', () => {
    expect(showFact('aircraft.type', R.AIRCRAFT_TYPE, { fields: new Set(), zone: ZONE })).toEqual([]);
    expect(of('aircraft.type', R.AIRCRAFT_TYPE, 'seats', 'tailwheel')).toBe('4 seats, no tailwheel');
    expect(showFact('aircraft.type', R.AIRCRAFT_TYPE, { fields: new Set(['seats']), zone: ZONE })).toEqual([
      { id: null, on: null, says: '4 seats' },
    ]);
  });

  test('use by the club', () => {
    const fields = ['status', 'instructionForHire', 'carriesForHire'];
    expect(of('aircraft.use', R.USE, ...fields)).toBe(
      'in service, no instruction for hire is given in it, carries nobody for hire',
    );
    const other = { status: 'out-of-service', instructionForHire: true, carriesForHire: true };
    expect(of('aircraft.use', other, ...fields)).toBe(
      'out of service, instruction for hire is given in it, carries for hire',
    );
  });
});

describe('in a list of records', () => {
  test('the newest comes first, those without a date last, and equals stay as they stood', () => {
    const at = (id: string, on: string | null) => ({ ...R.UNVERIFIED, id, on });
    const all = [
      at('a', null),
      at('b', '2026-01-01'),
      at('c', '2027-01-01'),
      at('d', '2026-01-01'),
      at('e', null),
    ];
    expect(shown('pic.unverified', all).map(({ id }) => id)).toEqual(['c', 'b', 'd', 'a', 'e']);
    expect(all.map(({ id }) => id)).toEqual(['a', 'b', 'c', 'd', 'e']);
  });

  test.each<[FactKey, object, object]>([
    ['pic.certificates', R.CERTIFICATE, { issuedOn: '2030-01-01' }],
    ['pic.instructor', R.INSTRUCTOR, { issuedOn: '2030-01-01' }],
    ['pic.medicals', R.MEDICAL, { examOn: '2030-01-01' }],
    ['pic.reviews', R.REVIEW, { on: '2030-01-01' }],
    ['pic.endorsements', R.ENDORSEMENT, { on: '2030-01-01' }],
    ['pic.ratings', R.LICENCE_RATING, { on: '2030-01-01' }],
    ['pic.log', R.LOG, { on: '2030-01-01' }],
    ['pic.checkouts', R.CHECKOUT, { on: '2030-01-01' }],
    ['pic.commitments', R.COMMITMENT, { from: '2030-01-01T18:00:00Z' }],
    ['aircraft.meters', R.METER, { readAt: '2030-01-01T18:00:00Z' }],
    ['aircraft.items', R.ITEM, { lastDoneOn: '2030-01-01' }],
    ['aircraft.registration', R.REGISTRATION, { issuedOn: '2030-01-01' }],
    ['aircraft.equipment', R.EQUIPMENT, { installedOn: '2030-01-01' }],
    ['aircraft.squawks', R.SQUAWK, { reportedAt: '2030-01-01T18:00:00Z' }],
    ['aircraft.permits', R.PERMIT, { from: '2030-01-01' }],
    ['aircraft.reservations', R.RESERVATION, { from: '2030-01-01T18:00:00Z' }],
    ['aircraft.differences', R.DIFFERENCES, { since: '2030-01-01' }],
    ['aircraft.work', R.WORK, { begunAt: '2030-01-01T18:00:00Z' }],
  ])('%s go by the day of the record', (key, record, later) => {
    const [old, latest] = [record, { ...record, ...later, id: 'latest' }];
    const both = shown(key, [old, latest]);
    expect(both.map(({ id }) => id)).toEqual(['latest', (record as { id: string }).id]);
    // That day itself, by the club's clock, is where it sorts.
    expect(both[0]!.on).toBe('2030-01-01');
  });

  test('what an evening’s record is dated by is the club’s day, not that of UTC', () => {
    const at = '2030-01-02T03:00:00Z';
    const day = (key: FactKey, record: object) => shown(key, [record])[0]!.on;
    expect(day('pic.commitments', { ...R.COMMITMENT, from: at })).toBe('2030-01-01');
    expect(day('aircraft.meters', { ...R.METER, readAt: at })).toBe('2030-01-01');
    expect(day('aircraft.squawks', { ...R.SQUAWK, reportedAt: at })).toBe('2030-01-01');
    expect(day('aircraft.reservations', { ...R.RESERVATION, from: at })).toBe('2030-01-01');
  });
});

describe('what was counted is found again on the record it belongs to', () => {
  const counting = (key: FactKey, change: (sheet: FactSheet) => void, id: string): (string | null)[] => {
    const sheet = baseSheet();
    change(sheet);
    const crew = { picId: 'member-1' } as never;
    const counted = [{ id, on: null, what: 'it counted' }];
    return explainFact(key, { sheet, crew, counted, fields: new Set() }).records.map((one) => one.counted);
  };
  const person = (sheet: FactSheet) => sheet.people['member-1']!;

  test.each<[string, FactKey, (sheet: FactSheet) => void, string]>([
    [
      'a suspension, on the certificate',
      'pic.certificates',
      (sheet) =>
        (person(sheet).certificates = known(
          [{ ...R.CERTIFICATE, suspensions: [R.SUSPENSION] }],
          sheet.knownAt,
        )),
      R.SUSPENSION.id,
    ],
    [
      'a suspension, on the instructor certificate',
      'pic.instructor',
      (sheet) =>
        (person(sheet).instructor = known([{ ...R.INSTRUCTOR, suspensions: [R.SUSPENSION] }], sheet.knownAt)),
      R.SUSPENSION.id,
    ],
    [
      'a compliance, on the item',
      'aircraft.items',
      (sheet) => (sheet.aircraft.items = known([R.ITEM], sheet.knownAt)),
      R.ITEM.complianceId!,
    ],
    [
      'a deferral, on the squawk',
      'aircraft.squawks',
      (sheet) =>
        (sheet.aircraft.squawks = known(
          [{ ...R.SQUAWK, state: 'deferred', deferral: R.DEFERRAL }],
          sheet.knownAt,
        )),
      R.DEFERRAL.id,
    ],
  ])('%s', (_, key, change, id) => {
    expect(counting(key, change, id)).toEqual(['it counted']);
    expect(counting(key, change, 'another')).toEqual([null]);
  });

  test('and a record without such parts counts by its own id alone', () => {
    const bare = (sheet: FactSheet) => {
      sheet.aircraft.items = known([{ ...R.ITEM, complianceId: null }], sheet.knownAt);
      sheet.aircraft.squawks = known([R.SQUAWK], sheet.knownAt);
    };
    expect(counting('aircraft.items', bare, R.ITEM.id)).toEqual(['it counted']);
    expect(counting('aircraft.items', bare, R.ITEM.complianceId!)).toEqual([null]);
    expect(shown('aircraft.items', [{ ...R.ITEM, complianceId: null }])[0]!.alsoIds).toEqual([]);
    expect(shown('aircraft.squawks', [R.SQUAWK])[0]!.alsoIds).toEqual([]);
    expect(counting('aircraft.squawks', bare, R.SQUAWK.id)).toEqual(['it counted']);
  });
});
