import type { LocalDate } from '../calendar/dates.js';
import type { Instant } from '../calendar/instants.js';
import type { Evidence, Fact } from './fact.js';
import type { Purpose } from './flight.js';
import type { InsuranceFact } from './insurance.js';
import type { LoadingFact, PerformanceFact, WeighingFact } from './loading.js';
import type { AircraftCategory, AircraftClass } from './person.js';

/** What the aircraft is, from its type design and the club's entry. Speeds in knots, weights in pounds, heights in feet. */
export interface AircraftType {
  registration: string;
  modelId: string;
  /** Make and model in words, as endorsements name it. */
  makeModel: string;
  typeDesignator: string;
  category: AircraftCategory;
  class: AircraftClass;
  /** Type designator when a type rating is required, else null. */
  typeRating: string | null;
  /** Seats fitted, pilots' included. */
  seats: number;
  /** Occupants the aircraft is certificated for. */
  occupantsCertificated: number;
  engines: number;
  /** Rated power of one engine. */
  powerPerEngineHp: number | null;
  retractableGear: boolean;
  flaps: boolean;
  controllablePropeller: boolean;
  tailwheel: boolean;
  pressurised: boolean;
  serviceCeilingFt: number | null;
  maxOperatingAltitudeFt: number | null;
  maxTakeoffLb: number | null;
  emptyWeightLb: number | null;
  usableFuelUsGal: number | null;
  /** Stall speed, clean, calibrated. */
  vs1Kcas: number | null;
  /** Fuel burned at normal cruise, US gallons an hour. */
  fuelBurnUsGalPerHour: number | null;
  /** Crosswind shown to be controllable at certification, knots; usually no limitation. */
  demonstratedCrosswindKt: number | null;
  /** Kinds of operation the type design allows. */
  kindsOfOperation: ('day-vfr' | 'night-vfr' | 'ifr')[];
  /** Certificated after 1996-03-11 (anti-collision lights by day, 14 CFR 91.205(b)(11)). */
  certificatedAfter19960311: boolean;
  turbine: boolean;
  transportCategory: boolean;
  /** An engine of it keeps rated power to altitude and so needs a manifold pressure gauge (14 CFR 1.1, 91.205(b)(8)). */
  altitudeEngine: boolean | null;
  /** Date of manufacture: shoulder harnesses hang on it (14 CFR 91.205(b)(14)). */
  manufacturedOn: LocalDate | null;
  /** Certificated with an engine-driven electrical system, originally or since (14 CFR 91.215(b)(3), (5)). */
  engineDrivenElectrical: boolean | null;
  /** Flown under an approved minimum equipment list with its letter of authorisation (14 CFR 91.213(a)). */
  approvedEquipmentList: boolean | null;
}

/** How the club uses it. The 100-hour inspection depends on it. */
export interface AircraftUse {
  status: 'in-service' | 'out-of-service';
  /** Instruction for hire is given in it and the instructor (or the club for the instructor) provides it. */
  instructionForHire: boolean;
  carriesForHire: boolean;
}

export type MeterKind = 'hobbs' | 'tachometer' | 'airframe';

/** The newest reading of each meter, in tenths of an hour. */
export interface MeterFact extends Evidence {
  kind: MeterKind;
  tenths: number;
  readAt: Instant;
  /** True for the meter inspections count by. */
  countsForInspections: boolean;
}

export type ItemKind =
  | 'annual'
  | 'hours-100'
  /** One inspection of a progressive programme (14 CFR 91.409(d)): a phase, or the complete one. */
  | 'progressive'
  | 'altimeter-static'
  | 'transponder'
  | 'elt-inspection'
  | 'elt-battery'
  | 'vor-check'
  | 'directive'
  | 'club';

/**
 * An airworthiness item and the newest compliance with it. Intervals: whichever comes first of those given.
 * Hours in tenths of the inspection meter.
 */
