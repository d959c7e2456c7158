import { Shown } from '../../../platform/http/fields.js';
import type { MediaType } from '../../../platform/images/image.js';

export const MEDIA_TYPES: MediaType[] = ['image/jpeg', 'image/png', 'image/webp'];

/** A photo of a squawk, without the photo itself. */
export class AttachmentView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', enum: MEDIA_TYPES, description: 'As its content says' })
  mediaType: MediaType;

  @Shown({ type: 'integer', description: 'Bytes as kept: without place and other notes of the camera' })
  sizeBytes: number;

  @Shown({ type: 'string', description: 'SHA-256 of the photo as kept, hexadecimal; its ETag' })
  sha256: string;

  @Shown({ type: 'string', format: 'uuid', description: 'Member' })
  addedBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}
