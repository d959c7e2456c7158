/**
 * The sheet that every case table starts from: a private pilot in good standing takes a nosewheel trainer in order for
 * an hour in the middle of the day, alone. Every rule is met on it.
 */
import { known } from '../facts/fact.js';
import type { AircraftFacts, EquipmentKind, ItemFact } from '../facts/aircraft.js';
import type { AirfieldFact, FlightFacts } from '../facts/flight.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet } from '../facts/sheet.js';
import {
  AIRCRAFT_TYPE,
  CERTIFICATE,
  CHECKOUT,
  EQUIPMENT,
  INSTRUCTOR,
  ITEM,
  LICENCE_RATING,
  LOADING_SHEET,
  LOG,
  LOG_BEFORE,
  MEDICAL,
  METER,
  PERFORMANCE,
  REGISTRATION,
  REVIEW,
  STANDING,
  WEIGHING,
} from './records.js';

const KNOWN_AT = '2027-02-28T18:00:00Z';

export const HOME_FIELD: AirfieldFact = {
  id: 'airfield-home',
  code: 'XQHB',
  name: 'Harrow Bench',
  latitudeDeg: 40,
  longitudeDeg: -105,
  elevationFt: 5100,
  zone: 'America/Denver',
  runways: [
    { designator: '09', trueHeadingDeg: 98, lengthFt: 4200, surface: 'paved', lit: true, slopePercent: 0 },
    { designator: '27', trueHeadingDeg: 278, lengthFt: 4200, surface: 'paved', lit: true, slopePercent: 0 },
  ],
};

/** The flight of the base sheet: an hour alone, Monday 2027-03-01 at 11:00 of the club's time. */
export const FLIGHT: FlightFacts = {
  departs: '2027-03-01T18:00:00Z',
  arrives: '2027-03-01T19:00:00Z',
  purpose: 'solo',
  flightRules: 'VFR',
  personsOnBoard: 1,
  memberId: 'member-1',
  instructorId: null,
  secondPilotId: null,
  actingPilotId: null,
  secondPilotRequired: false,
  forHire: false,
  route: [HOME_FIELD, HOME_FIELD],
  runways: null,
  plannedTenths: 10,
  airspace: ['E', 'G'],
  maxAltitudeFtMsl: 8500,
  maxSpeedKias: 120,
  usesVor: false,
  usesTransponder: true,
  overWaterBeyondGlide: false,
  weather: null,
  destinationForecast: null,
  planned: false,
  loading: { occupantsLb: 170, baggageLb: 10, fuelUsGal: 40 },
};

/** Everything that 14 CFR 91.205(b), (c) and (d) ask of an aircraft like the base sheet's. */
export const EQUIPPED: EquipmentKind[] = [
  'airspeed-indicator',
  'altimeter',
  'sensitive-altimeter',
  'magnetic-direction',
  'tachometer',
  'oil-pressure',
  'oil-temperature',
  'fuel-quantity',
  'safety-belts',
  'shoulder-harness',
  'elt',
  'anti-collision-lights',
  'position-lights',
  'landing-light',
  'electrical-source',
  'spare-fuses',
  'two-way-radio',
  'nav-receiver',
  'vor-receiver',
  'rate-of-turn',
  'slip-skid',
  'clock',
  'generator',
  'attitude-indicator',
  'heading-indicator',
  'transponder',
  'ads-b-out',
];

const item = (fields: Partial<ItemFact> & Pick<ItemFact, 'id' | 'kind'>): ItemFact => ({
  ...ITEM,
  ...fields,
});

