import type { CertificateLevel } from '../../../rules/index.js';

/** Pilot certificates in the files' words. */
export const LEVEL: Record<string, CertificateLevel> = {
  student: 'student',
  sport: 'sport',
  recreational: 'recreational',
  private: 'private',
  commercial: 'commercial',
  atp: 'atp',
};
