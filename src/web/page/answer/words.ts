import type { Answer, Finding } from '../api/types.js';

/** Besides its word, each answer has a shape and a tone, so that none rests on colour. */
export const LOOKS: Record<Answer, { shape: string; tone: string }> = {
  yes: { shape: '●', tone: 'yes' },
  'yes-with-conditions': { shape: '◐', tone: 'if' },
  'dual-only': { shape: '▲', tone: 'dual' },
  'ask-officer': { shape: '◆', tone: 'officer' },
  no: { shape: '■', tone: 'no' },
};

/** Does the finding stand in the way? Mirrors the service, which has the last word. */
export const inTheWay = (finding: Finding): boolean =>
  finding.weight !== 'advice' &&
  (finding.status === 'short' ||
    finding.status === 'error' ||
    (finding.status === 'unknown' && finding.conditions.length === 0));

export const advises = (finding: Finding): boolean =>
  finding.weight === 'advice' && (finding.status === 'short' || finding.status === 'unknown');
