/** What hours between two readings can be. */
export const GAP_WORDS = [
  ['not-known', 'I do not know'],
  ['flight-not-entered', 'a flight nobody put in'],
  ['engine-run', 'the engine run on the ground'],
  ['misread-before', 'the last reading was wrong'],
] as const;

const STATES: Record<string, string> = {
  reported: 'reported, not looked at yet',
  grounding: 'grounds the aircraft',
  deferred: 'deferred',
};
export const stateWord = (state: string): string => STATES[state] ?? state;

const ROLES: Record<string, string> = {
  'pilot-in-command': 'pilot in command',
  'second-in-command': 'second in command',
  'dual-received': 'dual received',
  instructor: 'instructor',
  solo: 'solo',
};
export const roleWord = (role: string): string => ROLES[role] ?? role;
