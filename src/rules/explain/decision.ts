/** Why the whole answer came out as it did: who is pilot in command, what stands in the way, until when it holds. */
import { toSeconds, type Instant } from '../calendar/instants.js';
import { answerAsAsked, pullOf } from '../engine/combine.js';
import type { Answer, Decision, Finding } from '../engine/finding.js';
import { weigh } from '../engine/weigh.js';
import { commandSays, horizonSays, withInstructor } from './sentences.js';
import { explainRequest } from './request-read.js';
import type { DerivedFrom } from './derivation.js';
import { ANSWER_WORD, PURPOSE_WORD } from './words.js';

/** Who is who on the flight. */
export interface CrewExplained {
  picId: string | null;
  pic: string | null;
  says: string;
  passengers: number;
}

/** The same flight with an instructor, tried where it is refused as asked. */
export interface WithInstructor {
  answer: Answer;
  says: string;
  /** Titles of the rules that stand in the way then too. */
  inTheWay: string[];
}

/** The answer, taken apart. */
export interface AnswerExplained {
  answer: Answer;
  answerWord: string;
  says: string;
  flight: { departs: Instant; arrives: Instant; purposeWord: string; says: string[] };
  crew: CrewExplained;
  /** Rules that stand in the way, in the order of the findings. */
  inTheWay: string[];
  conditions: string[];
  /** Null where it was not tried: the flight is allowed as asked, or instruction is asked for. */
  withInstructor: WithInstructor | null;
  horizon: { says: string } & Decision['horizon'];
}

const TOLD = ['flightRules', 'personsOnBoard', 'instructorId', 'secondPilotId', 'route', 'plannedTenths'];

/** Explains the answer of a decision as its reader may see it; `from` are the facts and rules behind it. */
export function explainAnswer(decision: Decision, from: DerivedFrom): AnswerExplained {
  const { sheet } = from;
  const { crew, horizon } = decision;
  const pic = crew.picId === null ? null : (sheet.people[crew.picId]?.name ?? null);
  return {
    answer: decision.answer,
    answerWord: ANSWER_WORD[decision.answer],
    says: decision.says,
    flight: {
      departs: decision.asOf,
      arrives: sheet.flight.arrives,
      purposeWord: PURPOSE_WORD[sheet.flight.purpose],
      says: explainRequest(sheet, crew, { flight: new Set(TOLD), crew: new Set(['passengers']) }),
    },
    crew: { picId: crew.picId, pic, says: commandSays(pic, crew.picBecause), passengers: crew.passengers },
    inTheWay: decision.findings.filter((one) => pullOf(one, crew) !== 'none').map(({ rule }) => rule),
    conditions: decision.conditions,
    withInstructor: triedWithInstructor(from),
    horizon: { ...horizon, says: horizonSays(horizon, titlesOf(decision.findings, horizon.because)) },
  };
}

const titlesOf = (findings: readonly Finding[], rules: readonly string[]): string[] =>
  findings.filter(({ rule }) => rules.includes(rule)).map(({ title }) => title);

function triedWithInstructor({ sheet, ruleset, asOf }: DerivedFrom): WithInstructor | null {
  const tried = weigh(sheet, ruleset, toSeconds(asOf)).withInstructor;
  if (!tried) return null;
  const findings = tried.judged.map(({ finding }) => finding);
  const answer = answerAsAsked(findings, tried.crew);
  return {
    answer,
    says: withInstructor(answer),
    inTheWay: findings.filter((one) => pullOf(one, tried.crew) !== 'none').map(({ title }) => title),
  };
}
