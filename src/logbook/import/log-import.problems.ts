import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { BadRow } from './read-log.js';
import type { FileRefused } from './table.js';

/** Largest file read, in bytes. */
export const LOG_FILE_LIMIT_BYTES = 12 * 1024 * 1024;

defineProblems(
  {
    code: 'log-file-missing',
    status: 400,
    title: 'No file',
    detail:
      "Send one file as multipart/form-data, in a part with the name 'file', with the text fields 'choices' and 'preview' and nothing else.",
  },
  {
    code: 'log-file-unreadable',
    status: 422,
    title: 'The file cannot be read',
    detail: 'Send a CSV file with one line of headings and a row for each flight.',
  },
  {
    code: 'log-import-not-ready',
    status: 422,
    title: 'The file cannot be taken over as it is',
    detail: 'Nothing was written: an import is taken over whole or not at all. Look at a new preview.',
  },
  {
    code: 'log-preview-stale',
    status: 409,
    title: 'The import would do something else by now',
    detail:
      'The log, the club’s aircraft or the choices are not what the preview was made with. Look at a new one.',
  },
  {
    code: 'log-import-taken-back',
    status: 409,
    title: 'Taken back already',
    detail: 'Its entries no longer count. To have them again, import the file again.',
  },
  {
    code: 'log-import-in-use',
    status: 409,
    title: 'Practice rests on the import',
    detail: 'Practice records name flights of it. Correct those first.',
  },
);

export const fileMissing = (): ProblemException =>
  new ProblemException('log-file-missing', { field: 'file' });

export const fileTooLarge = (): ProblemException =>
  new ProblemException('body-too-large', {
    field: 'file',
    detail: `A file may hold at most ${LOG_FILE_LIMIT_BYTES / 1024 / 1024} MB. Split it.`,
    extensions: { limitBytes: LOG_FILE_LIMIT_BYTES },
  });

/** 422: the file as a whole, or a choice that does not fit it. */
export function fileUnreadable({ refused, line, choice }: FileRefused): ProblemException {
  const field = choice === undefined ? 'file' : `choices.${choice}`;
  return new ProblemException('log-file-unreadable', {
    detail: refused,
    errors: [
      {
        ...{ field, pointer: `/${field.replace('.', '/')}`, in: 'body', message: refused },
        ...(line === undefined ? {} : { line }),
      },
    ],
  });
}

export const fileTooSlow = (): ProblemException =>
  fileUnreadable({ refused: 'Reading it took too long. Split it.' });

/** Faults told at once. */
const MOST_TOLD = 50;

/** 422: what is still open, or each row that stands in the way. */
export function notReady(why: { questions: readonly string[]; bad: readonly BadRow[] }): ProblemException {
  const at = { field: 'file', pointer: '/file', in: 'body' as const };
  if (why.questions.length > 0)
    return new ProblemException('log-import-not-ready', {
      detail: `Nothing was written. ${why.questions[0]}`,
      errors: why.questions.map((message) => ({ ...at, field: 'choices', pointer: '/choices', message })),
    });
  if (why.bad.length === 0)
    return new ProblemException('log-import-not-ready', {
      detail: 'Nothing was written: no row of the file is a flight that the log does not hold.',
      errors: [{ ...at, message: 'No row is left to be written.' }],
    });
  const count = why.bad.length === 1 ? 'One row cannot' : `${why.bad.length} rows cannot`;
  return new ProblemException('log-import-not-ready', {
    detail: `${count} be read, so nothing was written. Mend them, or choose to leave them out.`,
    errors: why.bad
      .slice(0, MOST_TOLD)
      .map(({ line, faults }) => ({ ...at, line, message: faultsSay(faults) })),
  });
}

/** The faults of a row as one text. */
export const faultsSay = (faults: BadRow['faults']): string =>
  faults
    .map(({ column, cell, because }) => (column === null ? because : `${column}: “${cell}” ${because}`))
    .join(' ');
