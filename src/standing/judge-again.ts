/** One booked flight judged again: pure, from its sheet to the row that is kept. */
import { recordsBehind } from '../decisions/privacy.js';
import { ProblemException } from '../platform/problems/index.js';
import {
  rulesetFor,
  sha256,
  stand,
  startOfDay,
  toInstant,
  toSeconds,
  versionsOf,
  canonicalJson,
  writtenLawOf,
  type Answer,
  type FactSheet,
  type Jurisdiction,
  type Policy,
} from '../rules/index.js';
import type { Because, Found } from './gather-standing.js';

/** The answer a booked flight stands at. */
export interface StandingRow {
  bookingId: string;
  answer: Answer;
  because: Because[];
  /** What it was read from, as `fact_changes` names it. */
  reads: string[];
  /** With no fact changed, the answer may be another one from then on. */
  holdsUntil: string | null;
}

/** Policy read while facts are gathered, whatever the rules ask. */
const UNVERIFIED_COUNT = 'club.papers.unverified-count';
const READ_WHILE_GATHERING = [`policy:${UNVERIFIED_COUNT}`, 'club:rules', 'club:zone'];

/** Judges one booking on what was found of it. A flight that cannot be read any more stands at no, and says why. */
export function judgeAgain(bookingId: string, found: Found): StandingRow {
  const always = [...READ_WHILE_GATHERING, `booking:${bookingId}`];
  if (found instanceof ProblemException) {
    const says = found.detail ?? 'The flight as it was booked cannot be read any more.';
    const because = [{ rule: 'flight', title: 'The flight as booked', says, people: [] }];
    return {
      bookingId,
      answer: 'no',
      because,
      reads: [...always, 'club:airfields'].sort(),
      holdsUntil: null,
    };
  }
  const { sheet, policy } = found;
  const { flight, aircraft } = sheet;
  const standing = stand(sheet, rulesetFor(sheet.jurisdiction, policy), toSeconds(flight.departs));
  const places = flight.route.map(({ id }) => `airfield:${id}`);
  return {
    bookingId,
    answer: standing.answer,
    because: standing.blocking.map(({ rule, title, says, reads }) => ({
      ...{ rule, title, says },
      people: recordsBehind({ reads }, { sheet, crew: standing.crew }),
    })),
    reads: [
      ...new Set([
        ...standing.reads,
        ...places,
        ...always,
        `aircraft:${aircraft.id}:home`,
        ...alsoReads(standing.reads),
      ]),
    ].sort(),
    holdsUntil: holdsUntil(sheet, policy, standing.reads),
  };
}

/** What a fact is put together from besides what bears its name. */
function alsoReads(reads: readonly string[]): string[] {
  // A differences sign-off says which equipment was shown in the words of the change; which like models one of a model
  // counts for, the requirement says.
  return reads.some((name) => name.endsWith(':checkouts')) ? ['club:differences', 'club:checkouts'] : [];
}

/**
 * Facts are gathered as known now: other bookings drop out of them when they are over, whether or not their flight has
 * been put in, and whether unverified papers count is policy of the day. The first such moment before the departure is when
 * to look again.
 */
function holdsUntil(
  { flight, aircraft, people, knownAt, zone }: FactSheet,
  policy: Policy,
  reads: readonly string[],
): string | null {
  const reserved = reads.includes(`aircraft:${aircraft.id}:reservations`) ? aircraft.reservations : null;
  const promised = Object.values(people)
    .filter(({ id }) => reads.includes(`person:${id}:commitments`))
    .map(({ commitments }) => commitments);
  const ends = [reserved, ...promised].flatMap((fact) =>
    fact?.known ? fact.value.flatMap(({ to }) => (to === null ? [] : [toSeconds(to)])) : [],
  );
  const turns = policy.values
    .filter(({ id }) => id === UNVERIFIED_COUNT)
    .map(({ from }) => startOfDay(from, zone));
  const [first] = [...ends, ...turns]
    .filter((moment) => moment > toSeconds(knownAt) && moment < toSeconds(flight.departs))
    .sort((a, b) => a - b);
  return first === undefined ? null : toInstant(first);
}

const laws = new Map<Jurisdiction, string>();

/** The law that answers are judged by: its numbers and the versions of its rules. A release that changes either changes it. */
export function lawDigest(jurisdiction: Jurisdiction): string {
  let digest = laws.get(jurisdiction);
  if (digest === undefined) {
    const ruleset = rulesetFor(jurisdiction, { values: [] });
    const body = { numbers: writtenLawOf(ruleset).digest, rules: versionsOf(ruleset) };
    laws.set(jurisdiction, (digest = sha256(canonicalJson(body))));
  }
  return digest;
}
