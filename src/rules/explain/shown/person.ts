/** A person's papers, log and standing, a line a record. */
import type {
  BasicMedFact,
  CertificateFact,
  CertificateLevel,
  CheckFact,
  CheckoutFact,
  CommitmentFact,
  EndorsementFact,
  EquipmentGroup,
  InstructorFact,
  LogBeforeFact,
  LogFact,
  MedicalFact,
  RatingFact,
  ReviewFact,
  StandingFact,
  Suspension,
  UnpaidFact,
  UnverifiedFact,
} from '../../facts/person.js';
import { moneyWords } from '../money-words.js';
import { CHECKOUT_CONDITION_WORD, counted, EQUIPMENT_GROUP_WORD, listed } from '../words.js';
import { dayAndClock, hours, parts, plain, type RecordShown, type Show } from './shown.js';

const LEVEL: Record<CertificateLevel, string> = {
  student: 'student pilot',
  sport: 'sport pilot',
  recreational: 'recreational pilot',
  lapl: 'light aircraft pilot',
  private: 'private pilot',
  commercial: 'commercial pilot',
  atp: 'airline transport pilot',
};
const ROLE: Record<LogFact['role'], string> = {
  'pilot-in-command': 'pilot in command',
  'second-in-command': 'second in command',
  'dual-received': 'instruction received',
  instructor: 'instruction given',
  solo: 'solo',
};
const CHECKOUT: Record<CheckoutFact['kind'], string> = {
  model: 'model checkout',
  differences: 'differences checkout',
  'annual-check': 'club check',
  equipment: 'equipment checkout',
  condition: 'checkout for a condition',
};
const STANDING: Record<StandingFact['state'], string> = {
  good: 'in good standing',
  arrears: 'account in arrears',
  suspended: 'suspended from booking',
};

const rating = ({ category, class: of }: { category: string; class: string }): string =>
  of === 'none' ? plain(category) : `${plain(category)} ${plain(of)}`.trim();
const suspended = (suspensions: readonly Suspension[]): string | null =>
  suspensions.length === 0
    ? null
    : `suspended ${listed(suspensions.map(({ from, to }) => (to ? `${from} to ${to}` : `since ${from}`)))}`;

export const showBirthDate: Show<string> = (on) => [{ id: null, on: null, says: on }];

export const showCertificates: Show<CertificateFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    alsoIds: one.suspensions.map(({ id }) => id),
    on: one.issuedOn,
    says: parts(
      `${LEVEL[one.level]} certificate of ${one.issuedOn}`,
      listed(one.ratings.map(rating)),
      one.instrument.length > 0 && `instrument rating for ${listed(one.instrument.map(plain))}`,
      one.typeRatings.length > 0 && `type ratings ${listed(one.typeRatings)}`,
      ...one.limitations,
      one.validThrough && `valid through ${one.validThrough}`,
      suspended(one.suspensions),
    ),
  }));

export const showInstructor: Show<InstructorFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    alsoIds: one.suspensions.map(({ id }) => id),
    on: one.issuedOn,
    says: parts(
      `instructor certificate of ${one.issuedOn}`,
      listed(one.ratings.map(plain)),
      one.recentExperienceOn && `recent experience on ${one.recentExperienceOn}`,
      one.printedEndOn && `printed end ${one.printedEndOn}`,
      suspended(one.suspensions),
    ),
  }));

export const showMedicals: Show<MedicalFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.examOn,
    says: parts(
      `class ${one.class}, examined ${one.examOn}`,
      ...one.limitations,
      one.withdrawnOn && `withdrawn ${one.withdrawnOn}`,
    ),
  }));

const told = (value: boolean | null, yes: string, no: string): string | null =>
  value === null ? null : value ? yes : no;

export const showBasicMed: Show<BasicMedFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.examOn ?? one.courseOn,
    says:
      parts(
        one.examOn && `physician’s examination ${one.examOn}`,
        one.courseOn && `course ${one.courseOn}`,
        one.licenceValidThrough && `driver’s licence through ${one.licenceValidThrough}`,
        told(
          one.heldMedicalAfter20060714,
          'medical held after 2006-07-14',
          'no medical held after 2006-07-14',
        ),
        told(one.lastApplicationDenied, 'last application denied', 'last application not denied'),
        told(
          one.lastCertificateRevokedOrSuspended,
          'last certificate revoked or suspended',
          'last certificate not revoked or suspended',
        ),
      ) || 'nothing entered',
  }));

