/** The club's own rules, and the parameters by which each club sets them. */
import { ruleList } from '../../engine/rule.js';
import { CLUB_AIRWORTHINESS } from '../../parameters/club/airworthiness.js';
import { CLUB_BOOKING } from '../../parameters/club/booking.js';
import { CLUB_CHECKS } from '../../parameters/club/checks.js';
import { CLUB_COSTS } from '../../parameters/club/costs.js';
import { CLUB_LIMITS } from '../../parameters/club/limits.js';
import { CLUB_INSURANCE } from '../../parameters/club/insurance.js';
import { CLUB_LOADING } from '../../parameters/club/loading.js';
import { CLUB_PRACTICE } from '../../parameters/club/practice.js';
import { CLUB_SHARING } from '../../parameters/club/sharing.js';
import { CLUB_SEASON } from '../../parameters/club/season.js';
import { CLUB_SQUAWKS } from '../../parameters/club/squawks.js';
import { CLUB_NOTICES } from '../../parameters/club/notices.js';
import { CLUB_SYLLABUS } from '../../parameters/club/syllabus.js';
import { CLUB_STANDING } from '../../parameters/club/standing.js';
import type { Parameter } from '../../parameters/parameter.js';
import { bookingLead } from './booking/booking-lead.js';
import { bookingLength } from './booking/booking-length.js';
import { instructorFree } from './booking/instructor-free.js';
import { instructorHours } from './booking/instructor-hours.js';
import { memberFree } from './booking/member-free.js';
import { annualCheck } from './checks/annual-check.js';
import { differencesCheckout } from './checks/differences-checkout.js';
import { equipmentCheckout } from './checks/equipment-checkout.js';
import { modelCheckout } from './checks/model-checkout.js';
import { modelRecency } from './checks/model-recency.js';
import { hoursAhead } from './fair-use/hours-ahead.js';
import { openBookings } from './fair-use/open-bookings.js';
import { weekendBookings } from './fair-use/weekend-bookings.js';
import { personalCeilingVisibility } from './limits/personal-ceiling-visibility.js';
import { personalNight } from './limits/personal-night.js';
import { personalRunway } from './limits/personal-runway.js';
import { personalWind } from './limits/personal-wind.js';
import { studentCeilingVisibility } from './limits/student-ceiling-visibility.js';
import { studentNight } from './limits/student-night.js';
import { studentRunway } from './limits/student-runway.js';
import { studentWind } from './limits/student-wind.js';
import { crosswindCheckout } from './conditions/crosswind.js';
import { mountainCheckout } from './conditions/mountain.js';
import { nightCheckout } from './conditions/night.js';
import { shortFieldCheckout } from './conditions/short-field.js';
import { citizenshipEvidence } from './identity/citizenship-evidence.js';
import { identityChecks } from './identity/identity-checks.js';
import { insuranceMinimums } from './insurance/pilot-minimums.js';
import { halfWayCheck } from './runway/half-way.js';
import { runwayLength } from './runway/length.js';
import { runwayMargin } from './runway/margin.js';
import { accountStanding } from './standing/account.js';
import { membership } from './standing/membership.js';
import { pilotStanding } from './standing/pilot-standing.js';
import { papersUnverified } from './standing/unverified.js';

export const CLUB_RULES = ruleList(
  modelCheckout,
  modelRecency,
  annualCheck,
  differencesCheckout,
  equipmentCheckout,
  nightCheckout,
  mountainCheckout,
  shortFieldCheckout,
  crosswindCheckout,
  accountStanding,
  pilotStanding,
  membership,
  papersUnverified,
  bookingLength,
  bookingLead,
  memberFree,
  instructorFree,
  instructorHours,
  openBookings,
  hoursAhead,
  weekendBookings,
  runwayLength,
  runwayMargin,
  halfWayCheck,
  studentWind,
  studentCeilingVisibility,
  studentRunway,
  studentNight,
  personalWind,
  personalCeilingVisibility,
  personalRunway,
  personalNight,
  insuranceMinimums,
  identityChecks,
  citizenshipEvidence,
);
export const CLUB_PARAMETERS: readonly Parameter[] = [
  ...CLUB_CHECKS,
  ...CLUB_BOOKING,
  ...CLUB_STANDING,
  ...CLUB_INSURANCE,
  ...CLUB_AIRWORTHINESS,
  ...CLUB_LOADING,
  ...CLUB_PRACTICE,
  ...CLUB_LIMITS,
  ...CLUB_SEASON,
  ...CLUB_SHARING,
  ...CLUB_SQUAWKS,
  ...CLUB_SYLLABUS,
  ...CLUB_NOTICES,
  ...CLUB_COSTS,
];