const AIRCRAFT: AircraftFacts = {
  id: 'aircraft-1',
  type: known(AIRCRAFT_TYPE, KNOWN_AT),
  use: known({ status: 'in-service', instructionForHire: true, carriesForHire: false }, KNOWN_AT),
  meters: known([METER], KNOWN_AT),
  items: known(
    [
      item({ id: 'item-annual', kind: 'annual' }),
      item({
        id: 'item-100',
        kind: 'hours-100',
        title: '100-hour inspection',
        reference: '14 CFR 91.409(b)',
        scope: 'hire-or-instruction',
        calendarMonths: null,
        intervalTenths: 1000,
        toleranceTenths: 100,
      }),
      item({
        id: 'item-altimeter',
        kind: 'altimeter-static',
        title: 'Altimeter and static system',
        reference: '14 CFR 91.411',
        scope: 'ifr',
        calendarMonths: 24,
      }),
      item({
        id: 'item-transponder',
        kind: 'transponder',
        title: 'Transponder',
        reference: '14 CFR 91.413',
        scope: 'transponder-use',
        calendarMonths: 24,
      }),
      item({
        id: 'item-elt',
        kind: 'elt-inspection',
        title: 'ELT inspection',
        reference: '14 CFR 91.207(d)',
        calendarMonths: 12,
      }),
      item({
        id: 'item-elt-battery',
        kind: 'elt-battery',
        title: 'ELT battery',
        reference: '14 CFR 91.207(c)',
        calendarMonths: null,
        recurring: false,
        detail: { eltBatteryNewOn: '2025-06-15', eltBatteryUsefulLifeEndsOn: '2031-06-15', eltUseMinutes: 5 },
      }),
      item({
        id: 'item-vor',
        kind: 'vor-check',
        title: 'VOR check',
        reference: '14 CFR 91.171',
        scope: 'ifr',
        calendarMonths: null,
        days: 30,
        lastDoneOn: '2027-02-20',
        detail: {
          vorMethod: 'ground-checkpoint',
          vorErrorDeg: 2,
          vorPlace: 'XQHB',
          vorSignedBy: 'A. Member',
        },
      }),
    ],
    KNOWN_AT,
  ),
  registration: known([REGISTRATION], KNOWN_AT),
  equipment: known(
    EQUIPPED.map((kind) => ({ ...EQUIPMENT, id: `equipment-${kind}`, kind, name: kind })),
    KNOWN_AT,
  ),
  squawks: known([], KNOWN_AT),
  permits: known([], KNOWN_AT),
  reservations: known([], KNOWN_AT),
  differences: known([], KNOWN_AT),
  work: known([], KNOWN_AT),
  weighing: known(WEIGHING, KNOWN_AT),
  loading: known(LOADING_SHEET, KNOWN_AT),
  performance: known(PERFORMANCE, KNOWN_AT),
  insurance: known([], KNOWN_AT),
};

const person = (fields: Partial<PersonFacts> & Pick<PersonFacts, 'id' | 'name'>): PersonFacts => ({
  birthDate: known('1990-06-01', KNOWN_AT),
  certificates: known([CERTIFICATE], KNOWN_AT),
  instructor: known([], KNOWN_AT),
  medicals: known([MEDICAL], KNOWN_AT),
  basicMed: known([], KNOWN_AT),
  reviews: known([REVIEW], KNOWN_AT),
  endorsements: known([], KNOWN_AT),
  ratings: known(
    [
      LICENCE_RATING,
      { ...LICENCE_RATING, id: 'rating-2', kind: 'language', designator: 'English', validThrough: null },
    ],
    KNOWN_AT,
  ),
  log: known([{ ...LOG, takeoffs: 3, landings: 3, fullStopLandings: 3 }], KNOWN_AT),
  logBefore: known(LOG_BEFORE, KNOWN_AT),
  checkouts: known(
    [CHECKOUT, { ...CHECKOUT, id: 'checkout-2', kind: 'annual-check', modelId: null, on: '2026-10-01' }],
    KNOWN_AT,
  ),
  standing: known(STANDING, KNOWN_AT),
  commitments: known([], KNOWN_AT),
  unverified: known([], KNOWN_AT),
  limits: known([], KNOWN_AT),
  checks: known([], KNOWN_AT),
  unpaid: known([], KNOWN_AT),
  teachingHours: known([], KNOWN_AT),
  ...fields,
});

/** A fresh copy of the base sheet. `member-1` asks; `instructor-1` is there to be named. */
export function baseSheet(): FactSheet {
  return structuredClone({
    schema: 'bellcrank.facts/1',
    knownAt: KNOWN_AT,
    jurisdiction: 'US',
    zone: 'America/Denver',
    flight: FLIGHT,
    people: {
      'member-1': person({ id: 'member-1', name: 'Robin Member' }),
      'member-2': person({ id: 'member-2', name: 'Sam Second' }),
      'instructor-1': person({
        id: 'instructor-1',
        name: 'Iris Instructor',
        certificates: known(
          [{ ...CERTIFICATE, id: 'certificate-i', level: 'commercial', instrument: ['airplane'] }],
          KNOWN_AT,
        ),
        instructor: known([INSTRUCTOR], KNOWN_AT),
        medicals: known([{ ...MEDICAL, id: 'medical-i', class: 2 }], KNOWN_AT),
      }),
    },
    aircraft: AIRCRAFT,
  } satisfies FactSheet);
}
