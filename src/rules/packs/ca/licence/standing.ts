/** Canadian permits and licences: which are in force, and which is flown on. */
import type { Moment } from '../../../engine/moment.js';
import type { CertificateFact, CertificateLevel } from '../../../facts/person.js';
import { rated, standingAmong, type Kind, type Standing } from '../../common/people/standing.js';

/** Student and recreational pilot permits, private, commercial and airline transport licences; lowest first. */
export const CA_LEVELS: readonly CertificateLevel[] = [
  'student',
  'recreational',
  'private',
  'commercial',
  'atp',
];

/** Permit or licence in words. */
export const CA_LEVEL_WORDS: Partial<Record<CertificateLevel, string>> = {
  student: 'student pilot permit',
  recreational: 'recreational pilot permit',
  private: 'private pilot licence',
  commercial: 'commercial pilot licence',
  atp: 'airline transport pilot licence',
};

export const caStanding = (certificates: readonly CertificateFact[], moment: Moment): Standing =>
  standingAmong(CA_LEVELS, certificates, moment);

/** The highest that carries the class rating; failing that, the highest of all. */
export function flownOn(standing: Standing, kind: Kind): CertificateFact | null {
  return standing.inForce.find((one) => rated(one, kind)) ?? standing.inForce[0] ?? null;
}
