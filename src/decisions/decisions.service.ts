import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { hasAnyRole } from '../accounts/roles.js';
import type { SignedIn } from '../accounts/current-user.js';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { newId } from '../platform/ids.js';
import { ProblemException } from '../platform/problems/index.js';
import { decide, rulesetFor, toSeconds, type Answer, type Policy } from '../rules/index.js';
import { findDecision, storeDecisions, type Decided, type StoredDecision } from './decision-store.js';
import type { AskDto, FlightRequestDto } from './flight-request.dto.js';
import { gatherSheets } from './gather/sheets.js';
import { replay, type Replay } from './replay.js';

const RANK: Record<Answer, number> = {
  yes: 0,
  'yes-with-conditions': 1,
  'dual-only': 2,
  'ask-officer': 3,
  no: 4,
};

/** Asks the engine, stores what it says, and judges stored decisions again. */
@Injectable()
export class DecisionsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Answers a question for the aircraft named, or for the whole fleet, best answer first; every decision is stored. */
  async ask(user: SignedIn, question: AskDto): Promise<Decided[]> {
    const { aircraftIds, ...request } = question;
    return this.db.run(
      user.clubId,
      async (em) => {
        const { decided } = await this.decideIn(em, user, request, aircraftIds ?? null);
        return [...decided].sort((a, b) => RANK[a.decision.answer] - RANK[b.decision.answer]);
      },
      { actorId: user.memberId },
    );
  }

  /** Gathers, judges and stores inside a running transaction: what a booking calls once it holds its locks. */
  async decideIn(
    em: EntityManager,
    user: SignedIn,
    request: FlightRequestDto,
    aircraftIds: string[] | null,
    exceptBookingId: string | null = null,
  ): Promise<{ decided: Decided[]; policy: Policy }> {
    const memberId = this.memberOf(user, request);
    const knownAt = this.clock.now();
    this.refuseThePast(request, knownAt);
    const { sheets, policy } = await gatherSheets(em, {
      request,
      memberId,
      aircraftIds,
      knownAt,
      exceptBookingId,
    });
    const decided = sheets.map((sheet): Decided => ({
      id: newId(),
      sheet,
      decision: decide(sheet, policy, rulesetFor(sheet.jurisdiction, policy)),
    }));
    await storeDecisions(em, decided, policy, user.memberId);
    return { decided, policy };
  }

  /** A stored decision; a member sees their own, instructors and officers everybody's. */
  async find(user: SignedIn, id: string): Promise<StoredDecision> {
    const stored = await this.db.run(user.clubId, (em) => findDecision(em, id), { readOnly: true });
    if (!stored || !this.maySee(user, stored.memberId)) throw noDecision(id);
    return stored;
  }

  /** Judges a stored decision's facts again with the rules of today. */
  async replay(user: SignedIn, id: string): Promise<Replay> {
    return replay(await this.find(user, id));
  }

  /** The member whose flight it is: oneself, or for instructors and officers anyone. */
  private memberOf(user: SignedIn, request: FlightRequestDto): string {
    const memberId = request.memberId ?? user.memberId;
    if (!this.maySee(user, memberId)) {
      throw new ProblemException('forbidden', {
        status: 403,
        title: 'Not yours to ask',
        detail:
          'Ask for yourself. Instructors, safety officers and administrators may ask for another member.',
        field: 'memberId',
      });
    }
    return memberId;
  }

  private maySee(user: SignedIn, memberId: string): boolean {
    return (
      memberId === user.memberId ||
      hasAnyRole(user, 'instructor', 'safety-officer', 'administrator', 'maintenance-coordinator')
    );
  }

  /** A departure long gone is a slip of the pen; one a few minutes ago is somebody at the aircraft. */
  private refuseThePast(request: FlightRequestDto, knownAt: string): void {
    if (toSeconds(request.departs) >= toSeconds(knownAt) - 15 * 60) return;
    throw new ProblemException('flight-invalid', {
      status: 422,
      title: 'The flight cannot be read',
      detail: `The departure has passed (it is ${knownAt}); give a time to come.`,
      field: 'departs',
    });
  }
}

const noDecision = (id: string): ProblemException =>
  new ProblemException('not-found', {
    status: 404,
    title: 'Not found',
    detail: `There is no decision ${id} that you may see. Check the id.`,
  });
