/** Which pilot certificates of 14 CFR part 61 give privileges on a flight, and at what level. */
import type { Moment } from '../../../../engine/moment.js';
import type { Effect } from '../../../../engine/remedy.js';
import type { CertificateFact, CertificateLevel } from '../../../../facts/person.js';
import { plannedReview } from '../../../planned-review.js';
import { rated, standingAmong, type Kind, type Standing } from '../../../common/people/standing.js';

export { kindWords, rated, suspensionDuring, type Standing } from '../../../common/people/standing.js';

/** The levels of 14 CFR 61.5(a), lowest first. */
const LEVELS: readonly CertificateLevel[] = [
  'student',
  'sport',
  'recreational',
  'private',
  'commercial',
  'atp',
];

/** Level in words. */
export const LEVEL_WORDS: Record<CertificateLevel, string> = {
  student: 'student pilot',
  sport: 'sport pilot',
  recreational: 'recreational pilot',
  lapl: 'light aircraft pilot',
  private: 'private pilot',
  commercial: 'commercial pilot',
  atp: 'airline transport pilot',
};

/** What the certificates on record amount to on the flight. */
export const standingOf = (certificates: readonly CertificateFact[], moment: Moment): Standing =>
  standingAmong(LEVELS, certificates, moment);

/** The highest certificate that carries the rating; failing that, the highest of all; null when none is in force. */
export function exercised(standing: Standing, kind: Kind): CertificateFact | null {
  return standing.inForce.find((certificate) => rated(certificate, kind)) ?? standing.inForce[0] ?? null;
}

/** Only a student certificate is in force. */
export function isStudent(standing: Standing): boolean {
  return standing.inForce[0]?.level === 'student';
}

/** Effects of a practical test passed now: the certificate as it would then read, and the test as a review. */
export function practicalTest(
  act: string,
  from: CertificateFact,
  added: Partial<CertificateFact>,
  kind: Kind,
  moment: Moment,
): Effect[] {
  const on = moment.knowledgeDate();
  return [
    {
      op: 'append',
      fact: 'pic.certificates',
      value: { ...from, id: `planned:${act}`, issuedOn: on, validThrough: null, suspensions: [], ...added },
    },
    {
      op: 'append',
      fact: 'pic.reviews',
      value: plannedReview(act, 'practical-test', moment, kind.category),
    },
  ];
}
