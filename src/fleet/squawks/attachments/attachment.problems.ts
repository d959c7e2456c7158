import { defineProblems } from '../../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../../platform/problems/problem-exception.js';

/** Largest photo taken, in bytes; the table says the same. */
export const PHOTO_LIMIT_BYTES = 8 * 1024 * 1024;
/** Photos of one squawk; the table says the same. */
export const MOST_PHOTOS = 6;

defineProblems(
  {
    code: 'photo-missing',
    status: 400,
    title: 'No photo',
    detail: "Send one photo as multipart/form-data, in a part with the name 'photo' and nothing else.",
  },
  {
    code: 'photo-unreadable',
    status: 422,
    title: 'Not a photo that can be taken',
    detail: 'Send a whole still picture as JPEG, PNG or WebP.',
  },
);

export const photoMissing = (): ProblemException => new ProblemException('photo-missing', { field: 'photo' });

export const photoUnreadable = (): ProblemException =>
  new ProblemException('photo-unreadable', {
    field: 'photo',
    detail:
      'Its content is no whole still picture in JPEG, PNG or WebP, whatever its name says. Take or save it in one of these.',
  });

export const photoTooLarge = (): ProblemException =>
  new ProblemException('body-too-large', {
    field: 'photo',
    detail: `A photo may hold at most ${PHOTO_LIMIT_BYTES / 1024 / 1024} MB. Send a smaller one.`,
    extensions: { limitBytes: PHOTO_LIMIT_BYTES },
  });
