import { Injectable } from '@nestjs/common';
import { In, type EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  removeRecord,
  writeRecord,
  type Where,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/versions.js';
import { checkRule, type LocalDate, type ReadRule, type RuleTexts } from '../../rules/index.js';
import { clubToday } from '../club-time.js';
import type { CheckBody, ClubRuleChanges, ClubRulesQuery, NewClubRule } from './club-rule.dto.js';
import type { CheckView, ClubRulesPage, ClubRuleView } from './club-rule-view.dto.js';
import { ClubRuleDryRunRow, ClubRuleRow } from './club-rule.entity.js';
import { checkView, phaseOf, readRules, ruleView } from './club-rule.views.js';
import { codeTaken, notADraft, refusedExpressions, stillADraft, weightStays } from './club-rules.problems.js';

const RULES = { entity: ClubRuleRow, noun: 'rule of its own' };

/** A version by id, as the client saw it. */
export interface RuleEdit {
  id: string;
  version: number;
}

/** The rules that the club wrote itself: drafts, checks, versions. Putting them in force: ClubRulesInForce. */
@Injectable()
export class ClubRulesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, { state, code, ...page }: ClubRulesQuery): Promise<ClubRulesPage> {
    const work = async (em: EntityManager) => {
      const where = { clubId, ...(state ? { state } : {}), ...(code ? { code } : {}) } as Where<ClubRuleRow>;
      const { items, nextCursor } = await pageOfRecords(em, RULES, where, page);
      return { items: await this.views(em, clubId, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, id: string): Promise<ClubRuleView> {
    const work = async (em: EntityManager) => this.view(em, await findRecord(em, RULES, { clubId, id }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Checks texts without keeping them. @throws ProblemException 422 naming field, line and column of each fault */
  check({ clubId }: SignedIn, body: CheckBody): Promise<CheckView> {
    const texts = {
      ...{ code: '', title: '', appliesWhen: body.appliesWhen ?? 'true', requirement: body.requirement },
      ...{ message: body.message ?? 'Not met.', condition: body.condition ?? null },
    };
    requireReadable(texts);
    const work = async (em: EntityManager) => checkView(texts, await this.others(em, clubId))!;
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 422 for expressions that cannot be taken; 409 for a short name that is taken */
  add({ clubId, memberId }: SignedIn, { slug, ...body }: NewClubRule): Promise<ClubRuleView> {
    const code = `club.own.${slug}`;
    const values = { appliesWhen: 'true', ...defined(body), code, clubId, createdBy: memberId, version: 1 };
    requireReadable(values as RuleTexts);
    const work = async (em: EntityManager) => {
      if (await em.existsBy(ClubRuleRow, { clubId, code })) throw codeTaken(code);
      return this.view(em, await addRecord(em, RULES, values));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 for anything but a draft; otherwise as `add` */
  edit(
    { clubId, memberId }: SignedIn,
    { id, version }: RuleEdit,
    changes: ClubRuleChanges,
  ): Promise<ClubRuleView> {
    const work = async (em: EntityManager) => {
      const row = await findRecord(em, RULES, { clubId, id }, { lock: true });
      if (row.state !== 'draft') throw notADraft(row);
      requireVersion(row.rowVersion, version);
      requireReadable({ ...row, ...defined(changes) });
      await this.requireWeight(em, row, changes.weight);
      return this.view(em, await writeRecord(em, RULES, row, changes));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 for anything but a draft */
  remove({ clubId, memberId }: SignedIn, { id, version }: RuleEdit): Promise<void> {
    const work = async (em: EntityManager) => {
      const row = await findRecord(em, RULES, { clubId, id }, { lock: true });
      if (row.state !== 'draft') throw notADraft(row);
      await removeRecord(em, RULES, { where: { clubId, id }, version });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** A draft of the next version of a rule: the texts of this version, changed. */
  addVersion({ clubId, memberId }: SignedIn, id: string, changes: ClubRuleChanges): Promise<ClubRuleView> {
    const work = async (em: EntityManager) => {
      const from = await findRecord(em, RULES, { clubId, id }, { lock: true });
      if (from.state === 'draft') throw stillADraft();
      if (changes.weight !== undefined && changes.weight !== from.weight) throw weightStays();
      const { code, title, weight, appliesWhen, requirement, message, condition, document } = from;
      const texts = {
        ...{ title, weight, appliesWhen, requirement, message, condition, document },
        ...defined(changes),
      };
      requireReadable(texts);
      const version = 1 + (await em.maximum(ClubRuleRow, 'version', { clubId, code }))!;
      const values = { ...texts, clubId, code, version, createdBy: memberId };
      return this.view(em, await addRecord(em, RULES, values));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Changes a version under lock, as the client saw it. */
  change(
    em: EntityManager,
    clubId: string,
    { id, version }: RuleEdit,
    change: (row: ClubRuleRow) => Promise<Partial<ClubRuleRow>>,
  ): Promise<ClubRuleRow> {
    return editRecord(em, RULES, { where: { clubId, id }, version, change });
  }

  async view(em: EntityManager, row: ClubRuleRow): Promise<ClubRuleView> {
    return (await this.views(em, row.clubId, [row]))[0]!;
  }

  private async views(em: EntityManager, clubId: string, rows: ClubRuleRow[]): Promise<ClubRuleView[]> {
    if (rows.length === 0) return [];
    const today = await clubToday(em, clubId, this.clock.now());
    const others = await this.others(em, clubId, today);
    const runs = await em.find(ClubRuleDryRunRow, {
      where: { clubId, ruleId: In(rows.map(({ id }) => id)) },
      order: { recordedAt: 'DESC', id: 'DESC' },
      select: {
        ruleId: true,
        draftVersion: true,
        runBy: true,
        lookedAt: true,
        changed: true,
        recordedAt: true,
      },
    });
    return rows.map((row) =>
      ruleView(row, { today, others, run: runs.find(({ ruleId }) => ruleId === row.id) ?? null }),
    );
  }

  /** Versions in force or to come: what a rule is held beside. */
  private async others(em: EntityManager, clubId: string, day?: LocalDate): Promise<ReadRule[]> {
    const today = day ?? (await clubToday(em, clubId, this.clock.now()));
    const rows = await em.find(ClubRuleRow, {
      where: { clubId, state: In(['active', 'ended']) },
      order: { code: 'ASC', version: 'ASC' },
    });
    return readRules(rows.filter((row) => ['in-force', 'to-come'].includes(phaseOf(row, today))));
  }

  /** Earlier versions have decided on the weight. */
  private async requireWeight(
    em: EntityManager,
    { clubId, code, weight, version }: ClubRuleRow,
    wanted: string | undefined,
  ): Promise<void> {
    if (wanted === undefined || wanted === weight || version === 1) return;
    if ((await em.countBy(ClubRuleRow, { clubId, code })) > 1) throw weightStays();
  }
}

function requireReadable(texts: RuleTexts): void {
  const { faults } = checkRule(texts);
  if (faults) throw refusedExpressions(faults);
}

const defined = <T extends object>(of: T): T =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as T;
