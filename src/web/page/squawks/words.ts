import type { Answer } from '../api/types.js';
import type { Effect, State } from './types.js';

export const STATE_WORDS: Record<State, string> = {
  reported: 'Not looked at yet',
  grounding: 'Grounds the aircraft',
  deferred: 'Deferred',
  fixed: 'Fixed',
  'no-fault-found': 'No fault found',
  duplicate: 'Duplicate',
};
export const VERDICT_WORDS: Record<Effect['verdict'], string> = {
  no: 'Not flown',
  unknown: 'No yes: something is not known',
  conditions: 'Flown, if',
  none: 'Not affected',
};
/** A shape for each, so that nothing hangs on the colour. */
export const VERDICT_MARKS: Record<Effect['verdict'], string> = {
  no: '✕',
  unknown: '?',
  conditions: '!',
  none: '✓',
};
export const ANSWER_WORDS: Record<Answer, string> = {
  yes: 'yes',
  'yes-with-conditions': 'yes, if',
  'dual-only': 'with an instructor',
  'ask-officer': 'ask an officer',
  no: 'no',
};
export const EVENT_WORDS: Record<string, string> = {
  reported: 'reported it',
  edited: 'reworded it',
  grounded: 'grounded the aircraft',
  deferred: 'deferred it',
  'deferral-edited': 'recorded steps of the deferral',
  'deferral-withdrawn': 'withdrew the deferral',
  fixed: 'recorded the fix',
  'no-fault-found': 'recorded that no fault was found',
  duplicate: 'marked it as a duplicate',
  reopened: 'reopened it',
  'part-used': 'recorded a part',
  'photo-added': 'added a photo',
};
export const isOpen = (state: State): boolean => ['reported', 'grounding', 'deferred'].includes(state);
