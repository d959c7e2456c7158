import type { LocalDate } from '../calendar/dates.js';
import type { Evidence } from './fact.js';
import type { CertificateLevel } from './person.js';

/** What an insurer asks of a pilot it does not name. Hours in tenths; null: it asks nothing of the kind. */
export interface PilotMinimums {
  /** This certificate, or a higher one. */
  leastLevel: CertificateLevel | null;
  /** For the category of the aircraft. */
  instrumentRating: boolean;
  leastAgeYears: number | null;
  /** Still covered at this age; no longer from the next birthday on. */
  mostAgeYears: number | null;
  totalTenths: number | null;
  /** In the category and class of the aircraft. */
  classTenths: number | null;
  retractableTenths: number | null;
  tailwheelTenths: number | null;
  /** In the make and model of the aircraft. */
  modelTenths: number | null;
  /** Hours within `recentDays` of the flight; both are given, or neither. */
  recentTenths: number | null;
  recentDays: number | null;
  /** A checkout in the model, signed by an instructor of the club. */
  checkoutInModel: boolean;
  /** Instruction received in the model. */
  dualInModelTenths: number | null;
  /** A review flown with an instructor, or a test that stands for one, within so many months. */
  reviewMonths: number | null;
}

/** The terms on which an aircraft is insured through some days, as far as they are about who flies it. */
export interface InsuranceFact extends Evidence {
  from: LocalDate;
  through: LocalDate;
  /** Where it stands: the policy's clause, in words. */
  source: string;
  namedPilotIds: string[];
  /** Null: nobody but the pilots named is covered. */
  minimums: PilotMinimums | null;
  /** Models of the club with retractable gear: the log says the model, not the gear. */
  retractableModelIds: string[];
}
