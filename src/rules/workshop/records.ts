/**
 * Complete example records, one per kind of fact, so that a case table states only what matters to its case.
 * The people, the aircraft and the places are invented.
 */
import type {
  AircraftType,
  AircraftUse,
  DeferralFact,
  DifferencesFact,
  EquipmentFact,
  ItemDetail,
  ItemFact,
  MeterFact,
  PermitFact,
  RegistrationFact,
  ReservationFact,
  SquawkFact,
  WorkFact,
} from '../facts/aircraft.js';
import type { InsuranceFact, PilotMinimums } from '../facts/insurance.js';
import type { DeclaredLoading, RunwayChoice } from '../facts/flight.js';
import type {
  BasicMedFact,
  CertificateFact,
  CheckFact,
  CheckoutFact,
  CommitmentFact,
  EndorsementFact,
  InstructorFact,
  LogBeforeFact,
  LimitsFact,
  LogFact,
  LogSum,
  MedicalFact,
  RatingFact,
  ReviewFact,
  StandingFact,
  Suspension,
  UnpaidFact,
  TeachingHoursFact,
  UnverifiedFact,
} from '../facts/person.js';

export * from './loading-records.js';
export * from './weather-records.js';

export const LOG: LogFact = {
  id: 'log-1',
  departedAt: '2027-02-20T18:00:00Z',
  on: '2027-02-20',
  category: 'airplane',
  class: 'single-engine-land',
  typeRating: null,
  tailwheel: false,
  modelId: 'model-lark',
  aircraftId: 'aircraft-1',
  role: 'pilot-in-command',
  soleManipulator: true,
  takeoffs: 0,
  landings: 0,
  fullStopLandings: 0,
  nightTakeoffs: 0,
  nightFullStopLandings: 0,
  approaches: 0,
  holding: false,
  interceptTrack: false,
  device: null,
  totalTenths: 10,
  nightTenths: 0,
  dualGivenTenths: 0,
};

export const CERTIFICATE: CertificateFact = {
  id: 'certificate-1',
  level: 'private',
  issuedOn: '2015-05-04',
  ratings: [{ category: 'airplane', class: 'single-engine-land' }],
  instrument: [],
  typeRatings: [],
  limitations: [],
  validThrough: null,
  suspensions: [],
};

export const INSTRUCTOR: InstructorFact = {
  id: 'instructor-certificate-1',
  issuedOn: '2019-06-01',
  ratings: ['airplane-single-engine', 'instrument-airplane'],
  recentExperienceOn: '2026-06-10',
  printedEndOn: null,
  suspensions: [],
};

export const MEDICAL: MedicalFact = {
  id: 'medical-1',
  class: 3,
  examOn: '2026-03-15',
  limitations: [],
  withdrawnOn: null,
};

export const BASIC_MED: BasicMedFact = {
  id: 'basicmed-1',
  examOn: '2024-06-10',
  courseOn: '2025-08-01',
  licenceValidThrough: '2030-01-01',
  heldMedicalAfter20060714: true,
  lastApplicationDenied: false,
  lastCertificateRevokedOrSuspended: false,
};

export const REVIEW: ReviewFact = {
  id: 'review-1',
  kind: 'flight-review',
  on: '2026-01-10',
  groundTenths: 10,
  flightTenths: 12,
  category: 'airplane',
  endorsedAsReview: false,
};

export const ENDORSEMENT: EndorsementFact = {
  id: 'endorsement-1',
  kind: 'complex',
  on: '2020-01-01',
  makeModel: null,
  airfields: [],
  expiresOn: null,
};

export const LOG_SUM: LogSum = {
  modelId: 'model-lark',
  category: 'airplane',
  class: 'single-engine-land',
  tailwheel: false,
  role: 'pilot-in-command',
  flights: 100,
  landings: 150,
  totalTenths: 1000,
  nightTenths: 0,
  dualGivenTenths: 0,
};

/** The log of the example people is whole. */
export const LOG_BEFORE: LogBeforeFact = { through: null, sums: [] };

export const LICENCE_RATING: RatingFact = {
  id: 'rating-1',
  kind: 'single-engine-piston-land',
  designator: null,
  on: '2026-03-20',
  validThrough: '2028-03-31',
};

