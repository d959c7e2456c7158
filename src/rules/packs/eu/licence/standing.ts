/** Part-FCL licences: which are in force, and which is flown on. */
import type { Moment } from '../../../engine/moment.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { AircraftCategory, CertificateFact, CertificateLevel } from '../../../facts/person.js';
import { standingAmong, type Standing } from '../../common/people/standing.js';

/** Licences of Part-FCL, lowest first. A licence of another country gives nothing here unless it was converted. */
export const EU_LEVELS: readonly CertificateLevel[] = ['student', 'lapl', 'private', 'commercial', 'atp'];

/** Licence in words. */
export const EU_LEVEL_WORDS: Partial<Record<CertificateLevel, string>> = {
  student: 'student',
  lapl: 'light aircraft pilot licence (LAPL)',
  private: 'private pilot licence (PPL)',
  commercial: 'commercial pilot licence (CPL)',
  atp: 'airline transport pilot licence (ATPL)',
};

export const euStanding = (certificates: readonly CertificateFact[], moment: Moment): Standing =>
  standingAmong(EU_LEVELS, certificates, moment);

type Type = Pick<AircraftType, 'category' | 'engines'>;

/** A glider with an engine is taken for a touring motor glider (FCL.010), which is flown on an aeroplane licence. */
export const isMotorGlider = (type: Type): boolean => type.category === 'glider' && type.engines > 0;

/** The category of licence an aircraft is flown on, or null where its law (Part-SFCL, Part-BFCL) is not held here. */
export function licenceCategory(type: Type): AircraftCategory | null {
  if (isMotorGlider(type)) return 'airplane';
  return type.category === 'airplane' || type.category === 'rotorcraft' ? type.category : null;
}

/** The highest licence in force for the category; a student has none of any category. */
export function flownOn(standing: Standing, type: Type): CertificateFact | null {
  const category = licenceCategory(type);
  const licence = standing.inForce.find(
    ({ level, ratings }) => level !== 'student' && ratings.some((rating) => rating.category === category),
  );
  return licence ?? standing.inForce.find(({ level }) => level === 'student') ?? null;
}
