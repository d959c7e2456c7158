/** Which pilot certificates and licences give privileges on a flight. Which levels a country knows is its own. */
import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { CertificateFact, CertificateLevel, Suspension } from '../../../facts/person.js';

/** What an aircraft asks a rating for. */
export type Kind = Pick<AircraftType, 'category' | 'class'>;

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

/** 'from 2027-01-01 to 2027-02-01', 'since 2027-01-01'. */
export const spanWords = ({ from, to }: Suspension): string =>
  to ? `from ${from} to ${to}` : `since ${from}`;

/** '; it is suspended from 2027-05-31', for the end of a sentence; empty where no suspension lies ahead. */
export function suspendedFromWords(certificates: readonly CertificateFact[], moment: Moment): string {
  const later = moment.aside();
  const ahead = certificates.flatMap((one) => one.suspensions.map(({ from }) => from)).sort();
  const from = ahead.find((one) => !later.startsOnOrAfter(one));
  return from === undefined ? '' : `; it is suspended from ${from}`;
}

/** '; it is valid through 2027-05-31', for the end of a sentence; empty for a certificate without an end. */
export const validThroughWords = ({ validThrough }: Pick<CertificateFact, 'validThrough'>): string =>
  validThrough === null ? '' : `; it is valid through ${validThrough}`;

/** What the certificates on record amount to on the flight. */
export interface Standing {
  /** Those that give privileges, highest level first. Empty while any is suspended: a pilot holds one certificate. */
  inForce: CertificateFact[];
  suspended: Suspension | null;
  /** Those whose last valid day does not cover the flight, highest level first. */
  ended: CertificateFact[];
}

/**
 * Certificates of the levels issued by the flight and not ended. A suspension on any record suspends them all: a person
 * holds one pilot certificate, and records of earlier levels are the same certificate before it was exchanged (strict
 * reading). A level that the country does not know gives nothing.
 *
 * @param levels lowest first
 */
export function standingAmong(
  levels: readonly CertificateLevel[],
  all: readonly CertificateFact[],
  moment: Moment,
): Standing {
  const rank = ({ level }: CertificateFact): number => levels.indexOf(level);
  const certificates = all.filter((one) => rank(one) >= 0);
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

/** The last day on which any of the ended certificates was valid. */
export const lastEnd = (ended: readonly CertificateFact[]): string =>
  ended
    .map(({ validThrough }) => validThrough!)
    .sort()
    .at(-1)!;

/** Does the certificate carry the category and class rating? */
export function rated(certificate: CertificateFact, kind: Kind): boolean {
  return certificate.ratings.some(
    (rating) => rating.category === kind.category && rating.class === kind.class,
  );
}
