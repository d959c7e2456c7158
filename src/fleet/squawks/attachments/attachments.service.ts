import { Injectable } from '@nestjs/common';
import { sha256 as digestOf } from '../../../platform/sha256.js';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../../accounts/current-user.js';
import { hasAnyRole } from '../../../accounts/roles.js';
import { findRecord } from '../../../platform/database/records.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { show } from '../../../platform/http/views.js';
import { newId } from '../../../platform/ids.js';
import { ProblemException } from '../../../platform/problems/problem-exception.js';
import type { PartPlace } from '../../aircraft-records.js';
import { SQUAWKS } from '../squawks.service.js';
import { AttachmentView } from './attachment.dto.js';
import { Attachment } from './attachment.entity.js';
import { photoMissing, photoUnreadable } from './attachment.problems.js';
import { cleanImage } from '../../../platform/images/image.js';
import { PhotoStore } from './photo-store.js';

const PHOTOS = { entity: Attachment, noun: 'photo' };

/** Photos of squawks: added, read, never changed. */
@Injectable()
export class AttachmentsService {
  constructor(
    private readonly db: TenantDb,
    private readonly store: PhotoStore,
  ) {}

  /**
   * Keeps a photo without the camera's notes. The same photo once more is the one already there.
   * @throws ProblemException 403 for anyone but who reported it and the coordinator; 400, 422 for what is no photo.
   */
  add(user: SignedIn, place: PartPlace, content: Buffer | undefined): Promise<AttachmentView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place });
      if (squawk.reportedBy !== memberId && !hasAnyRole(user, 'maintenance-coordinator'))
        throw new ProblemException('forbidden', {
          status: 403,
          title: 'Not yours to add to',
          detail: 'Photos are added by who reported it, and by the maintenance coordinator.',
        });
      if (content === undefined || content.length === 0) throw photoMissing();
      const image = cleanImage(content);
      if (!image) throw photoUnreadable();
      const sha256 = digestOf(image.bytes);
      const same = await em.findOneBy(Attachment, { clubId, squawkId: squawk.id, sha256 });
      if (same) return show(AttachmentView, same);
      const id = newId();
      await this.store.put(em, {
        ...{ clubId, id, squawkId: squawk.id, addedBy: memberId, sha256 },
        ...{ mediaType: image.mediaType, sizeBytes: image.bytes.length, content: image.bytes },
      });
      return show(AttachmentView, await findRecord(em, PHOTOS, { clubId, id }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** What is known of a photo, and a way to its bytes where they are wanted. */
  read(
    { clubId }: SignedIn,
    place: PartPlace & { attachmentId: string },
    wanted: (photo: Attachment) => boolean,
  ): Promise<{ photo: Attachment; content: Buffer | null }> {
    const work = async (em: EntityManager) => {
      const { aircraftId, id: squawkId, attachmentId } = place;
      await findRecord(em, SQUAWKS, { clubId, aircraftId, id: squawkId });
      const photo = await findRecord(em, PHOTOS, { clubId, squawkId, id: attachmentId });
      return { photo, content: wanted(photo) ? await this.store.read(em, photo) : null };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}
