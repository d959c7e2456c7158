/** Part-FCL licences: which are in force, and which is flown on. */
import type { Moment } from '../../../engine/moment.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { AircraftCategory, CertificateFact, CertificateLevel, LogFact } from '../../../facts/person.js';
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

/**
 * Flown in an aeroplane, or in a touring motor glider (FCL.105.A, FCL.140.A)? The log does not tell motor gliders from other
 * gliders, so of gliders only the model counts that is a motor glider for certain: the one to be flown.
 */
export const inAeroplane = (
  flown: Pick<LogFact, 'category' | 'modelId'>,
  type: Pick<AircraftType, 'category' | 'engines' | 'modelId'>,
): boolean =>
  flown.category === 'airplane' ||
  (flown.category === 'glider' && isMotorGlider(type) && flown.modelId === type.modelId);

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
