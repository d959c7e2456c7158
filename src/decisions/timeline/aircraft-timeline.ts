/** One aircraft's timeline as it is told. */
import type { SignedIn } from '../../accounts/current-user.js';
import { notFollowedBeyond } from '../../rules/explain/sentences.js';
import {
  byAnswer,
  crewAt,
  toInstant,
  type AircraftFacts,
  type AnswerStep,
  type FactSheet,
  type Ruleset,
  type Span,
  type Timeline,
  type VerdictChange,
} from '../../rules/index.js';
import type { AircraftInDecisionDto } from '../decision.dto.js';
import { hiddenBehind } from '../privacy.js';
import { ruleNames } from './rule-names.js';
import { BOOKABLE, slotOf } from './slots.js';
import type { Join } from './timeline-request.dto.js';
import type { AircraftTimelineDto, AnswerStepDto, NamedRuleDto } from './timeline.dto.js';

/** What every aircraft's timeline of one question is told with. */
export interface Telling {
  viewer: SignedIn;
  ruleset: Ruleset;
  span: Span;
  join: Join;
  /** Slots that have gone by are none. */
  notBefore: number;
  durationSeconds: number;
}

/** The aircraft by its names. */
export function aircraftNames({ id, type }: AircraftFacts): AircraftInDecisionDto {
  const named = type.known ? type.value : null;
  return { id, registration: named?.registration ?? '?', makeModel: named?.makeModel ?? '?' };
}

/** The timeline of the sheet's aircraft as the viewer may read it. */
export function aircraftTimeline(
  { steps, cutAt }: Timeline,
  sheet: FactSheet,
  telling: Telling,
): AircraftTimelineDto {
  const nameOf = ruleNames(telling.ruleset);
  const tells = tellable(sheet, telling);
  const joined = telling.join === 'answer' ? byAnswer(steps) : steps;
  return {
    aircraft: aircraftNames(sheet.aircraft),
    steps: joined.map((step) => stepOf(step, nameOf, tells)),
    firstSlot: slotOf(steps, BOOKABLE, telling),
    firstDualSlot: slotOf(steps, ['dual-only'], telling),
    cutAt: cutAt === null ? null : toInstant(cutAt),
    horizonNote: cutAt === null ? null : horizonNote(toInstant(cutAt)),
  };
}

/** Beyond `cutAt` nothing is promised. */
export const horizonNote = notFollowedBeyond;

function stepOf(
  { from, to, answer, inTheWay, changed }: AnswerStep,
  nameOf: (id: string) => NamedRuleDto,
  tells: (change: VerdictChange) => boolean,
): AnswerStepDto {
  return {
    ...{ from: toInstant(from), to: toInstant(to), answer, inTheWay: inTheWay.map(nameOf) },
    changed: changed.filter(tells).map(({ rule, ...moved }) => ({ ...nameOf(rule), ...moved })),
  };
}

/**
 * Which changes the viewer is told. Of a rule on somebody else's record a decision tells whether it is met and no more
 * (privacy.ts); so here: that its conditions became others is not told.
 */
function tellable(sheet: FactSheet, { viewer, ruleset, span }: Telling): (change: VerdictChange) => boolean {
  const { crew } = crewAt(sheet, ruleset, span.from);
  const covered = new Set(
    ruleset.rules.filter((rule) => hiddenBehind(viewer, rule, { sheet, crew }) !== null).map(({ id }) => id),
  );
  return ({ rule, was, is, withInstructor }) => withInstructor || was !== is || !covered.has(rule);
}
