/** Rules that bind the people of the flight under 14 CFR part 61. */
import { ruleList } from '../../../engine/rule.js';
import type { Parameter } from '../../../parameters/parameter.js';
import { COMMERCIAL, RECREATIONAL, SPORT, STUDENT } from '../../../parameters/us/certificates.js';
import { ADDITIONAL_TRAINING } from '../../../parameters/us/endorsements.js';
import { INSTRUCTOR_EXPERIENCE } from '../../../parameters/us/instructor.js';
import { BASIC_MED, MEDICAL_DURATION } from '../../../parameters/us/medical.js';
import { FLIGHT_REVIEW, INSTRUMENT_RECENCY, PASSENGER_RECENCY } from '../../../parameters/us/recency.js';
import { certificateCategoryClass } from './certificates/category-class.js';
import { certificateInstrumentRating } from './certificates/instrument-rating.js';
import { certificatePrivileges } from './certificates/privileges.js';
import { recreationalLimits } from './certificates/recreational-limits.js';
import { sportLimits } from './certificates/sport-limits.js';
import { certificateTypeRating } from './certificates/type-rating.js';
import { endorsementComplex } from './endorsements/complex.js';
import { endorsementHighAltitude } from './endorsements/high-altitude.js';
import { endorsementHighPerformance } from './endorsements/high-performance.js';
import { endorsementTailwheel } from './endorsements/tailwheel.js';
import { instructorAuthority } from './instructor/authority.js';
import { instructorRecentExperience } from './instructor/recent-experience.js';
import { medicalBasicMed } from './medical/basicmed.js';
import { medicalCertificate } from './medical/medical-certificate.js';
import { flightReview } from './recency/flight-review.js';
import { instrumentCheck } from './recency/instrument-check.js';
import { instrumentGrace } from './recency/instrument-grace.js';
import { instrumentRecency } from './recency/instrument.js';
import { passengerRecencyDay } from './recency/passenger-recency-day.js';
import { passengerRecencyNight } from './recency/passenger-recency-night.js';
import { studentSoloCrossCountry } from './student/cross-country.js';
import { studentSolo } from './student/solo.js';

export const US_PILOT_RULES = ruleList(
  certificateCategoryClass,
  certificateTypeRating,
  certificatePrivileges,
  certificateInstrumentRating,
  recreationalLimits,
  sportLimits,
  studentSolo,
  studentSoloCrossCountry,
  endorsementComplex,
  endorsementHighPerformance,
  endorsementHighAltitude,
  endorsementTailwheel,
  medicalCertificate,
  medicalBasicMed,
  flightReview,
  passengerRecencyDay,
  passengerRecencyNight,
  instrumentRecency,
  instrumentGrace,
  instrumentCheck,
  instructorAuthority,
  instructorRecentExperience,
);

export const US_PILOT_PARAMETERS: readonly Parameter[] = [
  ...COMMERCIAL,
  ...STUDENT,
  ...RECREATIONAL,
  ...SPORT,
  ...ADDITIONAL_TRAINING,
  ...MEDICAL_DURATION,
  ...BASIC_MED,
  ...FLIGHT_REVIEW,
  ...PASSENGER_RECENCY,
  ...INSTRUMENT_RECENCY,
  ...INSTRUCTOR_EXPERIENCE,
];
