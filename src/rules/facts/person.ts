import type { LocalDate } from '../calendar/dates.js';
import type { Instant } from '../calendar/instants.js';
import type { Evidence, Fact } from './fact.js';

export type AircraftCategory = 'airplane' | 'rotorcraft' | 'glider' | 'lighter-than-air' | 'powered-lift';
export type AircraftClass =
  | 'single-engine-land'
  | 'single-engine-sea'
  | 'multi-engine-land'
  | 'multi-engine-sea'
  | 'helicopter'
  | 'gyroplane'
  | 'none';

/** `sport` is of the United States, `lapl` (light aircraft) of Europe; `recreational` is a permit in Canada. */
export type CertificateLevel =
  'student' | 'sport' | 'recreational' | 'lapl' | 'private' | 'commercial' | 'atp';

/** A pilot certificate with the ratings on it. */
export interface CertificateFact extends Evidence {
  level: CertificateLevel;
  issuedOn: LocalDate;
  /** Category and class ratings; empty on a student certificate. */
  ratings: { category: AircraftCategory; class: AircraftClass }[];
  /** Categories for which an instrument rating is held. */
  instrument: AircraftCategory[];
  /** Type ratings by type designator. */
  typeRatings: string[];
  limitations: string[];
  /** Last valid date printed on it, where it has one. */
  validThrough: LocalDate | null;
  suspensions: Suspension[];
}

/** A time when a certificate gave no privileges. A null `to` is open. */
export interface Suspension {
  id: string;
  from: LocalDate;
  to: LocalDate | null;
}

/** A flight instructor certificate. */
export interface InstructorFact extends Evidence {
  issuedOn: LocalDate;
  /** What may be taught: category/class as on 14 CFR 61.5(c), instrument apart. */
  ratings: (
    | 'airplane-single-engine'
    | 'airplane-multiengine'
    | 'instrument-airplane'
    | 'rotorcraft-helicopter'
    | 'glider'
  )[];
  /** Newest recent-experience event under 14 CFR 61.197 (renewal, reinstatement, first issue). */
  recentExperienceOn: LocalDate | null;
  /** End date printed on certificates issued before 2024-12-01; it binds. */
  printedEndOn: LocalDate | null;
  suspensions: Suspension[];
}

/**
 * A medical certificate: class and dates only, nothing medical. In Canada the class is the category. 4 is category 4
 * there and the LAPL certificate in Europe; the United States have none.
 */
export interface MedicalFact extends Evidence {
  class: 1 | 2 | 3 | 4;
  examOn: LocalDate;
  limitations: string[];
  /** Date from which it no longer counts (withdrawn, suspended), null while it stands. */
  withdrawnOn: LocalDate | null;
}

/** What stands behind BasicMed (14 CFR 61.23(c)(3), part 68). Null = not on record. */
export interface BasicMedFact extends Evidence {
  examOn: LocalDate | null;
  courseOn: LocalDate | null;
  licenceValidThrough: LocalDate | null;
  heldMedicalAfter20060714: boolean | null;
  lastApplicationDenied: boolean | null;
  lastCertificateRevokedOrSuspended: boolean | null;
}

export type ReviewKind =
  | 'flight-review'
  | 'practical-test'
  | 'proficiency-check'
  | 'instrument-proficiency-check'
  | 'faa-proficiency-phase'
  | 'instructor-practical-test'
  | 'instructor-renewal'
  | 'safety-seminar'
  | 'self-paced-study'
  | 'written-examination';

/** A flight review or an event that may stand for one. Times in tenths of an hour, null when not recorded. */
export interface ReviewFact extends Evidence {
  kind: ReviewKind;
  on: LocalDate;
  groundTenths: number | null;
  flightTenths: number | null;
  /** Category the check was flown in (instrument proficiency checks count per category). */
  category: AircraftCategory | null;
  /** An instrument proficiency check endorsed as a flight review too. */
  endorsedAsReview: boolean;
}

export type EndorsementKind =
  | 'solo'
  | 'solo-night'
  | 'solo-cross-country-training'
  | 'solo-cross-country-flight'
  | 'solo-other-airport-25nm'
  | 'solo-repeated-route-50nm'
  | 'complex'
  | 'high-performance'
  | 'high-altitude'
  | 'tailwheel'
  | 'recreational-50nm'
  | 'recreational-cross-country'
  | 'recreational-airspace'
  | 'recreational-refresher'
  | 'sport-night'
  | 'sport-airspace'
  | 'sport-controllable-propeller'
  | 'sport-retractable-gear'
  | 'grandfather-complex'
  | 'grandfather-high-performance'
  | 'grandfather-high-altitude'
  | 'grandfather-tailwheel'
  | 'differences-variable-pitch'
  | 'differences-retractable-gear'
  | 'differences-tailwheel'
  | 'differences-pressurised';