export const CHECKOUT: CheckoutFact = {
  id: 'checkout-1',
  kind: 'model',
  modelId: 'model-lark',
  aircraftId: null,
  on: '2025-05-01',
  expiresOn: null,
  signedById: 'instructor-1',
  equipmentGroup: null,
  condition: null,
  alsoModelIds: [],
};

/** Every kind of limit, set by the pilot. */
export const LIMITS: LimitsFact = {
  id: 'limits-1',
  setBy: 'member',
  recordedAt: '2027-01-10T18:00:00Z',
  from: '2027-01-10',
  through: null,
  windKt: 20,
  crosswindKt: 8,
  gustSpreadKt: 8,
  ceilingDayFtAgl: 2000,
  ceilingNightFtAgl: 3000,
  visibilityDaySm: 5,
  visibilityNightSm: 8,
  runwayFt: 2500,
  night: false,
};

/** The base sheet's flight is on a Monday, from 11:00 to 12:00. */
export const TEACHING_HOURS: TeachingHoursFact = {
  id: 'teaching-hours-1',
  kind: 'weekly',
  weekday: 1,
  on: null,
  opensMinutes: 540,
  closesMinutes: 1020,
  from: '2026-01-01',
  through: null,
};

/** What an officer has seen of the member. */
export const CHECK: CheckFact = { id: 'check-1', kind: 'identity', on: '2026-05-01', expiresOn: null };

/** A charge of which nothing is paid. */
export const UNPAID: UnpaidFact = {
  id: 'charge-1',
  on: '2027-02-20',
  unpaidMinor: 12_000,
  minorPerUnit: 100,
  currency: 'USD',
};

/** Nothing is asked of pilots, so that a case states what is. */
export const PILOT_MINIMUMS: PilotMinimums = {
  leastLevel: null,
  instrumentRating: false,
  leastAgeYears: null,
  mostAgeYears: null,
  totalTenths: null,
  classTenths: null,
  retractableTenths: null,
  tailwheelTenths: null,
  modelTenths: null,
  recentTenths: null,
  recentDays: null,
  checkoutInModel: false,
  dualInModelTenths: null,
  reviewMonths: null,
};

export const INSURANCE: InsuranceFact = {
  id: 'insurance-1',
  from: '2026-07-01',
  through: '2027-06-30',
  source: 'pilot clause of 2026',
  namedPilotIds: [],
  minimums: PILOT_MINIMUMS,
  retractableModelIds: [],
};

export const STANDING: StandingFact = {
  id: 'standing-1',
  state: 'good',
  since: '2020-01-01',
  membershipFrom: '2020-01-01',
  membershipThrough: null,
};

export const UNVERIFIED: UnverifiedFact = {
  id: 'unverified-1',
  what: 'medical certificate of class 3',
  on: '2027-02-01',
};

export const COMMITMENT: CommitmentFact = {
  id: 'commitment-1',
  from: '2027-03-05T18:00:00Z',
  to: '2027-03-05T20:00:00Z',
  role: 'pilot',
  what: 'another booking',
};

export const AIRCRAFT_TYPE: AircraftType = {
  registration: 'NX101B',
  modelId: 'model-lark',
  makeModel: 'Harrow Lark 160',
  typeDesignator: 'LARK',
  category: 'airplane',
  class: 'single-engine-land',
  typeRating: null,
  seats: 4,
  occupantsCertificated: 4,
  engines: 1,
  powerPerEngineHp: 160,
  retractableGear: false,
  flaps: true,
  controllablePropeller: false,
  tailwheel: false,
  pressurised: false,
  serviceCeilingFt: 14_000,
  maxOperatingAltitudeFt: 14_000,
  maxTakeoffLb: 2400,
  emptyWeightLb: 1450,
  usableFuelUsGal: 48,
  vs1Kcas: 50,
  fuelBurnUsGalPerHour: 9,
  demonstratedCrosswindKt: 15,
  kindsOfOperation: ['day-vfr', 'night-vfr', 'ifr'],
  certificatedAfter19960311: false,
  turbine: false,
  transportCategory: false,
  altitudeEngine: false,
  manufacturedOn: '2005-04-01',
  engineDrivenElectrical: true,
  approvedEquipmentList: false,
};