export interface ItemFact extends Evidence {
  kind: ItemKind;
  title: string;
  reference: string | null;
  /** Flights it binds. */
  scope: 'all' | 'ifr' | 'hire-or-instruction' | 'night' | 'transponder-use' | 'advice';
  calendarMonths: number | null;
  plainMonths: number | null;
  days: number | null;
  intervalTenths: number | null;
  fixedDueOn: LocalDate | null;
  /** Hours on the inspection meter at which it is due whatever was done before (a directive's first compliance). */
  fixedDueTenths: number | null;
  /** Overrun the rule allows en route to the inspection, owed back (14 CFR 91.409(b)). */
  toleranceTenths: number;
  /** One-time directives are settled by one compliance. */
  recurring: boolean;
  /** First day it is asked for (the instrument it hangs on came in); null: always. Absent on sheets of before it was kept. */
  since?: LocalDate | null;
  /** First day it is asked for no more (what it hung on came out); null: for good. */
  retiredOn?: LocalDate | null;
  /** A directive that forbids special flight permits (14 CFR 39.23). */
  ferryProhibited: boolean;
  lastDoneOn: LocalDate | null;
  lastDoneTenths: number | null;
  /** Hours at which this compliance was due, when it was done late; the overrun shortens the next interval. */
  lastDueTenths: number | null;
  complianceId: string | null;
  /** Kind-specific findings of the last compliance. */
  detail: ItemDetail | null;
}

/** VOR check, ELT battery, static system: what the record says beyond date and hours. */
export interface ItemDetail {
  /** The static system was last opened, other than by its drain or alternate source (14 CFR 91.411(a)(2)). */
  staticOpenedOn?: LocalDate;
  vorMethod?: 'test-signal' | 'ground-checkpoint' | 'airborne-checkpoint' | 'airborne-route' | 'dual';
  vorErrorDeg?: number;
  vorPlace?: string;
  vorSignedBy?: string;
  eltBatteryNewOn?: LocalDate;
  eltBatteryUsefulLifeEndsOn?: LocalDate;
  eltBatteryReplaceOn?: LocalDate;
  eltUseMinutes?: number;
}

/** Aircraft registration certificate. */
export interface RegistrationFact extends Evidence {
  issuedOn: LocalDate;
  printedExpiryOn: LocalDate | null;
  endedOn: LocalDate | null;
}

export type EquipmentKind =
  | 'airspeed-indicator'
  | 'altimeter'
  | 'sensitive-altimeter'
  | 'magnetic-direction'
  | 'tachometer'
  | 'oil-pressure'
  | 'oil-temperature'
  | 'coolant-temperature'
  | 'manifold-pressure'
  | 'fuel-quantity'
  | 'gear-position'
  | 'safety-belts'
  | 'shoulder-harness'
  | 'elt'
  | 'anti-collision-lights'
  | 'position-lights'
  | 'landing-light'
  | 'electrical-source'
  | 'spare-fuses'
  | 'flotation-gear'
  | 'pyrotechnic-signal'
  | 'two-way-radio'
  | 'nav-receiver'
  | 'vor-receiver'
  | 'gps-navigator'
  | 'dme'
  | 'rate-of-turn'
  | 'slip-skid'
  | 'clock'
  | 'generator'
  | 'attitude-indicator'
  | 'heading-indicator'
  | 'vertical-speed'
  | 'transponder'
  | 'ads-b-out'
  | 'autopilot'
  | 'air-pump'
  | 'backup-battery'
  | 'engine-monitor'
  | 'pitot-heat'
  | 'cabin-equipment'
  | 'other';

/** A piece of equipment. Portable equipment never satisfies a requirement. */
export interface EquipmentFact extends Evidence {
  kind: EquipmentKind;
  name: string;
  installedOn: LocalDate;
  removedOn: LocalDate | null;
  portable: boolean;
  /** Part of the day-VFR type certification, or required by the equipment or kinds-of-operation list. */
  requiredByTypeDesign: boolean;
  /** The model needs it for day VFR (an altitude engine's manifold pressure, a retractable's gear position). */
  satisfies: EquipmentKind[];
}