/**
 * An instructor's endorsement. The `grandfather-*` kinds record pilot-in-command time logged on `on`, before the
 * endorsement was asked for.
 */
export interface EndorsementFact extends Evidence {
  kind: EndorsementKind;
  on: LocalDate;
  /** Make and model it is limited to (student solo), as the aircraft's `makeModel`. */
  makeModel: string | null;
  /** Airfield codes it is limited to (solo to another airport, repeated route). */
  airfields: string[];
  expiresOn: LocalDate | null;
}

/** What a rating that may end is for. `type` and `language` say which in `designator`. */
export type RatingKind =
  | 'single-engine-piston-land'
  | 'single-engine-piston-sea'
  | 'multi-engine-piston-land'
  | 'multi-engine-piston-sea'
  | 'touring-motor-glider'
  | 'type'
  | 'instrument'
  | 'night'
  | 'language';

/** A rating as endorsed on a European licence, with the day it ends. The licence itself is a `CertificateFact`. */
export interface RatingFact extends Evidence {
  kind: RatingKind;
  /** Type designator, or the language; null for the others. */
  designator: string | null;
  /** When it was issued, or revalidated last. */
  on: LocalDate;
  /** Last valid date as endorsed; null where it does not end. */
  validThrough: LocalDate | null;
}

/** One flight in the log, as far as recency needs it. Hours in tenths. */
export interface LogFact extends Evidence {
  /** Off-block instant and the local date at the place. */
  departedAt: Instant;
  on: LocalDate;
  category: AircraftCategory;
  class: AircraftClass;
  /** Type designator where a type rating is required, else null. */
  typeRating: string | null;
  tailwheel: boolean;
  modelId: string | null;
  aircraftId: string | null;
  role: 'pilot-in-command' | 'second-in-command' | 'dual-received' | 'instructor' | 'solo';
  soleManipulator: boolean;
  /** All take-offs and landings of the flight, day and night. */
  takeoffs: number;
  landings: number;
  /** Landings to a full stop, day and night. */
  fullStopLandings: number;
  /** Those in the window of 14 CFR 61.57(b): one hour after sunset to one hour before sunrise. */
  nightTakeoffs: number;
  nightFullStopLandings: number;
  approaches: number;
  holding: boolean;
  interceptTrack: boolean;
  /** Set for time in a simulator or training device instead of an aircraft. */
  device: 'full-flight-simulator' | 'flight-training-device' | 'aviation-training-device' | null;
  totalTenths: number;
  nightTenths: number;
  dualGivenTenths: number;
}

/** Sums over log entries of one kind. Hours in tenths; time in training devices is never among them. */
export interface LogSum {
  modelId: string | null;
  category: AircraftCategory;
  class: AircraftClass;
  tailwheel: boolean;
  role: LogFact['role'];
  flights: number;
  landings: number;
  totalTenths: number;
  nightTenths: number;
  dualGivenTenths: number;
}

/** Earlier flying that the sheet's log no longer lists, as sums. `through`: the newest departure among it. */
export interface LogBeforeFact {
  through: Instant | null;
  sums: LogSum[];
}

/** What a club may ask to be shown before it lets a pilot fly in it. */
export type CheckoutCondition = 'night' | 'mountain' | 'short-field' | 'high-crosswind';
/** Equipment a club may ask to be shown before it is flown with. */
export type EquipmentGroup = 'glass-panel' | 'autopilot' | 'gps-navigator';

/** A club sign-off. */
export interface CheckoutFact extends Evidence {
  kind: 'model' | 'differences' | 'annual-check' | 'equipment' | 'condition';
  /** Model (for 'model' and 'differences') it opens; null for the others. */
  modelId: string | null;
  /** Differences checkouts: the aircraft whose equipment changed. */
  aircraftId: string | null;
  on: LocalDate;
  expiresOn: LocalDate | null;
  signedById: string;
  /**
   * Differences checkouts: the equipment that was shown, in the words of the change; equipment checkouts: an
   * `EquipmentGroup`. Absent on sheets of before it was kept.
   */
  equipmentGroup?: string | null;
  /** Condition checkouts: what was shown. Absent on sheets of before it was kept. */
  condition?: CheckoutCondition | null;
  /** Like models for which the club lets this sign-off count. Absent: none. */
  alsoModelIds?: string[];
}