export const showReviews: Show<ReviewFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(
      `${plain(one.kind)} on ${one.on}`,
      one.category && plain(one.category),
      one.groundTenths !== null && `${hours(one.groundTenths)} on the ground`,
      one.flightTenths !== null && `${hours(one.flightTenths)} in the air`,
      one.endorsedAsReview && 'endorsed as a flight review',
    ),
  }));

export const showEndorsements: Show<EndorsementFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(
      `${plain(one.kind).replace('grandfather ', 'flown before the endorsement was asked for: ')} on ${one.on}`,
      one.makeModel && `for the ${one.makeModel}`,
      one.airfields.length > 0 && `for ${listed(one.airfields)}`,
      one.expiresOn && `until ${one.expiresOn}`,
    ),
  }));

export const showRatings: Show<RatingFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(
      `${plain(one.kind)} rating of ${one.on}`,
      one.designator,
      one.validThrough ? `valid through ${one.validThrough}` : 'without an end',
    ),
  }));

/** What a flight gave, and nothing of where it went. */
export const showLog: Show<LogFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(
      `${one.on}: ${ROLE[one.role]}`,
      one.device ? `in a ${plain(one.device)}` : rating(one),
      `${counted(one.takeoffs, 'take-off')} and ${counted(one.landings, 'landing')}`,
      one.fullStopLandings > 0 && `${one.fullStopLandings} to a full stop`,
      one.nightTakeoffs + one.nightFullStopLandings > 0 &&
        `by night ${counted(one.nightTakeoffs, 'take-off')} and ${counted(one.nightFullStopLandings, 'landing')} to a full stop`,
      one.approaches > 0 && counted(one.approaches, 'instrument approach', 'instrument approaches'),
      one.holding && 'holding',
      one.interceptTrack && 'tracking',
      !one.soleManipulator && 'not at the controls alone',
      hours(one.totalTenths),
    ),
  }));

export const showLogBefore: Show<LogBeforeFact> = ({ through, sums }, zone) =>
  sums.map((one) => ({
    id: null,
    on: through && dayAndClock(through, zone).slice(0, 10),
    // A case table states only the sums that matter to it.
    says: parts(
      through && `through ${dayAndClock(through, zone).slice(0, 10)}`,
      ROLE[one.role],
      rating(one),
      one.flights !== undefined && counted(one.flights, 'flight'),
      one.landings !== undefined && counted(one.landings, 'landing'),
      hours(one.totalTenths),
    ),
  }));

/** 'checkout on the autopilot', 'night checkout'; what it is for is left out where the record does not say. */
function checkoutWords({ kind, equipmentGroup, condition }: CheckoutFact): string {
  if (kind === 'equipment' && equipmentGroup)
    return `checkout on the ${EQUIPMENT_GROUP_WORD[equipmentGroup as EquipmentGroup] ?? equipmentGroup}`;
  if (kind === 'condition' && condition) return `${CHECKOUT_CONDITION_WORD[condition]} checkout`;
  return CHECKOUT[kind];
}

export const showCheckouts: Show<CheckoutFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(
      `${checkoutWords(one)} on ${one.on}`,
      (one.alsoModelIds?.length ?? 0) > 0 && 'counts for like models',
      one.expiresOn && `good through ${one.expiresOn}`,
    ),
  }));

export const showStanding: Show<StandingFact> = (one) => [
  {
    id: one.id,
    on: one.since,
    says: parts(
      `${STANDING[one.state]} since ${one.since}`,
      `member from ${one.membershipFrom}${one.membershipThrough ? ` through ${one.membershipThrough}` : ''}`,
    ),
  },
];

export const showCommitments: Show<CommitmentFact[]> = (all, zone) =>
  all.map((one): RecordShown => ({
    id: one.id,
    on: dayAndClock(one.from, zone).slice(0, 10),
    says: `${one.what}, ${plain(one.role)}, ${dayAndClock(one.from, zone)} until ${dayAndClock(one.to, zone)}`,
  }));

export const showUnverified: Show<UnverifiedFact[]> = (all) =>
  all.map((one) => ({ id: one.id, on: one.on, says: parts(one.what, one.on && `of ${one.on}`) }));

export const showUnpaid: Show<UnpaidFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: `${moneyWords(one.unpaidMinor, one)} of what was charged on ${one.on}`,
  }));

const CHECK: Record<CheckFact['kind'], string> = {
  identity: 'identity document seen',
  citizenship: 'citizenship or eligibility for flight training seen',
  background: 'background looked into',
};

export const showChecks: Show<CheckFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on,
    says: parts(`${CHECK[one.kind]} on ${one.on}`, one.expiresOn && `good through ${one.expiresOn}`),
  }));
