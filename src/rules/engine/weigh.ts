/** Weighs the flight as asked and, where that is refused, the same flight with an instructor. */
import type { EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { answerAsAsked, answerWithDual } from './combine.js';
import type { Crew } from './crew.js';
import type { Answer, Finding } from './finding.js';
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
  const asked = answerAsAsked(judged.map(findingIn), crew);
  if (!instructionIsAWay(sheet, asked)) return { crew, judged, withInstructor: null, answer: asked };
  const dualSheet = withUnnamedInstructor(sheet);
  const dual = judgeAll(dualSheet, ruleset, departs);
  const answer = answerWithDual(asked, answerAsAsked(dual.judged.map(findingIn), dual.crew));
  return { crew, judged, withInstructor: { sheet: dualSheet, ...dual }, answer };
}

const findingIn = ({ finding }: Judged): Finding => finding;

/** Is the same flight with an instructor worth trying: it is refused as asked, and not instruction already? */
export function instructionIsAWay(sheet: FactSheet, asked: Answer): boolean {
  const { purpose } = sheet.flight;
  return (asked === 'no' || asked === 'ask-officer') && (purpose === 'solo' || purpose === 'passengers');
}

/** The same flight with one more seat taken, by an instructor still to be named, who acts as pilot in command. */
export function withUnnamedInstructor(sheet: FactSheet): FactSheet {
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
