/** Words of the checkout pages, and what is left of one in a line. */
import type { Kind, Progress, State, Topic } from './types.js';

export const STATE: Record<State, string> = {
  'not-begun': 'Not begun',
  'in-progress': 'Under way',
  ready: 'Ready to sign',
  standing: 'Stands',
  ending: 'Ends soon',
  ended: 'Ended',
};

export const TOPIC: Record<Topic, string> = {
  limits: 'Limits',
  systems: 'Systems',
  'emergency-memory': 'Emergencies, by heart',
};

export const KIND: Record<Exclude<Kind, 'differences'>, string> = {
  model: 'A model',
  equipment: 'Equipment',
  condition: 'Where and how it is flown',
  'annual-check': 'The regular club check',
};

export const GROUPS = [
  ['glass-panel', 'Glass panel'],
  ['autopilot', 'Autopilot'],
  ['gps-navigator', 'GPS navigator'],
] as const;

export const CONDITIONS = [
  ['night', 'Night'],
  ['mountain', 'Mountains'],
  ['short-field', 'Grass and short fields'],
  ['high-crosswind', 'High crosswind'],
] as const;

const some = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** Pieces of what is left: '3 items', 'the quiz', 'first: Night'. Empty: nothing but the sign-off. */
export function left({ itemsLeft, quiz, prerequisites }: Progress): string[] {
  return [
    ...(itemsLeft > 0 ? [some(itemsLeft, 'item')] : []),
    ...(quiz && quiz.state !== 'passed' ? ['the quiz'] : []),
    ...prerequisites.filter(({ standing }) => !standing).map(({ title }) => `first: ${title}`),
  ];
}

/** Does it stand today? */
export const stands = ({ state }: Progress): boolean => state === 'standing' || state === 'ending';

/** A key of its own on a page: differences have no requirement where the club laid none down. */
export const keyOf = ({ requirementId, difference, kind, subject }: Progress): string =>
  [requirementId, difference?.id, kind, subject].filter(Boolean).join(' ');
