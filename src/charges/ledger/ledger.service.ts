import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { answerOnce, type StoredAnswer } from '../../bookings/idempotency.js';
import { clubToday } from '../../clubs/club-time.js';
import { MEMBERS } from '../../members/member-rows.js';
import { isOwn } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { moneyUnit } from '../money-unit.js';
import type { LedgerEntry } from './ledger-entry.entity.js';
import { EntryView, type NewAdjustment, type NewReceipt } from './ledger.dto.js';
import { ENTRIES, postEntry, reverseEntry } from './post-entry.js';

/** Enters what was received, put on and taken off. Money itself is handled elsewhere. */
@Injectable()
export class LedgerService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403 `own-ledger`, 404, 409 `currency-not-set`, 422 */
  receive(by: SignedIn, memberId: string, key: string, body: NewReceipt): Promise<StoredAnswer> {
    return this.once(by, memberId, { key, request: { receipt: memberId, ...body } }, async (em, today) => {
      if (body.receivedOn > today)
        throw valueRefused('receivedOn', `It is entered once it came in, not ahead (today is ${today}).`);
      return {
        ...{ kind: 'receipt' as const, ofDay: body.receivedOn, words: body.words ?? '' },
        amountMinor: -body.amountMinor,
      };
    });
  }

  /** @throws 403 `own-ledger`, 404, 409 `currency-not-set`, 422 */
  adjust(by: SignedIn, memberId: string, key: string, body: NewAdjustment): Promise<StoredAnswer> {
    return this.once(
      by,
      memberId,
      { key, request: { adjustment: memberId, ...body } },
      async (_em, today) => {
        const { amountMinor, reason } = body;
        if (amountMinor === 0) throw valueRefused('amountMinor', 'Give an amount other than 0.');
        return { kind: 'adjustment' as const, ofDay: today, words: reason, amountMinor };
      },
    );
  }

  /** @throws 403 `own-ledger`, 404, 409 where it was reversed before, 422 */
  reverse(by: SignedIn, id: string, reason: string): Promise<EntryView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      const entry = await findRecord(em, ENTRIES, { clubId, id });
      if (isOwn(by, entry.memberId)) throw new ProblemException('own-ledger');
      const postedOn = await clubToday(em, clubId, this.clock.now());
      const reversal = await reverseEntry(em, entry, { postedOn, words: reason, recordedBy: by.memberId });
      return show(EntryView, reversal);
    });
  }

  /** An entry under a key: the same request sent twice is entered once. */
  private once(
    by: SignedIn,
    memberId: string,
    { key, request }: { key: string; request: object },
    entryOf: (
      em: EntityManager,
      today: string,
    ) => Promise<Pick<LedgerEntry, 'kind' | 'ofDay' | 'words' | 'amountMinor'>>,
  ): Promise<StoredAnswer> {
    if (isOwn(by, memberId)) throw new ProblemException('own-ledger');
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      return answerOnce(em, { memberId: by.memberId, key, request }, async () => {
        const today = await clubToday(em, clubId, this.clock.now());
        const unit = await moneyUnit(em, clubId, today);
        const entry = await postEntry(em, {
          ...{ clubId, memberId, postedOn: today, recordedBy: by.memberId, ...unit },
          ...(await entryOf(em, today)),
        });
        return { status: 201, body: show(EntryView, entry) };
      });
    });
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(by.clubId, work, { actorId: by.memberId });
  }
}
