import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

defineProblems({
  code: 'status-too-long',
  status: 422,
  title: 'Too much for one page',
  detail: 'The aircraft has more records of one kind than a status holds. Read the lists of records instead.',
});

/** 422: more rows of one kind than a status holds. */
export const statusTooLong = (most: number): ProblemException =>
  new ProblemException('status-too-long', {
    detail: `The aircraft has more than ${most} records of one kind, too many for one page. Read the lists of records instead.`,
  });

/** 422: of a day to come. */
export const dayToCome = (on: string, today: string): ProblemException =>
  valueRefused(
    'on',
    `${on} is still to come; today is ${today}. A status is of today or of a past day; the forecast looks ahead.`,
  );
