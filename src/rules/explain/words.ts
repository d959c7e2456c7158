/**
 * The catalogue's words: every answer, status, weight, role and piece of evidence as people say it. The service and the
 * pages take their words from here and from the rules' own branches; nobody else makes sentences about a decision.
 *
 * A leaf on purpose: it imports nothing, so that the pages can be built with it. That no word is missing shows where they
 * are looked up by the engine's types (derivation.ts, catalogue.ts, decision.ts).
 */

/** The answer in a word or two. */
export const ANSWER_WORD = {
  yes: 'Yes',
  'yes-with-conditions': 'Yes, if',
  'dual-only': 'With an instructor',
  'ask-officer': 'Ask an officer',
  no: 'No',
};

/** The answer in a sentence; the engine's own. */
export const ANSWER_SAYS = {
  yes: 'Every rule that applies to this flight is met.',
  'yes-with-conditions': 'You may book it; settle the conditions before departure.',
  'dual-only':
    'Not on your own, but with an instructor as pilot in command the rest is met. Name an instructor who may give it.',
  'ask-officer': 'The law is met; a club rule is not. An officer may allow it, with a reason.',
  no: 'At least one rule is not met, or cannot be shown to be met.',
};

/** How a rule came out. */
export const STATUS_WORD = {
  met: 'met',
  short: 'not met',
  unknown: 'cannot tell',
  'not-applicable': 'does not apply',
  error: 'could not be judged',
};

/** Whose rule it is. */
export const WEIGHT_WORD = { law: 'law', club: 'club rule', advice: 'advice' };

/** What the weight of a rule means for a flight that does not meet it. */
export function weightSays({
  weight,
  overridable,
}: {
  weight: keyof typeof WEIGHT_WORD;
  overridable: boolean;
}): string {
  if (weight === 'law') return 'The law: nobody in the club may set it aside.';
  if (weight === 'advice') return 'Advice: it never stands in the way of a flight.';
  return overridable
    ? 'A club rule: an officer may set it aside, with a reason, where the club’s policy allows it.'
    : 'A club rule that not even an officer sets aside.';
}

/** Whom a rule binds. */
export const BINDS_WORD = {
  pilot: 'the pilot in command',
  member: 'the member who books',
  instructor: 'the instructor',
  aircraft: 'the aircraft',
  flight: 'the flight',
  club: 'the club',
};

/** How well a source is known. */
export const SOURCE_WORD = {
  seen: 'held against a public copy of the text',
  'from memory': 'from memory, not yet held against the text',
  'common practice, no source': 'common practice, without a source',
  'club paper': 'a paper of the club',
};

/** How firm a fact is. */
export const FIRMNESS_WORD = {
  recorded: 'on record',
  declared: 'as told by the member',
  planned: 'planned',
  projected: 'projected, not yet on record',
};

/** Who can do what cures a finding. */
export const ACTOR_WORD = {
  member: 'you',
  instructor: 'you and an instructor',
  examiner: 'you and an examiner',
  'medical-examiner': 'you and a medical examiner',
  'maintenance-coordinator': 'the maintenance coordinator',
  mechanic: 'a mechanic',
  officer: 'an officer',
  administrator: 'the administrator',
};

/** What a flight is for. */
export const PURPOSE_WORD = {
  solo: 'alone',
  passengers: 'with passengers',
  dual: 'with an instructor',
  checkout: 'a checkout',
  maintenance: 'a maintenance flight',
  'ferry-to-inspection': 'a ferry flight to the inspection',
};

/** Equipment that a club may ask to be checked out on. */
export const EQUIPMENT_GROUP_WORD = {
  'glass-panel': 'glass panel',
  autopilot: 'autopilot',
  'gps-navigator': 'GPS navigator',
};

/** What a club may ask to be checked out for; before the word 'checkout'. */
export const CHECKOUT_CONDITION_WORD = {
  night: 'night',
  mountain: 'mountain',
  'short-field': 'short-field',
  'high-crosswind': 'crosswind',
};

/** A number that is not in force. */
export const NO_VALUE = 'no value';

/** Yes or no. */
export const yesNo = (value: boolean): string => (value ? 'yes' : 'no');

/** '1 landing', '3 landings', '0 landings'. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** 'a', 'a and b', 'a, b and c'. */
export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`;
}

/** A number with its thousands apart: '10,000'. */
export const grouped = (value: number): string => value.toLocaleString('en-US');

/** 'Upper case first'. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
