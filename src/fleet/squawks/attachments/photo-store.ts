import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { Attachment } from './attachment.entity.js';

/** A photo to keep. */
export type NewPhoto = Omit<Attachment, 'recordedAt'> & { content: Buffer };

/** Where photos are kept. Another store may come; whichever it is, the row of what is known of a photo stays in the database. */
export abstract class PhotoStore {
  /** Keeps a photo and what is known of it, in the caller's transaction. */
  abstract put(em: EntityManager, photo: NewPhoto): Promise<void>;
  /** The photo's bytes. */
  abstract read(em: EntityManager, of: Pick<Attachment, 'clubId' | 'id'>): Promise<Buffer>;
}

/** In the database, beside the rest: one backup holds all, and row-level security guards all. */
@Injectable()
export class DatabasePhotoStore extends PhotoStore {
  async put(em: EntityManager, photo: NewPhoto): Promise<void> {
    await em.query(
      `INSERT INTO attachments (club_id, id, squawk_id, media_type, size_bytes, sha256, content, added_by)
       VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [
        ...[photo.clubId, photo.id, photo.squawkId, photo.mediaType, photo.sizeBytes, photo.sha256],
        ...[photo.content, photo.addedBy],
      ],
    );
  }

  async read(em: EntityManager, of: Pick<Attachment, 'clubId' | 'id'>): Promise<Buffer> {
    const [row]: { content: Buffer }[] = await em.query(
      'SELECT content FROM attachments WHERE club_id = $1 AND id = $2',
      [of.clubId, of.id],
    );
    if (!row) throw new Error('a photo that is on record is not in the store');
    return row.content;
  }
}
