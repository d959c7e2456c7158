/**
 * Sentences about a decision that no rule's branch says: what the engine adds, what is told instead of somebody else's
 * record, until when an answer stands. Dates and instants in them are ISO 8601; whoever shows them writes them for the reader.
 *
 * A leaf like words.ts, for the service and the pages alike.
 */
import { ANSWER_WORD, listed } from './words.js';

type Answer = keyof typeof ANSWER_WORD;

/** A rule whose bodies all lie outside the day of the flight. */
export const NOT_IN_FORCE = 'This rule is not in force on the day of the flight.';
/** A needed fact is not on record. */
export const cannotTell = (because: string): string => `Cannot tell: ${because}.`;
/** A defect: the rule threw. */
export const notJudged = (reason: string): string => `This rule could not be judged (${reason}).`;

/** Another person whose record a finding rests on and the reader may not read. */
export interface Hidden {
  name: string;
  /** It rests on the reader's own record as well. */
  andOwn: boolean;
}

/** What is told of a finding on somebody else's record: whether the rule is met, and no more. */
export const COVERED = {
  met: ({ name, andOwn }: Hidden) =>
    andOwn ? `You and ${name} meet this rule.` : `${name} meets this rule.`,
  short: ({ name, andOwn }: Hidden) =>
    `${andOwn ? `You or ${name} do` : `${name} does`} not meet this rule. Ask them, or an officer.`,
  unknown: ({ name, andOwn }: Hidden) =>
    `It cannot be told whether ${andOwn ? `you and ${name} meet` : `${name} meets`} this rule. Ask them, or an officer.`,
  'not-applicable': (_hidden: Hidden) => 'This rule does not apply.',
  error: ({ name, andOwn }: Hidden) =>
    `This rule could not be judged for ${andOwn ? `you and ${name}` : name}. Ask an officer.`,
};

/** The condition that stands for one on somebody else's record. */
export const coveredCondition = ({ name }: Hidden): string =>
  `${name} settles a condition on their own record; ask them.`;

/** Why the facts behind a covered finding are not shown. */
export const withheld = ({ name }: Hidden): string =>
  `What was read is on the record of ${name}, and is shown to them, to instructors and to officers.`;

/** A list that was read and is empty. */
export const NONE_ON_RECORD = 'None on record.';
/** A record that was looked at, and none of its fields told in the end. */
export const NOTHING_OF_IT = 'Looked at; nothing of it decided.';

/** Clocks of a field in another zone than the club's. */
export const ITS_OWN_TIME = 'by its own clock';
/** Midnight sun or polar night. */
export const NO_SUNRISE_OR_SUNSET = 'the sun neither rises nor sets';

/** A rule that looked at no fact. */
export const ONLY_THE_FLIGHT = 'Nothing but the flight as asked.';

/** Until when an answer stands, and what it becomes; `titles` are those of the rules that change it. */
export function horizonSays(
  { until, becomes, searchedTo }: { until: string | null; becomes: Answer | null; searchedTo: string },
  titles: readonly string[],
): string {
  if (until === null || becomes === null)
    return `Time alone does not change this answer before ${searchedTo}.`;
  const by = titles.map((title) => `“${title}”`);
  const rules = by.length === 0 ? '' : ` by ${by.length === 1 ? 'the rule' : 'the rules'} ${listed(by)}`;
  return `Holds for a departure before ${until}; then “${ANSWER_WORD[becomes].toLowerCase()}”${rules}.`;
}

/** From which departure a verdict changes. */
export const changesFrom = (at: string): string => `Changes for a departure from ${at}.`;
/** The search for a change stopped there without finding one. */
export const mayChangeFrom = (at: string): string =>
  `Stays as it is for departures before ${at}; after that it may change.`;
/** A timeline on which some rule could not be followed to the end: beyond `cutAt` nothing is promised. */
export const notFollowedBeyond = (cutAt: string): string =>
  `Not every rule could be followed beyond ${cutAt}; from there on it counts as one that cannot be told.`;
/** Time alone never moves the verdict. */
export const NEVER_CHANGES = 'Time alone does not change it.';

/** The rule has been rewritten since the decision was given, so its path can no longer be walked again. */
export const RULE_SINCE_CHANGED =
  'The rule has changed since this decision was given; what is shown is what was kept with the decision.';

/** Who is pilot in command, and why. */
export const commandSays = (name: string | null, because: string): string =>
  name === null ? `Nobody is pilot in command yet: ${because}.` : `${name} is pilot in command: ${because}.`;

/** The answer of a flight as asked next to the same flight with an instructor. */
export const withInstructor = (answer: Answer): string =>
  `The same flight with an instructor: “${ANSWER_WORD[answer].toLowerCase()}”.`;

/** Ways to yes: the search met a limit, with ways found before it. */
export const FURTHER_WAYS = 'The search stopped at its limit; there may be further ways.';

/** A way to yes that waits for nothing. */
export const DONE_AT_ONCE = 'Can be done at once.';

/** Beside the days until which papers hold. */
export const PAPERS_HOLD_CAUTION =
  'As far as the dates go. A known medical deficiency, a suspension, and papers that no officer has verified stand over every date; the pilot in command decides.';
