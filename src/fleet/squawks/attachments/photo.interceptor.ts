import { oneFile } from '../../../platform/http/one-file.interceptor.js';
import { PHOTO_LIMIT_BYTES, photoMissing, photoTooLarge } from './attachment.problems.js';

/** Reads one photo of a form into memory. */
export const PhotoInterceptor = oneFile({
  ...{ field: 'photo', limitBytes: PHOTO_LIMIT_BYTES },
  ...{ tooLarge: photoTooLarge, missing: photoMissing },
});
