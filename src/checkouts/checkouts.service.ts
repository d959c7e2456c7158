import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { clubToday } from '../clubs/club-time.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../members/members.access.js';
import { MEMBERS } from '../members/member-rows.js';
import { Clock } from '../platform/clock.js';
import { addRecord, findRecord } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { type Page, pageOf, readCursor } from '../platform/http/pages.js';
import { show, VoidedView } from '../platform/http/views.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { Checkout, CheckoutVoid } from './checkout.entity.js';
import { checkoutStands } from './standing-checkouts.js';
import { asLaidDown } from './as-laid-down.js';
import { assertClear } from './checkouts.checks.js';
import { type CheckoutDto, type CheckoutQuery, CheckoutView } from './checkouts.dto.js';

const CHECKOUTS = { entity: Checkout, noun: 'checkout' };

/** The club's sign-offs: signed by an instructor, never edited; a wrong one is taken back and signed anew. */
@Injectable()
export class CheckoutsService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A member's sign-offs, newest record first. @throws 403, 404 */
  list(person: SignedIn, memberId: string, query: CheckoutQuery): Promise<Page<CheckoutView>> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    const after = readCursor(query.cursor);
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        const rows = await listRows(
          em,
          { clubId, memberId, after, voided: query.voided ?? false },
          query.limit + 1,
        );
        const page = pageOf(rows, query.limit);
        return { ...page, items: await views(em, page.items) };
      },
      { readOnly: true },
    );
  }

  /**
   * Signs a member off; where the club has laid down what that asks for, only when all of it is there.
   * @throws 403 `own-checkout`, `not-authorised-for-checkout`, 404, 409 `checkout-not-complete`, 422
   */
  sign(by: SignedIn, memberId: string, draft: CheckoutDto): Promise<CheckoutView> {
    if (isOwn(by, memberId)) throw new ProblemException('own-checkout');
    const { clubId } = by;
    return this.write(by, async (em) => {
      // Two signatures at once come one after the other: the second finds the items spent.
      await findRecord(em, MEMBERS, { clubId, id: memberId }, { lock: true });
      const now = this.clock.now();
      await assertClear(em, clubId, draft, await clubToday(em, clubId, now));
      const under = await asLaidDown(em, by, { memberId, draft, now });
      const row = await addRecord(em, CHECKOUTS, {
        ...{ ...draft, ...under, clubId, memberId, signedBy: by.memberId },
      });
      return (await views(em, [row]))[0]!;
    });
  }

  /** Takes a sign-off back: the instructor who signed it, or an officer. @throws 403, 404, 409 */
  void(by: SignedIn, id: string, reason: string): Promise<CheckoutView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      const row = await findRecord(em, CHECKOUTS, { clubId, id });
      if (row.signedBy !== by.memberId && !hasAnyRole(by, ...OFFICERS)) {
        throw new ProblemException('not-yours', {
          detail: 'A checkout is taken back by the instructor who signed it, or by an officer.',
        });
      }
      await em.insert(CheckoutVoid, { clubId, checkoutId: id, voidedBy: by.memberId, reason });
      return (await views(em, [row]))[0]!;
    });
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.tenants.run(by.clubId, work, { actorId: by.memberId });
  }
}

function listRows(
  em: EntityManager,
  of: { clubId: string; memberId: string; after: string | null; voided: boolean },
  count: number,
): Promise<Checkout[]> {
  const query = em
    .createQueryBuilder(Checkout, 'checkout')
    .where('checkout.clubId = :clubId AND checkout.memberId = :memberId', of)
    .orderBy('checkout.id', 'DESC')
    .limit(count);
  if (of.after !== null) query.andWhere('checkout.id < :after', of);
  if (!of.voided) {
    query.andWhere(checkoutStands('checkout'));
  }
  return query.getMany();
}

async function views(em: EntityManager, rows: Checkout[]): Promise<CheckoutView[]> {
  if (rows[0] === undefined) return [];
  const { clubId } = rows[0];
  const voids = await em.find(CheckoutVoid, { where: { clubId, checkoutId: In(rows.map(({ id }) => id)) } });
  return rows.map((row) => {
    const taken = voids.find(({ checkoutId }) => checkoutId === row.id);
    return show(CheckoutView, row, { voided: VoidedView.of(taken) });
  });
}
