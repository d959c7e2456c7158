/**
 * Judges a booked flight again and says what the answer was read from. A rule is a function of what it asked for, so
 * while none of that changes, neither does the answer: a booking needs no new look for a fact that nobody asked for.
 */
import type { EpochSeconds } from '../calendar/instants.js';
import { personInRole, type FactKey, type Role } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import { answerAsAsked, answerWithDual, blocks, weighable, type Weighable } from './combine.js';
import type { Crew } from './crew.js';
import type { Answer, Finding } from './finding.js';
import { crewAt, judgeRule, SECOND_PILOT_IS_PASSENGER, timeAt, type Ruleset } from './judge.js';
import { runRule } from './run.js';
import { instructionIsAWay, withUnnamedInstructor } from './weigh.js';

/** The answer a booked flight has now. */
export interface Standing {
  answer: Answer;
  crew: Crew;
  /** What stands in the way of the flight as asked. */
  blocking: Finding[];
  /** What the answer was read from: 'person:ID:medicals', 'aircraft:ID:squawks', 'policy:club.…'; sorted. */
  reads: string[];
}

/** Judges the flight at its departure. What only asks how a booking is made is not asked of one that stands. */
export function stand(sheet: FactSheet, ruleset: Ruleset, departs: EpochSeconds): Standing {
  const reads = new Set<string>([`policy:${SECOND_PILOT_IS_PASSENGER}`]);
  const asked = judgeFor(sheet, ruleset, departs, reads);
  if (!instructionIsAWay(sheet, asked.answer)) return { ...asked, reads: [...reads].sort() };
  const dual = judgeFor(withUnnamedInstructor(sheet), ruleset, departs, reads);
  return { ...asked, answer: answerWithDual(asked.answer, dual.answer), reads: [...reads].sort() };
}

function judgeFor(
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
  reads: Set<string>,
): Omit<Standing, 'reads'> {
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  const note = (key: FactKey): void => {
    const name = factName(sheet, crew, key);
    if (name !== null) reads.add(name);
  };
  const verdicts: Weighable[] = [];
  const blocking: Finding[] = [];
  for (const rule of ruleset.rules) {
    if (rule.onlyWhenBooking) continue;
    const outcome = runRule(rule, sheet, ruleset.book, crew, time, note);
    for (const { id } of outcome.parameters) reads.add(`policy:${id}`);
    const verdict = weighable(rule, outcome);
    verdicts.push(verdict);
    if (blocks(verdict)) blocking.push(judgeRule(rule, sheet, ruleset, crew, departs, time).finding);
  }
  return { answer: answerAsAsked(verdicts, crew), crew, blocking };
}

/** Whose fact it is and which; null where nobody fills the role. */
function factName(sheet: FactSheet, crew: Crew, key: FactKey): string | null {
  const [role, subject] = key.split('.') as [Role | 'aircraft', string];
  if (role === 'aircraft') return `aircraft:${sheet.aircraft.id}:${subject}`;
  const id = personInRole(sheet, crew, role);
  return id === null ? null : `person:${id}:${subject}`;
}
