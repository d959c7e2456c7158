import { createHash } from 'node:crypto';

/** SHA-256 of bytes, or of a text's UTF-8 bytes, lower-case hex. */
export const sha256 = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex');
