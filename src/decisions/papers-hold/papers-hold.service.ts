import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { assertOwnOr, OFFICERS, READERS } from '../../members/members.access.js';
import { assertTaughtOr } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { PAPERS_HOLD_CAUTION } from '../../rules/explain/index.js';
import { localDateOf, papersHold, toSeconds } from '../../rules/index.js';
import { gatherClub } from '../gather/club.js';
import { gatherPeople } from '../gather/people.js';
import type { PapersHoldView } from './papers-hold.dto.js';

/** Until when a member's papers hold, as the rules reckon it. */
@Injectable()
export class PapersHoldService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404 */
  read(by: SignedIn, memberId: string): Promise<PapersHoldView> {
    assertOwnOr(by, memberId, READERS);
    const at = this.clock.now();
    const work = async (em: EntityManager): Promise<PapersHoldView> => {
      const { jurisdiction, zone } = await gatherClub(em, at);
      const people = await gatherPeople(em, {
        ...{ memberIds: [memberId], knownAt: at, exceptBookingId: null },
        // Papers are told of as they were entered; flights are not.
        ...{ unverifiedCounts: true, logSince: at },
      });
      const person = people[memberId];
      if (person === undefined) throw notThere('member');
      await assertTaughtOr(em, by, memberId, { roles: OFFICERS, now: at });
      return {
        on: localDateOf(toSeconds(at), zone),
        items: papersHold(person, { jurisdiction, zone, at }),
        caution: PAPERS_HOLD_CAUTION,
      };
    };
    return this.db.run(by.clubId, work, { readOnly: true });
  }
}
