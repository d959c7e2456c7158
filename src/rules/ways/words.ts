/** Every sentence the search for ways says of its own; what a rule offers is said in the rule's words. */
import type { Instant } from '../calendar/instants.js';
import { dateAndClock, dateOf } from '../packs/when.js';

export const WAYS_CAUTION =
  'Each way was judged on the facts as they would be, with the rules and prices of today. It stands only if every step ' +
  'turns out as written and nothing else changes: ask again when it is done. The pilot in command, the certificated ' +
  'mechanic and local rules decide; Bellcrank is an aid.';

export const TAKE_INSTRUCTOR = 'Take an instructor along, who acts as pilot in command.';
export const takeInstructorNamed = (name: string): string =>
  `Take ${name} along as instructor and pilot in command.`;
export const nameInstructor = (name: string): string => `Name ${name} as the instructor.`;
export const takeOtherAircraft = (registration: string, makeModel: string): string =>
  `Take ${registration} (${makeModel}) instead.`;
export const leaveAtAnotherTime = (departs: number, arrives: number, zone: string): string =>
  `Leave at ${dateAndClock(departs, zone)} and be back by ${dateAndClock(arrives, zone)}.`;
export const verifyPapers = (papers: readonly string[]): string =>
  `Show the papers to a safety officer, who verifies them: ${papers.join(', ')}.`;
export const askOfficer = (titles: readonly string[]): string =>
  `Ask an officer to set aside, with a reason: ${titles.join('; ')}.`;

/** What still hangs on somebody although every rule has been seen to. */
export const RESTS = {
  officer: 'An officer must agree; until then the answer stays "ask an officer".',
  instructor:
    'An instructor who may teach in it must be found and named; the rules that bind the pilot in command are judged then.',
} as const;

/** Who flies, in what light, in one go. */
export function sortieSays(of: {
  dual: boolean;
  safetyPilot: boolean;
  night: boolean;
  tasks: number;
}): string {
  const crew = of.dual ? 'with an instructor' : of.safetyPilot ? 'with a safety pilot' : 'on your own';
  const light = of.night ? ' at night' : '';
  return of.tasks > 1
    ? `One flight ${crew}${light} for ${of.tasks} of the steps.`
    : `A flight ${crew}${light}.`;
}

/** Why there is no way, in the order in which it was found out. */
export const NONE = {
  noWay: 'There is no way to yes before the flight.',
  bound: 'The search stopped at its limit before it found a way; there may be one.',
  instructorNotNamed: 'The flight waits for an instructor: name one who may give the instruction.',
} as const;

/** Appended to a finding's own sentence. */
export const WHY = {
  nothingCures: 'Nothing that can be done is known to put it right.',
  together: 'It can be put right, but not together with the rest before the flight.',
  tooLate: (title: string, done: number, zone: string): string =>
    `"${bare(title)}" could be done by ${dateAndClock(done, zone)} at the earliest, after the flight begins.`,
  held: (title: string, by: readonly string[]): string =>
    `"${bare(title)}" cannot be done as long as this stands in the way: ${by.join('; ')}.`,
} as const;

const bare = (title: string): string => title.replace(/\.$/, '');

export const leaveLaterSays = (departs: Instant, zone: string): string =>
  `For the same flight on ${dateOf(departs, zone)} there is a way.`;
