/** Which pilot certificates give privileges on a flight, and at what level. */
import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Effect } from '../../../../engine/remedy.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { CertificateFact, CertificateLevel, Suspension } from '../../../../facts/person.js';

type Kind = Pick<AircraftType, 'category' | 'class'>;

const LEVELS: readonly CertificateLevel[] = [
  'student',
  'sport',
  'recreational',
  'private',
  'commercial',
  'atp',
];
const rank = (certificate: CertificateFact): number => LEVELS.indexOf(certificate.level);

/** Level in words. */
export const LEVEL_WORDS: Record<CertificateLevel, string> = {
  student: 'student pilot',
  sport: 'sport pilot',
  recreational: 'recreational pilot',
  private: 'private pilot',
  commercial: 'commercial pilot',
  atp: 'airline transport pilot',
};

/** 'airplane, single engine land'. */
export function kindWords(kind: Kind): string {
  return kind.class === 'none' ? kind.category : `${kind.category}, ${kind.class.replaceAll('-', ' ')}`;
}

/** The suspension that shares a day with the flight, the one that lasts longest first; its last day counts. */
export function suspensionDuring(suspensions: readonly Suspension[], moment: Moment): Suspension | null {
  const during = suspensions.filter(
    ({ from, to }) =>
      !moment.endsOnOrBefore(addDays(from, -1)) && !(to !== null && moment.startsOnOrAfter(addDays(to, 1))),
  );
  during.sort((a, b) => ((a.to ?? '9999') < (b.to ?? '9999') ? 1 : -1));
  return during[0] ?? null;
}

/** What the certificates on record amount to on the flight. */
export interface Standing {
  /** Those that give privileges, highest level first. Empty while any is suspended: a pilot holds one certificate. */
  inForce: CertificateFact[];
  suspended: Suspension | null;
  /** Those whose last valid day does not cover the flight, highest level first. */
  ended: CertificateFact[];
}

/**
 * Certificates issued by the flight and not ended. A suspension on any record suspends them all: a person holds one
 * pilot certificate, and records of earlier levels are the same certificate before it was exchanged (strict reading).
 */
export function standingOf(certificates: readonly CertificateFact[], moment: Moment): Standing {
  const suspended = suspensionDuring(
    certificates.flatMap((certificate) => certificate.suspensions),
    moment,
  );
  const issued = certificates.filter((certificate) => moment.startsOnOrAfter(certificate.issuedOn));
  issued.sort((a, b) => rank(b) - rank(a) || (a.id < b.id ? -1 : 1));
  const lasts = ({ validThrough }: CertificateFact): boolean =>
    validThrough === null || moment.endsOnOrBefore(validThrough);
  return {
    inForce: suspended ? [] : issued.filter(lasts),
    suspended,
    ended: issued.filter((certificate) => !lasts(certificate)),
  };
}

/** Does the certificate carry the category and class rating? */
export function rated(certificate: CertificateFact, kind: Kind): boolean {
  return certificate.ratings.some(
    (rating) => rating.category === kind.category && rating.class === kind.class,
  );
}

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
      value: {
        id: `planned:${act}`,
        kind: 'practical-test',
        on,
        groundTenths: null,
        flightTenths: null,
        category: kind.category,
        endorsedAsReview: false,
      },
    },
  ];
}
