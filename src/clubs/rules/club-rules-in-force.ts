import { Injectable } from '@nestjs/common';
import { MoreThanOrEqual, Not, type EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { checkRule, type LocalDate } from '../../rules/index.js';
import { clubToday } from '../club-time.js';
import type { ClubRuleView } from './club-rule-view.dto.js';
import { ClubRuleDryRunRow, ClubRuleRow } from './club-rule.entity.js';
import {
  dayNotPossible,
  MOST_IN_FORCE,
  notADraft,
  notTried,
  refusedExpressions,
  stillADraft,
} from './club-rules.problems.js';
import { ClubRulesService, type RuleEdit } from './club-rules.service.js';

/** Puts rules of the club in force, and ends them. Nothing of it reaches into the past. */
@Injectable()
export class ClubRulesInForce {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly rules: ClubRulesService,
  ) {}

  /**
   * Puts a draft in force from a day on; the version before it ends on that day.
   *
   * @throws ProblemException 409 for a draft that was not tried as it is, 422 for a day in the past.
   */
  activate(user: SignedIn, edit: RuleEdit, from: LocalDate): Promise<ClubRuleView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const now = this.clock.now();
      const today = await clubToday(em, clubId, now);
      const row = await this.rules.change(em, clubId, edit, async (draft) => {
        if (draft.state !== 'draft') throw notADraft(draft);
        if (from < today) throw dayNotPossible('from', inThePast(from, today));
        const { faults } = checkRule(draft);
        if (faults) throw refusedExpressions(faults);
        await this.requireTried(em, draft);
        await this.requireRoom(em, draft, today);
        await this.endBefore(em, draft, from, { by: memberId, at: now });
        return { state: 'active', inForceFrom: from, activatedBy: memberId, activatedAt: now };
      });
      return this.rules.view(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /**
   * Ends a version on a day. On its own first day, it never takes effect, and the version it would have replaced goes on.
   *
   * @throws ProblemException 409 for a draft, 422 for a day before today or before the version begins, or after its end.
   */
  end(user: SignedIn, edit: RuleEdit, to: LocalDate): Promise<ClubRuleView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const now = this.clock.now();
      const today = await clubToday(em, clubId, now);
      const row = await this.rules.change(em, clubId, edit, async (version) => {
        const { state, inForceFrom, inForceTo } = version;
        if (state === 'draft' || inForceFrom === null) throw stillADraft();
        if (to < today) throw dayNotPossible('to', inThePast(to, today));
        if (to < inForceFrom)
          throw dayNotPossible('to', `The version begins on ${inForceFrom} only. End it then or later.`);
        if (inForceTo !== null && (inForceTo <= today || to > inForceTo))
          throw dayNotPossible(
            'to',
            `The version ends on ${inForceTo} already; only an earlier end is possible.`,
          );
        return { state: 'ended', inForceTo: to, endedBy: memberId, endedAt: now };
      });
      if (to === row.inForceFrom) await this.resume(em, row);
      return this.rules.view(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  private async requireTried(em: EntityManager, { clubId, id, rowVersion }: ClubRuleRow): Promise<void> {
    if (await em.existsBy(ClubRuleDryRunRow, { clubId, ruleId: id, draftVersion: rowVersion })) return;
    throw notTried(await em.existsBy(ClubRuleDryRunRow, { clubId, ruleId: id }));
  }

  private async requireRoom(
    em: EntityManager,
    { clubId, code }: ClubRuleRow,
    today: LocalDate,
  ): Promise<void> {
    const others = { clubId, code: Not(code) };
    const inForce = await em.countBy(ClubRuleRow, [
      { ...others, state: 'active' },
      { ...others, state: 'ended', inForceTo: MoreThanOrEqual(today) },
    ]);
    if (inForce >= MOST_IN_FORCE) throw new ProblemException('club-rules-too-many');
  }

  /** The version in force until further notice ends where the next one begins. */
  private async endBefore(
    em: EntityManager,
    { clubId, code }: ClubRuleRow,
    from: LocalDate,
    { by, at }: { by: string; at: string },
  ): Promise<void> {
    const before = await em.findOne(ClubRuleRow, {
      where: { clubId, code, state: 'active' },
      lock: { mode: 'pessimistic_write' },
    });
    if (before === null) return;
    if (before.inForceFrom! > from) {
      throw dayNotPossible(
        'from',
        `Version ${before.version} begins on ${before.inForceFrom}. Begin then or later, or end that version first.`,
      );
    }
    await em.update(
      ClubRuleRow,
      { clubId, id: before.id },
      { state: 'ended', inForceTo: from, endedBy: by, endedAt: at },
    );
  }

  /** The version that was ended for the one taken back goes on. */
  private async resume(em: EntityManager, { clubId, code, id, inForceFrom }: ClubRuleRow): Promise<void> {
    const before = await em.findOneBy(ClubRuleRow, {
      ...{ clubId, code, state: 'ended', inForceTo: inForceFrom! },
      id: Not(id),
    });
    if (before === null || before.inForceFrom === before.inForceTo) return;
    await em.update(
      ClubRuleRow,
      { clubId, id: before.id },
      { state: 'active', inForceTo: null, endedBy: null, endedAt: null },
    );
  }
}

const inThePast = (day: LocalDate, today: LocalDate): string =>
  `${day} lies in the past; today is ${today} in your club's zone. Choose today or later: what was decided before rested on the rules of its day.`;
