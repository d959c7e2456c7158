import type { Answer, Finding } from '../api/types.js';

/** Each answer has a word, a shape and a tone, so that none rests on colour. */
export const ANSWERS: Record<Answer, { word: string; shape: string; tone: string }> = {
  yes: { word: 'Yes', shape: '●', tone: 'yes' },
  'yes-with-conditions': { word: 'Yes, if', shape: '◐', tone: 'if' },
  'dual-only': { word: 'With an instructor', shape: '▲', tone: 'dual' },
  'ask-officer': { word: 'Ask an officer', shape: '◆', tone: 'officer' },
  no: { word: 'No', shape: '■', tone: 'no' },
};

/** Does the finding stand in the way? Mirrors the service, which has the last word. */
export const inTheWay = (finding: Finding): boolean =>
  finding.weight !== 'advice' &&
  (finding.status === 'short' ||
    finding.status === 'error' ||
    (finding.status === 'unknown' && finding.conditions.length === 0));

export const advises = (finding: Finding): boolean =>
  finding.weight === 'advice' && (finding.status === 'short' || finding.status === 'unknown');

export const WEIGHTS: Record<Finding['weight'], string> = { law: 'law', club: 'club rule', advice: 'advice' };

/** A condition under the heading "Before departure", as a sentence. */
export function conditionSentence(condition: string): string {
  const bare = condition.replace(/^before departure,\s*/i, '');
  const sentence = bare.charAt(0).toUpperCase() + bare.slice(1);
  return /[.!?]$/.test(sentence) ? sentence : `${sentence}.`;
}
