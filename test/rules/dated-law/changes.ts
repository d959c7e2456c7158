/**
 * Changes of law that the packs know, each with its day, where the day comes from, and one sheet whose finding it changes.
 * 'seen' and 'from memory' say whether that source was read in a public copy.
 */
import type { Case, Expected } from '../../../src/rules/workshop/case-table.js';

/** One change of law. */
export interface Change {
  rule: string;
  /** First day under the new law. */
  on: string;
  what: string;
  source: string;
  seen: 'seen' | 'from memory';
  /** The sheet, the same on both days. */
  given: NonNullable<Case['given']>;
  before: Expected;
  after: Expected;
  /** The law's numbers that change with it. */
  parameters?: string[];
}

const BASIC_MED = { examOn: '2017-01-10', courseOn: '2017-01-10' };
const TASKS = { approaches: 6, holding: true, interceptTrack: true };
const IN_DEVICE = [{ on: '2018-11-10', ...TASKS, device: 'aviation-training-device' }];
const LESSON = { purpose: 'dual', personsOnBoard: 2, instructorId: 'instructor-1' };
const SPORT = [{ level: 'sport' }];
const SIGHT = { weather: { visibilitySm: 10 } };

/** A number of law that no flight of a club hangs on: only the number is held to its days. */
export interface NumberChange {
  parameter: string;
  on: string;
  before: number;
  after: number;
  source: string;
  seen: 'seen' | 'from memory';
}

export const NUMBERS: readonly NumberChange[] = [
  {
    // Airline transport privileges; a club's flights ask for the second or third class.
    parameter: 'us.medical.first-younger',
    on: '2008-07-24',
    before: 6,
    after: 12,
    source: '73 FR 43059, effective 2008-07-24',
    seen: 'seen',
  },
];

