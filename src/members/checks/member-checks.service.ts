import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { Page, PageQuery } from '../../platform/http/pages.js';
import { show, VoidedView } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { MEMBERS } from '../member-rows.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../members.access.js';
import { assertTaughtOr } from '../students.js';
import { MemberCheckView, type NewMemberCheck } from './member-check.dto.js';
import { MemberCheck, MemberCheckVoid } from './member-check.entity.js';

const CHECKS = { entity: MemberCheck, noun: 'check' };

/** What officers have seen of who a member is: recorded by who saw it, never edited; a wrong one is taken back. */
@Injectable()
export class MemberChecksService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404 */
  list(person: SignedIn, memberId: string, page: PageQuery): Promise<Page<MemberCheckView>> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    const work = async (em: EntityManager) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
      const { items, nextCursor } = await pageOfRecords(em, CHECKS, { clubId, memberId }, page, true);
      return { items: await views(em, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws 403 `own-check`, 404, 422 */
  add(by: SignedIn, memberId: string, body: NewMemberCheck): Promise<MemberCheckView> {
    if (isOwn(by, memberId)) throw new ProblemException('own-check');
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      const today = await clubToday(em, clubId, this.clock.now());
      if (body.seenOn > today)
        throw valueRefused('seenOn', `It is recorded once it was seen, not ahead (today is ${today}).`);
      if (body.expiresOn && body.expiresOn < body.seenOn)
        throw valueRefused(
          'expiresOn',
          'What had run out on the day it was seen does not count. Check both dates.',
        );
      const row = await addRecord(em, CHECKS, { ...body, clubId, memberId, seenBy: by.memberId });
      return (await views(em, [row]))[0]!;
    });
  }

  /** @throws 403 `own-check`, 404, 409, 422 */
  void(by: SignedIn, id: string, reason: string): Promise<MemberCheckView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      const row = await findRecord(em, CHECKS, { clubId, id });
      if (isOwn(by, row.memberId)) throw new ProblemException('own-check');
      await em.insert(MemberCheckVoid, { clubId, checkId: id, voidedBy: by.memberId, reason });
      return (await views(em, [row]))[0]!;
    });
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(by.clubId, work, { actorId: by.memberId });
  }
}

async function views(em: EntityManager, rows: MemberCheck[]): Promise<MemberCheckView[]> {
  if (rows[0] === undefined) return [];
  const { clubId } = rows[0];
  const voids = await em.find(MemberCheckVoid, { where: { clubId, checkId: In(rows.map(({ id }) => id)) } });
  return rows.map((row) => {
    const taken = voids.find(({ checkId }) => checkId === row.id);
    return show(MemberCheckView, row, { voided: VoidedView.of(taken) });
  });
}