export const METER: MeterFact = {
  id: 'meter-1',
  kind: 'tachometer',
  tenths: 10_500,
  readAt: '2027-02-25T20:00:00Z',
  countsForInspections: true,
};

export const ITEM: ItemFact = {
  id: 'item-1',
  kind: 'annual',
  title: 'Annual inspection',
  reference: '14 CFR 91.409(a)',
  scope: 'all',
  calendarMonths: 12,
  plainMonths: null,
  days: null,
  intervalTenths: null,
  fixedDueOn: null,
  fixedDueTenths: null,
  toleranceTenths: 0,
  recurring: true,
  since: null,
  retiredOn: null,
  ferryProhibited: false,
  lastDoneOn: '2026-09-05',
  lastDoneTenths: 10_000,
  lastDueTenths: null,
  complianceId: 'compliance-1',
  detail: null,
};

export const REGISTRATION: RegistrationFact = {
  id: 'registration-1',
  issuedOn: '2023-05-10',
  printedExpiryOn: null,
  endedOn: null,
};

export const EQUIPMENT: EquipmentFact = {
  id: 'equipment-1',
  kind: 'other',
  name: 'a piece of equipment',
  installedOn: '2000-01-01',
  removedOn: null,
  portable: false,
  requiredByTypeDesign: false,
  satisfies: [],
};

export const SQUAWK: SquawkFact = {
  id: 'squawk-1',
  reportedAt: '2027-02-20T20:00:00Z',
  title: 'something is wrong',
  state: 'reported',
  closedAt: null,
  equipmentId: null,
  deferral: null,
};

export const PERMIT: PermitFact = {
  id: 'permit-1',
  from: '2027-02-25',
  through: '2027-03-10',
  purpose: 'ferry to inspection',
};

export const RESERVATION: ReservationFact = {
  id: 'reservation-1',
  kind: 'flight',
  from: '2027-03-05T18:00:00Z',
  to: '2027-03-05T20:00:00Z',
  holder: 'another member',
  expectedTenths: 15,
  purpose: 'solo',
  forHire: false,
};

export const DIFFERENCES: DifferencesFact = {
  id: 'differences-1',
  title: 'New navigator and attitude display',
  aircraftId: 'aircraft-1',
  since: '2026-11-10',
  equipmentGroup: 'glass panel',
  endedOn: null,
};

export const WORK: WorkFact = {
  id: 'work-1',
  title: 'Annual inspection',
  state: 'in-work',
  begunAt: '2027-02-22T15:00:00Z',
  backAt: null,
  signedAt: null,
  checkFlightBecause: null,
  checkFlownAt: null,
};

export const USE: AircraftUse = { status: 'in-service', instructionForHire: false, carriesForHire: false };

export const SUSPENSION: Suspension = { id: 'suspension-1', from: '2027-01-01', to: null };

export const RATING: CertificateFact['ratings'][number] = {
  category: 'airplane',
  class: 'single-engine-land',
};

/** Every step of 14 CFR 91.213(d) recorded. */
export const DEFERRAL: DeferralFact = {
  id: 'deferral-1',
  on: '2027-02-20',
  deadlineOn: null,
  requiredByTypeDesign: false,
  requiredByEquipmentList: false,
  requiredByDirective: false,
  removedOrDeactivated: true,
  placarded: true,
  recorded: true,
  noHazardDeterminedBy: 'A. Member',
  equipmentListItem: null,
};

export const ITEM_DETAIL: Required<ItemDetail> = {
  staticOpenedOn: '2027-01-10',
  vorMethod: 'ground-checkpoint',
  vorErrorDeg: 2,
  vorPlace: 'XQHB',
  vorSignedBy: 'A. Member',
  eltBatteryNewOn: '2025-06-15',
  eltBatteryUsefulLifeEndsOn: '2031-06-15',
  eltBatteryReplaceOn: '2028-06-15',
  eltUseMinutes: 5,
};

export const LOADING: DeclaredLoading = {
  occupantsLb: 170,
  baggageLb: 10,
  fuelUsGal: 40,
  rowsLb: [170],
  compartmentsLb: [10],
};

export const RUNWAY_CHOICE: RunwayChoice = { airfield: 'XQHB', runway: '09' };