/**
 * What an officer has seen or found out about a member: that it was, when, and until when it holds. Never a number of a
 * document, nor what it says.
 */
export interface CheckFact extends Evidence {
  /** `citizenship`: of a citizen or national, or a determination of eligibility for flight training (49 CFR 1552.7(a)). */
  kind: 'identity' | 'citizenship' | 'background';
  on: LocalDate;
  /** As the document says; null where it has no end. */
  expiresOn: LocalDate | null;
}

/** A paper that is entered but that no officer has verified; it does not count yet. */
export interface UnverifiedFact extends Evidence {
  /** What it is, in words: 'medical certificate of class 3'. */
  what: string;
  on: LocalDate | null;
}

/**
 * Limits a pilot flies by, beyond the law: the pilot's own, or those an instructor set. A null figure: none is set. Of
 * several rows by the same side the one written last counts from its first day on.
 */
export interface LimitsFact extends Evidence {
  setBy: 'member' | 'instructor';
  recordedAt: Instant;
  /** First day they hold. */
  from: LocalDate;
  /** An instructor's: the day through which they bind whoever is no student any more; null: students only. */
  through: LocalDate | null;
  /** Most wind, gusts counted; most of it across the runway; most that gusts lie over the wind. */
  windKt: number | null;
  crosswindKt: number | null;
  gustSpreadKt: number | null;
  /** Least ceiling and visibility. */
  ceilingDayFtAgl: number | null;
  ceilingNightFtAgl: number | null;
  visibilityDaySm: number | null;
  visibilityNightSm: number | null;
  /** Least length of a runway. */
  runwayFt: number | null;
  /** False: no flying at night. */
  night: boolean | null;
}

/** Where the member stands with the club. */
export interface StandingFact extends Evidence {
  state: 'good' | 'arrears' | 'suspended';
  since: LocalDate;
  membershipFrom: LocalDate;
  membershipThrough: LocalDate | null;
}

/** A charge of the club that what was received does not cover; money received pays the oldest charges first. */
export interface UnpaidFact extends Evidence {
  /** The day it was charged, from which the days to pay it in are counted. */
  on: LocalDate;
  /** What of it is unpaid, in the smallest unit of the currency (cents). */
  unpaidMinor: number;
  /** How many of the smallest make one: 100 cents. */
  minorPerUnit: number;
  /** ISO 4217 code. */
  currency: string;
}

/** Time a person is already promised to. */
export interface CommitmentFact extends Evidence {
  from: Instant;
  to: Instant;
  role: 'pilot' | 'instructor' | 'second-pilot';
  what: string;
}

/** Hours in which an instructor gives lessons: each week on one day, or on one date instead of that week's. */
export interface TeachingHoursFact extends Evidence {
  kind: 'weekly' | 'date';
  /** Of the weekly kind: 1 is Monday, 7 Sunday; null otherwise. */
  weekday: number | null;
  /** Of the kind for one date; null otherwise. */
  on: LocalDate | null;
  /** Minutes past midnight on the club's clock; both null: away all that date. */
  opensMinutes: number | null;
  closesMinutes: number | null;
  /** Of the weekly kind: the first date it holds and the last; null: no end. */
  from: LocalDate | null;
  through: LocalDate | null;
}

/** Everything the rules may ask about one person. */
export interface PersonFacts {
  id: string;
  name: string;
  birthDate: Fact<LocalDate>;
  certificates: Fact<CertificateFact[]>;
  instructor: Fact<InstructorFact[]>;
  medicals: Fact<MedicalFact[]>;
  basicMed: Fact<BasicMedFact[]>;
  reviews: Fact<ReviewFact[]>;
  endorsements: Fact<EndorsementFact[]>;
  /** Absent in sheets stored before it was kept, and then not known. */
  ratings?: Fact<RatingFact[]>;
  log: Fact<LogFact[]>;
  /** Absent in sheets stored before it was kept, and then not known. */
  logBefore?: Fact<LogBeforeFact>;
  checkouts: Fact<CheckoutFact[]>;
  standing: Fact<StandingFact>;
  commitments: Fact<CommitmentFact[]>;
  unverified: Fact<UnverifiedFact[]>;
  /** Absent in sheets stored before it was kept, and then not known. */
  limits?: Fact<LimitsFact[]>;
  checks?: Fact<CheckFact[]>;
  unpaid?: Fact<UnpaidFact[]>;
  /** Absent in sheets stored before it was kept, and then not known. */
  teachingHours?: Fact<TeachingHoursFact[]>;
}
