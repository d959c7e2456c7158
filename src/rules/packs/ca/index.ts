/**
 * The Canadian pack, for the people of a flight: permits, licences and ratings (CARs part IV), recency (401.05), medical
 * certificates (404). The law about aircraft and about the conduct of the flight is not held: `law.canada.airworthiness`
 * and `law.canada.operations` stand for it, so this pack never gives a plain yes.
 */
import { ruleList } from '../../engine/rule.js';
import { CA_INSTRUMENT } from '../../parameters/ca/instrument.js';
import { CA_INSTRUCTOR, CA_PERMIT, CA_SCOPE } from '../../parameters/ca/licences.js';
import { CA_MEDICAL } from '../../parameters/ca/medical.js';
import { CA_RECENCY, CA_REGAINING } from '../../parameters/ca/recency.js';
import type { Parameter } from '../../parameters/parameter.js';
import { citedBy } from '../common/cited.js';
import { COMMON_PARAMETERS, COMMON_RULES } from '../common/index.js';
import { airworthiness } from './airworthiness.js';
import { CA_COMMON_CITATIONS } from './common-citations.js';
import { instructorRating } from './instructor.js';
import { documents } from './licence/documents.js';
import { licence } from './licence/licence.js';
import { permitLimits } from './licence/permit-limits.js';
import { hire } from './licence/privileges.js';
import { medicalCertificate } from './medical/certificate.js';
import { operations } from './operations.js';
import { instrumentRating } from './ratings/instrument.js';
import { nightRating } from './ratings/night.js';
import { fiveYears } from './recency/five-years.js';
import { instrumentRecency } from './recency/instrument.js';
import { passengerRecency } from './recency/passengers.js';
import { recurrentTraining } from './recency/recurrent-training.js';

const OWN_RULES = ruleList(
  licence,
  permitLimits,
  hire,
  instrumentRating,
  nightRating,
  documents,
  medicalCertificate,
  fiveYears,
  recurrentTraining,
  passengerRecency,
  instrumentRecency,
  instructorRating,
  airworthiness,
  operations,
);

export const CA_RULES = [...OWN_RULES, ...citedBy(COMMON_RULES, CA_COMMON_CITATIONS)];
export const CA_PARAMETERS: readonly Parameter[] = [
  ...CA_SCOPE,
  ...CA_PERMIT,
  ...CA_INSTRUCTOR,
  ...CA_MEDICAL,
  ...CA_RECENCY,
  ...CA_REGAINING,
  ...CA_INSTRUMENT,
  ...COMMON_PARAMETERS,
];
