import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { addRecord, editRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { type NewSigner, type SignerChanges, type SignerPage, SignerView } from './signer.dto.js';
import { Signer } from './signer.entity.js';

/** How signers are found. */
const SIGNERS = { entity: Signer, noun: 'signer' };

const view = (row: Signer): SignerView => show(SignerView, row);

/** People and shops on record as entitled to sign for work. They stay; one whose time is over gets a last day. */
@Injectable()
export class SignersService {
  constructor(private readonly db: TenantDb) {}

  list({ clubId }: SignedIn, page: PageQuery): Promise<SignerPage> {
    return this.db.run(
      clubId,
      async (em) => {
        const { items, nextCursor } = await pageOfRecords(em, SIGNERS, { clubId }, page);
        return { items: items.map(view), nextCursor };
      },
      { readOnly: true },
    );
  }

  add({ clubId, memberId }: SignedIn, body: NewSigner): Promise<SignerView> {
    return this.db.run(clubId, async (em) => view(await addRecord(em, SIGNERS, { ...body, clubId })), {
      actorId: memberId,
    });
  }

  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: SignerChanges,
  ): Promise<SignerView> {
    const edit = { where: { clubId, id }, version, change: () => ({ ...changes }) };
    return this.db.run(clubId, async (em) => view(await editRecord(em, SIGNERS, edit)), {
      actorId: memberId,
    });
  }
}