export const UNITED_STATES: readonly Change[] = [
  {
    rule: 'sport.limits',
    on: '2004-09-01',
    what: 'the sport pilot certificate begins',
    source: '69 FR 44771, effective 2004-09-01',
    seen: 'from memory',
    given: {
      flight: SIGHT,
      'pic.certificates': [{ level: 'sport', issuedOn: '2004-01-10' }],
      'pic.medicals': [{ examOn: '2004-01-10' }],
      'aircraft.type': { vs1Kcas: 45, seats: 2, maxTakeoffLb: 1320 },
    },
    before: { status: 'not-applicable', branch: 'not-in-force' },
    after: { status: 'met', branch: 'within' },
    parameters: [
      'us.sport.airplane-vs1-kcas',
      'us.sport.other-vs1-kcas',
      'us.sport.airplane-seats',
      'us.sport.takeoff-lb',
      'us.sport.takeoff-water-lb',
      'us.sport.level-speed-kcas',
    ],
  },
  {
    rule: 'sport.limits',
    on: '2025-10-22',
    what: 'stall speed and seats in place of the light-sport weight limits',
    source: '90 FR 35215, effective 2025-10-22',
    seen: 'seen',
    given: {
      flight: SIGHT,
      'pic.certificates': SPORT,
      'pic.medicals': [{ examOn: '2025-01-10' }],
      'aircraft.type': { vs1Kcas: 59, seats: 4, maxTakeoffLb: 2400 },
    },
    before: { status: 'short', branch: 'beyond', says: '2400 lb, more than 1320' },
    after: { status: 'met', branch: 'within' },
    parameters: ['us.sport.airplane-vs1-kcas', 'us.sport.other-vs1-kcas', 'us.sport.airplane-seats'],
  },
  {
    rule: 'medical.certificate',
    on: '2008-07-24',
    what: 'third class below 40: 60 calendar months in place of 36',
    source: '73 FR 43059, effective 2008-07-24',
    seen: 'seen',
    given: { 'pic.birthDate': '1980-01-01', 'pic.medicals': [{ class: 3, examOn: '2005-06-10' }] },
    before: { status: 'short', branch: 'none' },
    after: { status: 'met', branch: 'valid', says: 'through 2010-06-30' },
    parameters: ['us.medical.third-younger'],
  },
  {
    rule: 'medical.certificate',
    on: '2017-05-01',
    what: 'BasicMed may stand for a medical certificate',
    source: '82 FR 3149, effective 2017-05-01',
    seen: 'seen',
    given: { 'pic.medicals': [{ class: 3, examOn: '2008-01-10' }], 'pic.basicMed': [BASIC_MED] },
    before: { status: 'short', branch: 'none', until: '2017-05-01' },
    after: { status: 'not-applicable', branch: 'relies-on-basicmed' },
  },
  {
    rule: 'medical.basicmed',
    on: '2017-05-01',
    what: 'BasicMed begins',
    source: '82 FR 3149, effective 2017-05-01',
    seen: 'seen',
    given: { 'pic.medicals': [{ class: 3, examOn: '2008-01-10' }], 'pic.basicMed': [BASIC_MED] },
    before: { status: 'not-applicable', branch: 'not-in-force', until: '2017-05-01' },
    after: { status: 'met', branch: 'met' },
    parameters: ['us.basicmed.occupants', 'us.basicmed.passengers', 'us.basicmed.takeoff-lb'],
  },
  {
    rule: 'medical.basicmed',
    on: '2024-11-18',
    what: 'seven occupants, six passengers and 12,500 lb in place of six, five and 6,000',
    source: '89 FR 90572, effective 2024-11-18',
    seen: 'seen',
    given: {
      'pic.medicals': [],
      'pic.basicMed': [{ examOn: '2023-06-10', courseOn: '2023-08-01' }],
      'aircraft.type': { occupantsCertificated: 7, maxTakeoffLb: 12_500 },
      flight: { purpose: 'passengers', personsOnBoard: 7 },
    },
    before: {
      status: 'short',
      says: ['7 occupants, more than 6', 'more than 6000 lb', '6 passengers are planned, more than 5'],
      until: '2024-11-18',
    },
    after: { status: 'met' },
    parameters: ['us.basicmed.occupants', 'us.basicmed.passengers', 'us.basicmed.takeoff-lb'],
  },
  {
    rule: 'recency.passengers.day',
    on: '2024-12-02',
    what: '“persons” in place of “passengers”: a learner is carried too',
    source: '89 FR 80310, effective 2024-12-02; the amended paragraph as quoted from the eCFR of 2026-08',
    seen: 'seen',
    given: { flight: LESSON, 'pic.log': [] },
    before: { status: 'not-applicable', branch: 'nobody-carried', until: '2024-12-02T07:00:00Z' },
    after: { status: 'short', branch: 'short-for-crew' },
  },
  {
    rule: 'recency.passengers.night',
    on: '2024-12-02',
    what: '“persons” in place of “passengers” by night',
    source: '89 FR 80310, effective 2024-12-02; the amended paragraph as quoted from the eCFR of 2026-08',
    seen: 'seen',
    given: { flight: LESSON, 'pic.log': [] },
    before: { status: 'not-applicable', branch: 'nobody-carried' },
    after: { status: 'met', branch: 'day-only' },
  },
  {
    rule: 'recency.instrument',
    on: '2018-11-26',
    what: 'tasks in an aviation training device count as in an aircraft',
    source: '83 FR 30232, effective 2018-11-26 for 61.57(c)',
    seen: 'seen',
    given: { flight: { flightRules: 'IFR' }, 'pic.log': IN_DEVICE },
    before: { status: 'short', branch: 'none-shown', until: '2018-11-26' },
    after: { status: 'met', branch: 'by-tasks', says: 'through 2019-05-31' },
  },
  {
    rule: 'recency.instrument.grace',
    on: '2018-11-26',
    what: 'tasks in an aviation training device begin the grace months too',
    source: '83 FR 30232, effective 2018-11-26 for 61.57(c)',
    seen: 'seen',
    given: { flight: { flightRules: 'IFR' }, 'pic.log': [{ ...IN_DEVICE[0], on: '2018-01-10' }] },
    before: { status: 'not-applicable', branch: 'not-lapsed', until: '2018-11-26' },
    after: { status: 'short', branch: 'open' },
  },
  {
    rule: 'recency.instrument.ipc',
    on: '2018-11-26',
    what: 'so that no check is needed',
    source: '83 FR 30232, effective 2018-11-26 for 61.57(c)',
    seen: 'seen',
    given: { flight: { flightRules: 'IFR' }, 'pic.log': IN_DEVICE },
    before: { status: 'short', branch: 'none-shown', until: '2018-11-26' },
    after: { status: 'not-applicable', branch: 'not-needed' },
  },
  {
    rule: 'equipment.transponder',
    on: '2020-01-02',
    what: 'ADS-B Out is needed where a transponder is',
    source: '14 CFR 91.225(d), "after January 1, 2020"',
    seen: 'from memory',
    given: { flight: { airspace: ['C'] }, 'aircraft.equipment': [{ kind: 'transponder' }] },
    before: { status: 'met', branch: 'equipped', until: '2020-01-02' },
    after: { status: 'short', branch: 'wanting', says: 'ADS-B Out' },
    parameters: ['us.ads-b.required'],
  },
  {
    rule: 'registration.validity',
    on: '2010-10-01',
    what: 'certificates of registration have an end',
    source: '75 FR 41968, effective 2010-10-01',
    seen: 'seen',
    given: { 'aircraft.registration': [{ issuedOn: '1990-03-10' }] },
    before: { status: 'met', branch: 'without-end' },
    after: { status: 'met', branch: 'valid', says: 'through 2011-03-31' },
  },
  {
    rule: 'registration.validity',
    on: '2023-01-23',
    what: 'seven years in place of three, for certificates in force that day',
    source: '87 FR 71210, effective 2023-01-23',
    seen: 'seen',
    given: { 'aircraft.registration': [{ issuedOn: '2020-01-31' }] },
    before: { status: 'met', says: 'through 2023-01-31' },
    after: { status: 'met', says: 'through 2027-01-31' },
    parameters: ['us.registration.years'],
  },
  {
    rule: 'instructor.recent_experience',
    on: '2024-12-01',
    what: 'for three calendar months a refresher course restores what lapsed',
    source: '89 FR 80020, effective 2024-12-01',
    seen: 'seen',
    given: {
      flight: LESSON,
      'instructor.instructor': [{ issuedOn: '2010-01-10', recentExperienceOn: '2022-10-20' }],
    },
    before: { status: 'short', branch: 'lapsed-practical-test' },
    after: { status: 'short', branch: 'lapsed-refresher', says: 'refresher course by 2025-01-31' },
  },
  {
    rule: 'instructor.recent_experience',
    on: '2027-03-01',
    what: 'the transition ends; a printed end date still binds (strict reading)',
    source: '89 FR 80020, amendatory instruction 10, effective 2027-03-01',
    seen: 'seen',
    given: {
      flight: LESSON,
      'instructor.instructor': [{ recentExperienceOn: '2025-02-10', printedEndOn: '2027-02-28' }],
    },
    before: { status: 'met', branch: 'current', says: 'through 2027-02-28' },
    after: { status: 'short', branch: 'lapsed-refresher' },
  },
];

