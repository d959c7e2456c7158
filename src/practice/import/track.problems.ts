import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { GpxProblem, GpxProblemCode } from '../track/gpx.js';

/** Largest file read, in bytes: a day at a point a second. */
export const TRACK_LIMIT_BYTES = 12 * 1024 * 1024;

defineProblems(
  {
    code: 'track-missing',
    status: 400,
    title: 'No track',
    detail: "Send one GPX file as multipart/form-data, in a part with the name 'track' and nothing else.",
  },
  {
    code: 'track-unreadable',
    status: 422,
    title: 'The track cannot be read',
    detail: 'Send a track in GPX 1.1 with a time at every point. The problem names the line at fault.',
  },
  {
    code: 'flight-logged-already',
    status: 409,
    title: 'That time is in the log already',
    detail: 'Leave the flight out and take over the practice alone, or correct the log entry.',
  },
);

export const trackMissing = (): ProblemException => new ProblemException('track-missing', { field: 'track' });

export const trackTooLarge = (): ProblemException =>
  new ProblemException('body-too-large', {
    field: 'track',
    detail: `A track may hold at most ${TRACK_LIMIT_BYTES / 1024 / 1024} MB. Send one flight at a time.`,
    extensions: { limitBytes: TRACK_LIMIT_BYTES },
  });

const SAYS: Record<GpxProblemCode, string> = {
  'too-large': 'The file is too long. Send one flight at a time.',
  'document-type': 'A document type has no place in a track. Export it anew.',
  'not-xml': 'This is no well-formed XML.',
  'not-gpx-1.1': 'This is not GPX 1.1 (http://www.topografix.com/GPX/1/1). Export it as that.',
  latitude: 'A latitude is a number from −90 to 90.',
  longitude: 'A longitude is a number from −180 to 180.',
  elevation: 'An elevation is a number of metres.',
  'time-missing': 'A point has no time. Export the track with times.',
  time: 'A time is written as 2026-06-20T15:00:00Z, with its zone.',
  'time-backwards': 'The time goes backwards. Export one flight in its order.',
  'too-many-points': 'The track has too many points. Send one flight at a time.',
  'too-few-points': 'The track has fewer than two points.',
};

/** 422 with each fault's line. */
export const trackUnreadable = (problems: readonly GpxProblem[]): ProblemException =>
  new ProblemException('track-unreadable', {
    errors: problems.map(({ code, line, field, found }) => ({
      ...{ field: 'track', pointer: '/track', in: 'body' as const, ...(line === null ? {} : { line }) },
      message: `${SAYS[code]} (${field}${found === null ? '' : `: ${found}`})`,
    })),
  });

export const trackTooSlow = (): ProblemException =>
  new ProblemException('track-unreadable', {
    field: 'track',
    detail: 'Reading it took too long. Send one flight at a time, with a point a second at most.',
  });
