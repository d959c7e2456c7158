import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';

defineProblems(
  {
    code: 'preview-stale',
    status: 409,
    title: 'Not what was previewed',
    detail: 'Something changed since the preview. Look at a new preview, then send the change with it.',
  },
  {
    code: 'equipment-change-kept',
    status: 409,
    title: 'Not taken back any more',
    detail: 'The aircraft has flown, or other records rest on the change. Record a new change instead.',
  },
);

/** 409: what the preview showed is not what would happen now. */
export const previewStale = (): ProblemException => new ProblemException('preview-stale');

/** 409: something rests on the change. */
export const changeKept = (why: string): ProblemException =>
  new ProblemException('equipment-change-kept', { detail: `${why} Record a new change instead.` });