export const EUROPE: readonly Change[] = [
  {
    rule: 'recency.easa.lapl',
    on: '2020-04-08',
    what: 'hours with an instructor count towards the twelve',
    source: 'Regulation (EU) 2020/359, applicable from 2020-04-08; FCL.140.A of 2011 seen',
    seen: 'from memory',
    given: {
      'pic.certificates': [{ level: 'lapl' }],
      'pic.reviews': [],
      'pic.log': [
        { on: '2019-05-01', totalTenths: 110, takeoffs: 11, landings: 11 },
        { on: '2019-09-01', totalTenths: 10, takeoffs: 1, landings: 1, role: 'dual-received' },
      ],
    },
    before: { status: 'short', says: '11.0 of 12.0 h', until: '2020-04-08' },
    after: { status: 'met', branch: 'by-experience' },
  },
];

export const CANADA: readonly Change[] = [
  {
    rule: 'recency.canada.instrument',
    on: '2025-12-17',
    what: 'an instrument check serves by itself for six months in place of twelve',
    source: 'SOR/2025-241, published 2025-12-17 (title seen; the amended paragraph from digests)',
    seen: 'from memory',
    given: {
      flight: { flightRules: 'IFR' },
      'pic.log': [],
      'pic.reviews': [{ kind: 'instrument-proficiency-check', on: '2025-05-01' }],
    },
    before: { status: 'met', branch: 'by-check', until: '2025-12-17' },
    after: { status: 'short', branch: 'approaches-needed' },
    parameters: ['ca.instrument.free-calendar-months', 'ca.instrument.hours'],
  },
];
