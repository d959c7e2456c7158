/** What is said of names and arguments that do not fit. */
import { readClock } from '../calendar/clocks.js';
import { nearest } from './fault.js';
import { SCHEMA, type Entry } from './schema/index.js';
import { literalOf, type Node } from './syntax.js';

/** Days a look-back may go; the sheet's log reaches further. */
export const MOST_DAYS = 730;
const MOST_HOURS = 24 * 400;

/** What a method takes, in words. */
export const ARGUMENT_WORDS = {
  days: `a number of days from 0 to ${MOST_DAYS}`,
  hours: `a number of hours from 0 to ${MOST_HOURS}`,
  clock: 'a clock reading from "00:00" to "23:59"',
  Date: 'a date',
} as const;

/** Whether an argument is written out and within bounds; the type check sees to dates. */
export function argumentFits({ takes }: Entry, argument: Node): boolean {
  const { kind } = takes!;
  if (kind === 'Date') return true;
  const value = literalOf(argument);
  if (kind === 'clock') return typeof value === 'string' && readClock(value) !== null;
  const most = kind === 'days' ? MOST_DAYS : MOST_HOURS;
  return Number.isInteger(value) && (value as number) >= 0 && (value as number) <= most;
}

const EXAMPLES = { days: '90', hours: '48', clock: '"18:00"', Date: 'pilot.lastFlightOn' } as const;
/** An argument as it may be written. */
export const exampleOf = (entry: Entry): string => EXAMPLES[entry.takes!.kind];
const entriesOf = (owner: string): readonly Entry[] => SCHEMA.find((of) => of.owner === owner)!.entries;
/** The first value of an owner. */
export const entryExample = (owner: string): string => entriesOf(owner)[0]!.name;

/** What is said of a value an owner does not have. */
export function unknownValue(owner: string, name: string): string {
  const names = entriesOf(owner).map((entry) => entry.name);
  const near = nearest(name, names);
  if (near) return `'${owner}' has no '${name}'. Did you mean '${owner}.${near}'?`;
  return `'${owner}' has no '${name}'. It has ${names.join(', ')}.`;
}

/** The name most like a misspelt one, or all there are. */
export function didYouMean(name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  return near ? ` Did you mean '${near}'?` : ` There are ${known.join(', ')}.`;
}
