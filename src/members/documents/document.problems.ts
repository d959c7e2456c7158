import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';

/** Largest document taken, in bytes; the table says the same. */
export const DOCUMENT_LIMIT_BYTES = 8 * 1024 * 1024;

defineProblems(
  {
    code: 'document-missing',
    status: 400,
    title: 'No document',
    detail: "Send one document as multipart/form-data, in a part with the name 'document' and nothing else.",
  },
  {
    code: 'document-unreadable',
    status: 422,
    title: 'Not a document that can be taken',
    detail:
      'Send a whole still picture as JPEG, PNG or WebP, or a PDF of at most 40 pages without a password. Its content counts, not its name.',
  },
);

export const documentMissing = (): ProblemException =>
  new ProblemException('document-missing', { field: 'document' });

export const documentUnreadable = (): ProblemException =>
  new ProblemException('document-unreadable', { field: 'document' });

export const documentTooLarge = (): ProblemException =>
  new ProblemException('body-too-large', {
    field: 'document',
    detail: `A document may hold at most ${DOCUMENT_LIMIT_BYTES / 1024 / 1024} MB. Send a smaller one.`,
    extensions: { limitBytes: DOCUMENT_LIMIT_BYTES },
  });
