import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { encodeCursor, readCursor } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { replayPage, type ReplayedPage } from '../replay/replay-all.js';
import { chainState, checkReceipt, type ChainState, type ReceiptCheck } from './chain.js';
import { readReceipt } from './receipt.js';
import { Sealer } from './sealer.js';
import { BEGINNING, verifyStretch, type Broken, type Reached } from './verify.js';

/** Links verified in one request. */
const LINKS_A_REQUEST = 2000;

/** What verifying found. */
export interface Verification {
  whole: boolean;
  complete: boolean;
  verifiedTo: number;
  broken: Broken | null;
  receipt: ReceiptCheck | null;
  sealedLate: number;
  firstSealedLate: number | null;
  nextCursor: string | null;
}

/** The chain of decisions, and replays of all of them, for officers. */
@Injectable()
export class AuditService {
  constructor(
    private readonly db: TenantDb,
    private readonly sealer: Sealer,
  ) {}

  chain(user: SignedIn): Promise<ChainState> {
    return this.db.run(user.clubId, (em) => chainState(em, user.clubId), { readOnly: true });
  }

  /** Seals what is not sealed yet, without waiting for the service to do it by itself. */
  async seal(user: SignedIn): Promise<ChainState> {
    await this.sealer.seal(user.clubId);
    return this.chain(user);
  }

  /** Verifies the chain from the cursor on, and a receipt against it. @throws ProblemException for one of another club */
  async verify(user: SignedIn, of: { receipt?: string; cursor?: string }): Promise<Verification> {
    const receipt = of.receipt === undefined ? null : await this.receipt(user, of.receipt);
    const from = of.cursor === undefined ? BEGINNING : await this.reachedBefore(user, of.cursor);
    const stretch = await verifyStretch(this.db, user.clubId, from, LINKS_A_REQUEST);
    const { reached, broken, end, late, firstLate } = stretch;
    return {
      whole: broken === null && receipt?.holds !== false,
      complete: end,
      verifiedTo: reached.seq,
      ...{ broken, receipt, sealedLate: late, firstSealedLate: firstLate },
      nextCursor: end || broken ? null : `${reached.seq}.${reached.link}`,
    };
  }

  /** A page of replays. */
  async replay(
    user: SignedIn,
    of: { limit: number; cursor?: string },
  ): Promise<Omit<ReplayedPage, 'nextAfterId'> & { nextCursor: string | null }> {
    const { nextAfterId, ...page } = await replayPage(this.db, user, {
      afterId: readCursor(of.cursor),
      limit: of.limit,
    });
    return { ...page, nextCursor: nextAfterId === null ? null : encodeCursor({ id: nextAfterId }) };
  }

  private receipt(user: SignedIn, text: string): Promise<ReceiptCheck> {
    const receipt = readReceipt(text);
    if (receipt?.club !== user.clubId)
      throw new ProblemException('receipt-refused', {
        detail: receipt
          ? 'This receipt is of another club. Give one that this club was given.'
          : 'This is no receipt. Give the whole line as it was given.',
        field: 'receipt',
      });
    return this.db.run(user.clubId, (em) => checkReceipt(em, receipt), { readOnly: true });
  }

  /** @throws ProblemException 400 for a cursor that is not a link of the chain */
  private async reachedBefore(user: SignedIn, cursor: string): Promise<Reached> {
    const [seq = '', link = ''] = cursor.split('.');
    const rows = /^[1-9]\d{0,14}$/.test(seq)
      ? await this.db.run(
          user.clubId,
          (em) =>
            em.query(
              'SELECT 1 FROM decision_chain WHERE club_id = bellcrank_club() AND seq = $1 AND link = $2',
              [seq, link],
            ),
          { readOnly: true },
        )
      : [];
    if (rows.length === 0) throw new ProblemException('cursor-malformed', { field: 'cursor' });
    return { seq: Number(seq), link };
  }
}
