import { randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { type EntityManager, IsNull } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubToday } from '../../clubs/club-time.js';
import { requireKnown } from '../../decisions/gather/known.js';
import { assertOwnOr, OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import {
  addRecord,
  editRecord,
  findRecord,
  notThere,
  pageOfRecords,
  writeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { sha256 } from '../../platform/sha256.js';
import {
  type NewSafetyReport,
  type NewSafetyStep,
  ReceiptView,
  type ReportsQuery,
  type SafetyReportFiled,
  type SafetyReportPage,
  type SafetyReportView,
  type SafetyStepChanges,
  type SafetyStepView,
} from './report.dto.js';
import { SafetyReport } from './report.entity.js';
import { reportViews, stepView } from './report-views.js';
import { SafetyStep } from './step.entity.js';

const REPORTS = { entity: SafetyReport, noun: 'report' };
/** What steps call whom they name. */
const NAMES = { memberId: 'responsibleId', aircraftId: 'aircraftId' };
const STEPS = { entity: SafetyStep, noun: 'step' };

/** Hazards and occurrences: told by anybody, followed up by officers. */
@Injectable()
export class ReportsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A confidential report is written without an actor, so that the audit log names nobody either. */
  file({ clubId, memberId }: SignedIn, body: NewSafetyReport): Promise<SafetyReportFiled> {
    const receipt = body.confidential ? randomBytes(24).toString('base64url') : null;
    const work = async (em: EntityManager) => {
      await this.requirePast(em, clubId, 'happenedOn', body.happenedOn);
      await requireKnown(em, { aircraftId: body.aircraftId });
      const row = await addRecord(em, REPORTS, {
        ...{ ...body, clubId, reporterId: receipt === null ? memberId : null },
        receiptDigest: receipt === null ? null : sha256(receipt),
      });
      const [view] = await reportViews(em, [row]);
      return { ...view!, receipt };
    };
    return this.db.run(clubId, work, { actorId: receipt === null ? memberId : null });
  }

  /** All for officers; for anybody else their own. */
  list(user: SignedIn, query: ReportsQuery): Promise<SafetyReportPage> {
    const { clubId, memberId } = user;
    const whose = hasAnyRole(user, ...OFFICERS) ? {} : { reporterId: memberId };
    const state = query.state === undefined ? {} : { state: query.state };
    const work = async (em: EntityManager) => {
      const page = await pageOfRecords(em, REPORTS, { clubId, ...whose, ...state }, query, true);
      return { items: await reportViews(em, page.items), nextCursor: page.nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read(user: SignedIn, id: string): Promise<SafetyReportView> {
    const { clubId } = user;
    const work = async (em: EntityManager) => {
      const row = await findRecord(em, REPORTS, { clubId, id });
      assertOwnOr(user, row.reporterId ?? '', OFFICERS);
      return (await reportViews(em, [row]))[0]!;
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 404 for a receipt of no report of the club. */
  byReceipt({ clubId }: SignedIn, receipt: string): Promise<ReceiptView> {
    const work = async (em: EntityManager) => {
      const row = await em.findOne(SafetyReport, { where: { clubId, receiptDigest: sha256(receipt) } });
      if (!row) throw notThere('receipt');
      const [view] = await reportViews(em, [row]);
      return show(ReceiptView, view!);
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  addStep({ clubId, memberId }: SignedIn, reportId: string, body: NewSafetyStep): Promise<SafetyStepView> {
    const work = async (em: EntityManager) => {
      await openReport(em, clubId, reportId);
      await requireKnown(em, { memberId: body.responsibleId }, NAMES);
      return stepView(em, await addRecord(em, STEPS, { ...body, clubId, reportId }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** An officer's, or of whoever sees to it. */
  editStep(
    user: SignedIn,
    place: { reportId: string; id: string },
    version: number,
    changes: SafetyStepChanges,
  ): Promise<SafetyStepView> {
    const { clubId, memberId } = user;
    const work = async (em: EntityManager) => {
      const change = async (row: SafetyStep) => {
        assertOwnOr(user, row.responsibleId, OFFICERS);
        await openReport(em, clubId, place.reportId);
        await requireKnown(em, { memberId: changes.responsibleId }, NAMES);
        const doneOn = changes.doneOn === undefined ? row.doneOn : changes.doneOn;
        const outcome = changes.outcome === undefined ? row.outcome : changes.outcome;
        if ((doneOn === null) !== (outcome === null))
          throw valueRefused(
            doneOn === null ? 'doneOn' : 'outcome',
            'Say when the step was done together with what came of it.',
          );
        if (doneOn !== null) await this.requirePast(em, clubId, 'doneOn', doneOn);
        return { ...changes };
      };
      return stepView(em, await editRecord(em, STEPS, { where: { clubId, ...place }, version, change }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 while a step is open. */
  close({ clubId, memberId }: SignedIn, id: string, finding: string): Promise<SafetyReportView> {
    const work = async (em: EntityManager) => {
      const row = await openReport(em, clubId, id);
      const open = await em.countBy(SafetyStep, { clubId, reportId: id, doneOn: IsNull() });
      if (open > 0) throw new ProblemException('report-steps-open');
      const closed = await writeRecord(em, REPORTS, row, {
        ...{ state: 'closed' as const, finding, closedAt: this.clock.now(), closedBy: memberId },
      });
      return (await reportViews(em, [closed]))[0]!;
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  private async requirePast(em: EntityManager, clubId: string, field: string, on: string): Promise<void> {
    const today = await clubToday(em, clubId, this.clock.now());
    if (on > today) throw valueRefused(field, `It is ${today} at the club; give a day that has come.`);
  }
}

async function openReport(em: EntityManager, clubId: string, id: string): Promise<SafetyReport> {
  const row = await findRecord(em, REPORTS, { clubId, id }, { lock: true });
  if (row.state === 'closed') throw new ProblemException('report-closed');
  return row;
}
