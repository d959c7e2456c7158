/** Weighs the flight as asked and, where that is refused, the same flight with an instructor. */
import type { EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { answerAsAsked } from './combine.js';
import type { Crew } from './crew.js';
import type { Answer } from './finding.js';
import { judgeAll, type Judged, type Ruleset } from './judge.js';

/** Findings on the flight as asked and, where that is refused, on the same flight with an instructor aboard. */
export interface Weighed {
  crew: Crew;
  judged: Judged[];
  withInstructor: { sheet: FactSheet; crew: Crew; judged: Judged[] } | null;
  answer: Answer;
}

/** Judges the flight at a departure, and with an instructor when it is refused as asked. */
export function weigh(sheet: FactSheet, ruleset: Ruleset, departs: EpochSeconds): Weighed {
  const { crew, judged } = judgeAll(sheet, ruleset, departs);
  const asked = answerAsAsked(
    judged.map((one) => one.finding),
    crew,
  );
  if ((asked !== 'no' && asked !== 'ask-officer') || crew.instruction || !instructionIsAWay(sheet)) {
    return { crew, judged, withInstructor: null, answer: asked };
  }
  const dualSheet = withUnnamedInstructor(sheet);
  const dual = judgeAll(dualSheet, ruleset, departs);
  const withInstructor = { sheet: dualSheet, ...dual };
  return { crew, judged, withInstructor, answer: answerOf(judged, crew, withInstructor) };
}

/** The answer from the findings on both ways of flying. */
export function answerOf(
  judged: readonly Judged[],
  crew: Crew,
  withInstructor: Weighed['withInstructor'],
): Answer {
  const asked = answerAsAsked(
    judged.map((one) => one.finding),
    crew,
  );
  if (!withInstructor || (asked !== 'no' && asked !== 'ask-officer')) return asked;
  const dual = answerAsAsked(
    withInstructor.judged.map((one) => one.finding),
    withInstructor.crew,
  );
  return dual === 'dual-only' ? 'dual-only' : asked;
}

const instructionIsAWay = (sheet: FactSheet): boolean =>
  sheet.flight.purpose === 'solo' || sheet.flight.purpose === 'passengers';

/** The same flight with one more seat taken, by an instructor still to be named, who acts as pilot in command. */
function withUnnamedInstructor(sheet: FactSheet): FactSheet {
  const { flight } = sheet;
  return {
    ...sheet,
    flight: {
      ...flight,
      purpose: 'dual',
      instructorId: null,
      secondPilotId: null,
      actingPilotId: null,
      personsOnBoard: flight.personsOnBoard + 1,
    },
  };
}
