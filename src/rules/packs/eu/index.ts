/**
 * The European pack, for the people of a flight: licences and their ratings (Part-FCL), recency, medical certificates
 * (Part-MED). The law about aircraft and about the conduct of the flight is not held: `law.easa.airworthiness` and
 * `law.easa.operations` stand for it, so this pack never gives a plain yes.
 */
import { ruleList } from '../../engine/rule.js';
import type { Parameter } from '../../parameters/parameter.js';
import {
  EU_INSTRUCTOR,
  EU_LAPL,
  EU_LAPL_RECENCY,
  EU_RATINGS,
  EU_SCOPE,
} from '../../parameters/eu/licences.js';
import { EU_LAPL_MEDICAL } from '../../parameters/eu/lapl-medical.js';
import { EU_MEDICAL } from '../../parameters/eu/medical.js';
import { EU_PASSENGER_RECENCY } from '../../parameters/eu/recency.js';
import { citedBy } from '../common/cited.js';
import { COMMON_PARAMETERS, COMMON_RULES } from '../common/index.js';
import { airworthiness } from './airworthiness.js';
import { EU_COMMON_CITATIONS } from './common-citations.js';
import { instructorCertificate } from './instructor.js';
import { documents } from './licence/documents.js';
import { language } from './licence/language.js';
import { laplLimits } from './licence/lapl-limits.js';
import { licence } from './licence/licence.js';
import { hire } from './licence/privileges.js';
import { medicalCertificate } from './medical/certificate.js';
import { operations } from './operations.js';
import { classRating } from './ratings/class-rating.js';
import { differences } from './ratings/differences.js';
import { instrumentRating } from './ratings/instrument.js';
import { nightRating } from './ratings/night.js';
import { revalidation } from './ratings/revalidation.js';
import { laplRecency } from './recency/lapl.js';
import { passengerRecency } from './recency/passengers.js';

const OWN_RULES = ruleList(
  licence,
  laplLimits,
  hire,
  classRating,
  revalidation,
  instrumentRating,
  nightRating,
  differences,
  language,
  documents,
  medicalCertificate,
  passengerRecency,
  laplRecency,
  instructorCertificate,
  airworthiness,
  operations,
);

export const EU_RULES = [...OWN_RULES, ...citedBy(COMMON_RULES, EU_COMMON_CITATIONS)];
export const EU_PARAMETERS: readonly Parameter[] = [
  ...EU_SCOPE,
  ...EU_LAPL,
  ...EU_LAPL_RECENCY,
  ...EU_RATINGS,
  ...EU_INSTRUCTOR,
  ...EU_MEDICAL,
  ...EU_LAPL_MEDICAL,
  ...EU_PASSENGER_RECENCY,
  ...COMMON_PARAMETERS,
];
