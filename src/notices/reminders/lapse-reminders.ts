import { Injectable, Logger } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { setImmediate as breathe } from 'node:timers/promises';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { RequirementView } from '../../safety/recency/recency.dto.js';
import { RecencyService } from '../../safety/recency/recency.service.js';
import { asMember } from '../as-member.js';
import { leadReached, leadTimes } from '../notice-policy.js';
import { postNotice } from '../outbox/post-notice.js';
import { remindOf } from './remind-of.js';

/** Reminds members of what of theirs lapses, at the club's lead times, once at each. */
@Injectable()
export class LapseReminders {
  private readonly logger = new Logger(LapseReminders.name);

  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly recency: RecencyService,
  ) {}

  /** @returns how many members are told. */
  async remind(clubId: string): Promise<number> {
    const at = this.clock.now();
    const { leads, members } = await this.db.run(
      clubId,
      async (em) => ({ leads: (await leadTimes(em, at)).lapseDays, members: await membersOn(em, at) }),
      { readOnly: true },
    );
    if (leads.length === 0) return 0;
    let told = 0;
    for (const { id } of members) {
      try {
        if (await this.remindOne(clubId, id, leads)) told += 1;
      } catch (error) {
        // One member's record that cannot be read keeps nobody else from being reminded.
        this.logger.warn(`A member's lapses could not be looked through (${(error as Error).message}).`);
      }
      await breathe();
    }
    return told;
  }

  private async remindOne(clubId: string, memberId: string, leads: readonly number[]): Promise<boolean> {
    const { requirements } = await this.recency.read(asMember({ clubId, memberId }), memberId, {});
    const due = requirements.flatMap((one) => {
      const lead = one.inDays === null ? null : leadReached(leads, one.inDays);
      return lead === null ? [] : [{ subject: subjectOf(one), lead: `${lead} d`, one }];
    });
    if (due.length === 0) return false;
    return this.db.run(clubId, async (em) => {
      const fresh = await remindOf(em, memberId, due);
      const items = fresh.map(({ subject, one }) => ({
        key: subject,
        title: one.title,
        says: [
          `It lapses on ${one.lapsesOn}, in ${one.inDays === 1 ? 'one day' : `${one.inDays} days`} (${one.citation}).`,
          ...(one.lapseSays === null ? [] : [`From then on: ${one.lapseSays}`]),
        ],
        link: '/log',
      }));
      const at = this.clock.now();
      await postNotice(em, { kind: 'lapse', cause: 'lapses', at, to: [{ memberId, items }] });
      return items.length > 0;
    });
  }
}

/** The same requirement in other aircraft, or on another day, is another lapse. */
const subjectOf = ({ rule, aircraft, flights, lapsesOn }: RequirementView): string =>
  `lapse:${rule}:${lapsesOn}:${[...flights, ...(aircraft ?? [])].join(',')}`.slice(0, 300);

/** Whoever is a member on the day. */
const membersOn = (em: EntityManager, at: string): Promise<{ id: string }[]> =>
  em.query(
    `SELECT m.id FROM members m JOIN clubs c ON c.club_id = m.club_id
      WHERE m.club_id = bellcrank_club() AND m.membership_from <= ($1::timestamptz AT TIME ZONE c.zone)::date
        AND (m.membership_through IS NULL OR m.membership_through >= ($1::timestamptz AT TIME ZONE c.zone)::date)
      ORDER BY m.id`,
    [at],
  );
