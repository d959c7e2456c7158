import { Injectable } from '@nestjs/common';
import { In, type EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday, clubZone } from '../../clubs/club-time.js';
import { ClubRuleDryRunRow, ClubRuleRow } from '../../clubs/rules/club-rule.entity.js';
import { phaseOf, readRules, ruleOf } from '../../clubs/rules/club-rule.views.js';
import { notADraft, refusedExpressions } from '../../clubs/rules/club-rules.problems.js';
import { Clock } from '../../platform/clock.js';
import { findRecord, notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { readCursor, type Page } from '../../platform/http/pages.js';
import { newId } from '../../platform/ids.js';
import {
  addPlainMonths,
  checkRule,
  compileUndated,
  startOfDay,
  toInstant,
  warningsOf,
  type LocalDate,
} from '../../rules/index.js';
import { DEFAULT_LOOKED_AT, type ChangesQuery, type DryRunBody, type DryRunDto } from './dry-run.dto.js';
import { firstPage, keptOf, LONGEST_MS, pageOfChanges, type Frame, type Kept } from './dry-run.result.js';
import { findCases, type CaseRef } from './stored-cases.js';
import { Tally, type ChangedAnswer } from './tally.js';
import { tryCases, type LeftOut } from './try-cases.js';

const RULES = { entity: ClubRuleRow, noun: 'rule of its own' };
const MONTHS = 12;
const BATCH = 100;
/** Tries a draft on the decisions of the last twelve months and the bookings to come, before it is put in force. */
@Injectable()
export class DryRunService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws ProblemException 404; 409 for anything but a draft; 422 for expressions that cannot be taken */
  async run(user: SignedIn, ruleId: string, { lookAt = DEFAULT_LOOKED_AT }: DryRunBody): Promise<DryRunDto> {
    const { clubId } = user;
    const { frame, found } = await this.db.run(
      clubId,
      async (em) => {
        const frame = await this.frame(em, clubId, ruleId);
        return { frame, found: await findCases(em, { since: frame.since, now: frame.now, limit: lookAt }) };
      },
      { readOnly: true },
    );
    const tally = new Tally(frame.titles);
    const { looked, leftOut, late } = await this.tryAll(clubId, found.refs, frame, tally);
    const kept = keptOf(frame, tally, { looked, leftOut, late, ...found });
    await this.keep(user, frame.draft, kept);
    return firstPage(kept);
  }

  /** The newest dry run of a version. @throws ProblemException 404 where there is none */
  async last(user: SignedIn, ruleId: string): Promise<DryRunDto> {
    return firstPage(await this.kept(user, ruleId));
  }

  /** Changed answers of the newest dry run, page by page. */
  async changes(user: SignedIn, ruleId: string, query: ChangesQuery): Promise<Page<ChangedAnswer>> {
    const { items } = await this.kept(user, ruleId);
    const after = readCursor(query.cursor);
    const from = after === null ? 0 : items.findIndex((one) => one.decisionId === after) + 1;
    return pageOfChanges(items, from, query.limit);
  }

  /** Batch after batch, each in a transaction of its own, so that nobody waits for the whole. */
  private async tryAll(
    clubId: string,
    refs: readonly CaseRef[],
    { rule, others }: Frame,
    tally: Tally,
  ): Promise<{ looked: CaseRef[]; leftOut: LeftOut[]; late: number }> {
    const began = performance.now();
    const leftOut: LeftOut[] = [];
    let at = 0;
    while (at < refs.length && performance.now() - began < LONGEST_MS) {
      const batch = refs.slice(at, at + BATCH);
      const work = (em: EntityManager) => tryCases(em, batch, { rule, others, tally });
      leftOut.push(...(await this.db.run(clubId, work, { readOnly: true, retry: false })));
      at += batch.length;
    }
    const out = new Set(leftOut.map(({ id }) => id));
    return { looked: refs.slice(0, at).filter(({ id }) => !out.has(id)), leftOut, late: refs.length - at };
  }

  private async frame(em: EntityManager, clubId: string, ruleId: string): Promise<Frame> {
    const draft = await findRecord(em, RULES, { clubId, id: ruleId });
    if (draft.state !== 'draft') throw notADraft(draft);
    const { rule: checked, faults } = checkRule(draft);
    if (faults) throw refusedExpressions(faults);
    const now = this.clock.now();
    const today = await clubToday(em, clubId, now);
    const zone = await clubZone(em, clubId);
    const beside = await this.beside(em, draft, today);
    return {
      ...{ draft, now },
      rule: compileUndated(ruleOf(draft, today)),
      others: beside.map((row) => compileUndated(ruleOf(row, today))),
      titles: beside.map(({ code, title }) => ({ code, title })),
      said: warningsOf({ rule: draft, checked }, readRules(beside)),
      since: toInstant(startOfDay(addPlainMonths(today, -MONTHS, 'clamp-to-month-end'), zone)),
    };
  }

  /** The newest version in force or to come of each other rule. */
  private async beside(em: EntityManager, draft: ClubRuleRow, today: LocalDate): Promise<ClubRuleRow[]> {
    const rows = await em.find(ClubRuleRow, {
      where: { clubId: draft.clubId, state: In(['active', 'ended']) },
      order: { code: 'ASC', version: 'ASC' },
    });
    const inForce = rows.filter((row) => ['in-force', 'to-come'].includes(phaseOf(row, today)));
    const newest = new Map(inForce.map((row) => [row.code, row]));
    newest.delete(draft.code);
    return [...newest.values()];
  }

  private keep({ clubId, memberId }: SignedIn, draft: ClubRuleRow, result: Kept): Promise<void> {
    const row = {
      ...{ clubId, id: newId(), ruleId: draft.id, draftVersion: draft.rowVersion, runBy: memberId },
      ...{ lookedAt: result.lookedAt, changed: result.changed, result },
    };
    const work = async (em: EntityManager) => void (await em.insert(ClubRuleDryRunRow, row as object));
    return this.db.run(clubId, work, { actorId: memberId });
  }

  private async kept({ clubId }: SignedIn, ruleId: string): Promise<Kept> {
    const work = async (em: EntityManager) => {
      await findRecord(em, RULES, { clubId, id: ruleId });
      return em.findOne(ClubRuleDryRunRow, {
        where: { clubId, ruleId },
        order: { recordedAt: 'DESC', id: 'DESC' },
      });
    };
    const run = await this.db.run(clubId, work, { readOnly: true });
    if (!run) throw notThere('dry run of this rule');
    return run.result as Kept;
  }
}
