import { oneFile } from '../../platform/http/one-file.interceptor.js';
import { TRACK_LIMIT_BYTES, trackMissing, trackTooLarge } from './track.problems.js';

/** Reads one track of a form into memory. */
export const TrackInterceptor = oneFile({
  ...{ field: 'track', limitBytes: TRACK_LIMIT_BYTES },
  ...{ tooLarge: trackTooLarge, missing: trackMissing },
});