/** A squawk: something reported wrong. */
export interface SquawkFact extends Evidence {
  reportedAt: Instant;
  title: string;
  state: 'reported' | 'grounding' | 'deferred' | 'fixed' | 'no-fault-found';
  closedAt: Instant | null;
  equipmentId: string | null;
  deferral: DeferralFact | null;
}

/** The steps of 14 CFR 91.213(d) as recorded for a deferred squawk. Null = not recorded. */
export interface DeferralFact extends Evidence {
  on: LocalDate;
  deadlineOn: LocalDate | null;
  requiredByTypeDesign: boolean | null;
  requiredByEquipmentList: boolean | null;
  requiredByDirective: boolean | null;
  removedOrDeactivated: boolean | null;
  placarded: boolean | null;
  recorded: boolean | null;
  noHazardDeterminedBy: string | null;
  /** Item of the approved minimum equipment list it is deferred under, for an aircraft flown with one. */
  equipmentListItem: string | null;
}

/**
 * A change of one aircraft's equipment that a pilot must be shown before flying it alone. A differences sign-off names the
 * aircraft and is dated on or after `since`.
 */
export interface DifferencesFact extends Evidence {
  title: string;
  aircraftId: string;
  /** First date on which the changed equipment was in the aircraft. */
  since: LocalDate;
  /** What kind of equipment changed, in words: 'glass panel', 'autopilot'. */
  equipmentGroup: string;
  /** First day on which it matters no more; null: it still does. Absent on sheets of before it was kept. */
  endedOn?: LocalDate | null;
}

/** A special flight permit (14 CFR 21.197): essential crew only, within its limits. */
export interface PermitFact extends Evidence {
  from: LocalDate;
  through: LocalDate;
  purpose: string;
}

/**
 * Work on the aircraft that is not behind it yet: in the shop, or signed with a check flight still to be made. A job that is
 * planned, done or called off is none.
 */
export interface WorkFact extends Evidence {
  title: string;
  state: 'in-work' | 'signed';
  begunAt: Instant;
  /** When the shop means to give it back; null: it has not said. */
  backAt: Instant | null;
  /** When it was approved for return to service; null: it is not. */
  signedAt: Instant | null;
  /** What makes a flight without passengers necessary first (14 CFR 91.407(b)); null: nothing does. */
  checkFlightBecause: string | null;
  /** When that flight was over; null: it has not been made. */
  checkFlownAt: Instant | null;
}

/** Time the aircraft is already promised to: flights and maintenance. */
export interface ReservationFact extends Evidence {
  kind: 'flight' | 'maintenance' | 'club';
  from: Instant;
  to: Instant;
  holder: string;
  /** Expected meter hours in tenths; 0 for maintenance. */
  expectedTenths: number;
  /** What the flight is for; null for maintenance and club use. */
  purpose: Purpose | null;
  forHire: boolean;
}

/** Everything the rules may ask about one aircraft. */
export interface AircraftFacts {
  id: string;
  type: Fact<AircraftType>;
  use: Fact<AircraftUse>;
  meters: Fact<MeterFact[]>;
  items: Fact<ItemFact[]>;
  registration: Fact<RegistrationFact[]>;
  equipment: Fact<EquipmentFact[]>;
  squawks: Fact<SquawkFact[]>;
  permits: Fact<PermitFact[]>;
  reservations: Fact<ReservationFact[]>;
  differences: Fact<DifferencesFact[]>;
  work: Fact<WorkFact[]>;
  /** This and the next two: absent in sheets stored before they were kept, and then not known. */
  weighing?: Fact<WeighingFact>;
  loading?: Fact<LoadingFact>;
  performance?: Fact<PerformanceFact>;
  /** Absent in sheets stored before it was kept, and then not known. */
  insurance?: Fact<InsuranceFact[]>;
}
