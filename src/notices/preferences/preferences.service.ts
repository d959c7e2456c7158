import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { lockMember } from '../lock-member.js';
import { kindOf, KINDS_OF_NOTICE, type KindOfNotice } from '../outbox/kinds.js';
import { Mailer } from '../outbox/mailer.js';
import type { PreferencesBody, PreferencesView } from './preferences.dto.js';
import { deliveryOf, preferencesOf, storePreferences } from './preferences.sql.js';

/** Which notices come by mail, and when: each person's own. */
@Injectable()
export class PreferencesService {
  constructor(
    private readonly db: TenantDb,
    private readonly mailer: Mailer,
  ) {}

  find(user: SignedIn): Promise<PreferencesView> {
    return this.db.run(user.clubId, (em) => this.view(em, user), { readOnly: true });
  }

  /** @throws 412; 422 for what may not be turned off, and for quiet hours of one end. */
  replace(user: SignedIn, body: PreferencesBody, version: number): Promise<PreferencesView> {
    const { memberId } = user;
    const { digestHour, quietFrom = null, quietTo = null } = body;
    const choices = Object.fromEntries(body.choices.map(({ kind, delivery }) => [kind, delivery]));
    for (const [index, { kind, delivery }] of body.choices.entries())
      if (delivery === 'off' && !kindOf(kind)!.mayBeOff) throw mustGo(`choices[${index}].delivery`, kind);
    if ((quietFrom === null) !== (quietTo === null) || (quietFrom !== null && quietFrom === quietTo))
      throw new ProblemException('quiet-hours-refused', {
        field: quietFrom === null ? 'quietFrom' : 'quietTo',
      });
    return this.db.run(
      user.clubId,
      async (em) => {
        // Two first choices at once: the second waits, and then does not have the version it was made on.
        await lockMember(em, memberId);
        requireVersion((await preferencesOf(em, memberId)).rowVersion, version);
        await storePreferences(em, memberId, { choices, quietFrom, quietTo, digestHour });
        return this.view(em, user);
      },
      { actorId: memberId },
    );
  }

  /**
   * Turns mail of some kinds off, whatever else the person chose.
   * @returns false if there is no such person.
   */
  turnOff(of: { clubId: string; memberId: string; kinds: readonly KindOfNotice[] }): Promise<boolean> {
    const { clubId, memberId, kinds } = of;
    return this.db.run(
      clubId,
      async (em) => {
        if (!(await lockMember(em, memberId))) return false;
        const wanted = await preferencesOf(em, memberId);
        const off = kinds.filter((kind) => kindOf(kind)!.mayBeOff).map((kind) => [kind, 'off'] as const);
        const choices = { ...wanted.choices, ...Object.fromEntries(off) };
        await storePreferences(em, memberId, { ...wanted, choices });
        return true;
      },
      { actorId: memberId },
    );
  }

  private async view(em: EntityManager, user: SignedIn): Promise<PreferencesView> {
    const { choices, ...wanted } = await preferencesOf(em, user.memberId);
    const [person]: { email: string; zone: string }[] = await em.query(
      `SELECT m.email, c.zone FROM members m JOIN clubs c ON c.club_id = m.club_id
        WHERE m.club_id = bellcrank_club() AND m.id = $1`,
      [user.memberId],
    );
    const mine = KINDS_OF_NOTICE.map((kind) => ({ kind, ...kindOf(kind)! })).filter(
      (one) => one.for === undefined || hasAnyRole(user, ...one.for),
    );
    return {
      ...wanted,
      ...person!,
      mailGoesOut: this.mailer.configured,
      choices: mine.map(({ kind, title, mayBeOff }) => ({
        ...{ kind, title, mayBeOff, delivery: deliveryOf({ choices }, kind) },
      })),
    };
  }
}

const mustGo = (field: string, kind: string): ProblemException =>
  new ProblemException('notice-must-go', {
    field,
    detail: `“${kindOf(kind)!.title}” may come at once or with the day's mail, but not be turned off: the safety of a flight hangs on it.`,
  });
