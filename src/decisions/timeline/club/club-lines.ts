/** What is written on the lines of a whole-club timeline. */
import { byAnswer, CAUTION, toInstant, type AnswerStep, type PairTimeline } from '../../../rules/index.js';
import { aircraftNames } from '../aircraft-timeline.js';
import type { Join } from '../timeline-request.dto.js';
import {
  CLUB_TIMELINE_SCHEMA,
  type ClubTimelineHeaderDto,
  type PairLineDto,
  type StepOnLineDto,
} from './club-lines.dto.js';
import type { GatheredPairs } from './gather-pairs.js';

/** The first line. */
export function headerLine(
  { sheets, members, ruleset, span, zone }: GatheredPairs,
  asked: { durationMinutes: number; join: Join; knownAt: string },
): ClubTimelineHeaderDto {
  const byRegistration = sheets.map(({ aircraft }) => aircraftNames(aircraft));
  return {
    schema: CLUB_TIMELINE_SCHEMA,
    ...{ from: toInstant(span.from), to: toInstant(span.to), zone, ...asked },
    members: members.map(({ id, name }) => ({ id, name })),
    aircraft: byRegistration,
    rules: ruleset.rules.map(({ id, title }) => ({ rule: id, title })),
    pairs: members.length * sheets.length,
    caution: CAUTION,
  };
}

/** The line of a pair. */
export function pairLine({ memberId, aircraftId, steps, cutAt }: PairTimeline, join: Join): PairLineDto {
  const told = join === 'answer' ? byAnswer(steps) : steps;
  return {
    ...{ memberId, aircraftId, steps: told.map(stepOnLine) },
    ...(cutAt === null ? {} : { cutAt: toInstant(cutAt) }),
  };
}

function stepOnLine({ from, to, answer, inTheWay, changed }: AnswerStep): StepOnLineDto {
  return {
    ...{ from: toInstant(from), to: toInstant(to), answer, inTheWay },
    changed: changed.map(({ withInstructor, ...moved }) =>
      withInstructor ? { ...moved, withInstructor } : moved,
    ),
  };
}
