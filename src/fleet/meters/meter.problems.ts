import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { MeterKind } from '../../rules/index.js';
import type { MeterReading } from './meter-reading.entity.js';

defineProblems(
  {
    code: 'meter-jump',
    status: 422,
    title: 'More hours than have passed',
    detail: 'Check the figure; if it is right, send it again with confirmJump set to true.',
  },
  {
    code: 'meter-replacement',
    status: 422,
    title: 'Replacement not complete',
    detail:
      "Send source 'replacement' together with replacedMeterH, what the old meter showed when it was taken out.",
  },
  {
    code: 'meter-reading-void',
    status: 409,
    title: 'Not taken back',
    detail: 'The reading was taken back before, or later readings go on from it. Read the readings again.',
  },
);

const NAMES: Record<MeterKind, string> = {
  hobbs: 'Hobbs meter',
  tachometer: 'tachometer',
  airframe: 'airframe time meter',
};
const hours = (tenths: number): string => `${(tenths / 10).toFixed(1)} h`;
const facts = (reading: MeterReading) => ({
  readingId: reading.id,
  shownH: reading.shownTenths / 10,
  totalH: reading.totalTenths / 10,
  readAt: reading.readAt,
});

/** 422: the meter has shown more before. */
export const belowLast = (last: MeterReading, shownTenths: number, field = 'shownH'): ProblemException =>
  new ProblemException('meter-below-last', {
    status: 422,
    field,
    detail:
      `The ${NAMES[last.kind]} showed ${hours(last.shownTenths)} at ${last.readAt}; ${hours(shownTenths)} is less. Check the ` +
      "figure and the time. If the meter was replaced, record the new one's first reading with source 'replacement' and " +
      'replacedMeterH.',
    extensions: { last: facts(last) },
  });

/** 422: the meter has shown less later. */
export const aboveNext = (next: MeterReading, shownTenths: number): ProblemException =>
  new ProblemException('meter-above-next', {
    status: 422,
    field: 'shownH',
    detail:
      `The ${NAMES[next.kind]} showed ${hours(next.shownTenths)} later, at ${next.readAt}; ${hours(shownTenths)} before that ` +
      'is more. Check the figure and the time of this reading.',
    extensions: { next: facts(next) },
  });

/** 422: the hours run faster than the clock. */
export const jump = (last: MeterReading, addedTenths: number): ProblemException =>
  new ProblemException('meter-jump', {
    field: 'shownH',
    detail:
      `That is ${hours(addedTenths)} more than at ${last.readAt}, which is more time than has passed. Check the figure and the ` +
      'time; if both are right, send it again with confirmJump set to true. Readings are never edited.',
    extensions: { last: facts(last) },
  });

/** 422: a replacement without the old meter's last figure, or that figure without a replacement. */
export const replacementIncomplete = (): ProblemException =>
  new ProblemException('meter-replacement', {
    field: 'replacedMeterH',
    detail:
      "Send source 'replacement' together with replacedMeterH, what the old meter showed when it was taken out, or neither.",
  });

/** 422: the new meter has readings already. */
export const replacementTooLate = (next: MeterReading): ProblemException =>
  new ProblemException('meter-replacement', {
    field: 'readAt',
    detail: `There is a later reading of this meter, at ${next.readAt}. A replacement is recorded before the readings of the new meter.`,
    extensions: { next: facts(next) },
  });

/** 422: read at a time to come. */
export const readInFuture = (readAt: string, now: string): ProblemException =>
  new ProblemException('value-refused', {
    field: 'readAt',
    detail: `${readAt} is still to come; it is ${now} now. Give the time at which the meter was read.`,
  });

/** 409: it does not count any more. */
export const takenBackAlready = (): ProblemException =>
  new ProblemException('meter-reading-void', {
    detail: 'The reading was taken back before and does not count. Record the right one.',
  });

/** 409: the running total of later readings rests on this replacement. */
export const replacementInUse = (next: MeterReading): ProblemException =>
  new ProblemException('meter-reading-void', {
    detail: `Later readings of the new meter go on from this replacement, the next at ${next.readAt}. Take those back first, newest first.`,
    extensions: { next: facts(next) },
  });
