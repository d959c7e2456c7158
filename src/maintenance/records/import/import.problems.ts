import { defineProblems } from '../../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../../platform/problems/problem-exception.js';

defineProblems(
  {
    code: 'import-unreadable',
    status: 422,
    title: 'The file cannot be read',
    detail: 'Send a CSV file with one line of headings. The problem names the line at fault.',
  },
  {
    code: 'import-rows-refused',
    status: 422,
    title: 'Some rows cannot be taken over',
    detail:
      'Nothing was written: an import is taken over whole or not at all. Mend the rows named, and look at a new preview.',
  },
);

/** 422: the file as a whole. */
export const unreadable = (detail: string, line?: number, field = 'csv'): ProblemException =>
  new ProblemException('import-unreadable', {
    detail,
    errors: [{ field, pointer: `/${field}`, in: 'body', message: detail, ...(line ? { line } : {}) }],
  });

/** Faults told at once. */
const MOST_TOLD = 50;

/** 422: with each row that stands in the way. */
export function rowsRefused(rows: readonly { line: number; because: string }[]): ProblemException {
  const count = rows.length === 1 ? 'One row cannot' : `${rows.length} rows cannot`;
  return new ProblemException('import-rows-refused', {
    detail: `${count} be taken over, so nothing was written. Mend the rows named, and look at a new preview.`,
    errors: rows.slice(0, MOST_TOLD).map(({ line, because }) => ({
      ...{ field: 'csv', pointer: '/csv', in: 'body' as const, line, message: because },
    })),
  });
}
