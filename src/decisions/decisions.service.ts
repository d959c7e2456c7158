import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { assertOwnOr, OFFICERS, READERS } from '../members/members.access.js';
import { assertTaughtOr } from '../members/students.js';
import { pageOf, readCursor, type Page } from '../platform/http/index.js';
import { newId } from '../platform/ids.js';
import { ProblemException } from '../platform/problems/index.js';
import { judge, toSeconds, type Answer, type Policy } from '../rules/index.js';
import { keepPasted } from '../weather/reports/pasted.js';
import { WeatherService } from '../weather/weather.service.js';
import { Sealer } from './audit/sealer.js';
import { listDecisions, type DecisionRow } from './decision-list.js';
import { storeDecisions, type Decided } from './decision-store.js';
import type { DecisionsQuery } from './decision-list.dto.js';
import { flightTimes } from './flight-facts.js';
import type { AskDto, FlightRequestDto } from './flight-request.dto.js';
import { assertMayAsk, mayRead, mightRead, notToAsk } from './may-read.js';
import { requireKnown } from './gather/known.js';
import { gatherSheets } from './gather/sheets.js';
import { damaged } from './replay/damaged.js';
import { replay, type Replay } from './replay/replay.js';
import { DamagedDecision, findDecision, type StoredDecision } from './stored-decision.js';

const RANK: Record<Answer, number> = {
  yes: 0,
  'yes-with-conditions': 1,
  'dual-only': 2,
  'ask-officer': 3,
  no: 4,
};

/** What is known of a flight that is in the calendar already. */
export interface BookedAlready {
  /** It does not stand in its own way. */
  exceptBookingId?: string | null;
  /** It has departed: only its end is asked about. */
  begun?: boolean;
}

/** Asks the engine, stores what it says, and judges stored decisions again. */
@Injectable()
export class DecisionsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly sealer: Sealer,
    private readonly weather: WeatherService,
  ) {}

  /** Answers a question for the aircraft named, or for the whole fleet, best answer first; every decision is stored. */
  async ask(user: SignedIn, question: AskDto): Promise<Decided[]> {
    const { aircraftIds, ways: _ways, ...request } = question;
    this.mayAsk(user, request);
    await this.bringWeather(user, request, aircraftIds ?? null);
    return this.db.run(
      user.clubId,
      async (em) => {
        const { decided } = await this.decideIn(em, user, request, aircraftIds ?? null);
        return [...decided].sort((a, b) => RANK[a.decision.answer] - RANK[b.decision.answer]);
      },
      { actorId: user.memberId },
    );
  }

  /** Whether weather reports are fetched at all. */
  get fetchesWeather(): boolean {
    return this.weather.fetches;
  }

  /** Fetches the current weather reports of a flight; before any transaction, so that none waits for the source. */
  async bringWeather(user: SignedIn, request: FlightRequestDto, aircraftIds: string[] | null): Promise<void> {
    await this.weather.bringIn(user.clubId, request, aircraftIds);
  }

  /** Gathers, judges and stores inside a running transaction: what a booking calls once it holds its locks. */
  async decideIn(
    em: EntityManager,
    user: SignedIn,
    asked: FlightRequestDto & { planned?: boolean },
    aircraftIds: string[] | null,
    { exceptBookingId = null, begun = false }: BookedAlready = {},
  ): Promise<{ decided: Decided[]; policy: Policy }> {
    const memberId = this.mayAsk(user, asked, begun);
    this.sealer.note(user.clubId);
    const knownAt = this.clock.now();
    const { reports, ...request } = asked;
    await assertMayAsk(em, user, { memberId, instructorId: request.instructorId }, knownAt);
    if (reports) await keepPasted(em, reports, { memberId, pastedBy: user.memberId, now: knownAt });
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
      decision: judge(sheet, policy),
    }));
    await storeDecisions(em, decided, policy, user.memberId);
    return { decided, policy };
  }

  /** A page of stored decisions of one member, newest first: one's own, an instructor's students', or for officers anyone's. */
  list(user: SignedIn, query: DecisionsQuery): Promise<Page<DecisionRow>> {
    const memberId = query.memberId ?? user.memberId;
    assertOwnOr(user, memberId, READERS);
    const { aircraftId = null, answer = null, limit } = query;
    const beforeId = readCursor(query.cursor);
    return this.db.run(
      user.clubId,
      async (em) => {
        await requireKnown(em, { memberId, aircraftId });
        await assertTaughtOr(em, user, memberId, { roles: OFFICERS, now: this.clock.now() });
        const rows = await listDecisions(em, { memberId, aircraftId, answer, beforeId, limit: limit + 1 });
        return pageOf(rows, limit);
      },
      { readOnly: true },
    );
  }

  /** A stored decision; one's own, an instructor's students' and own lessons', or for officers anyone's. */
  async find(user: SignedIn, id: string): Promise<StoredDecision> {
    return damaged(async () => {
      const stored = await this.db.run(
        user.clubId,
        async (em) => {
          const found = await findDecision(em, id);
          if (!found) return null;
          const instructorId = found instanceof DamagedDecision ? null : found.sheet.flight.instructorId;
          const whose = { memberId: found.memberId, instructorId };
          return (await mayRead(em, user, whose, this.clock.now())) ? found : null;
        },
        { readOnly: true },
      );
      if (!stored) throw noDecision(id);
      if (stored instanceof DamagedDecision) throw stored;
      return stored;
    });
  }

  /** Judges a stored decision's facts again with the rules of then. */
  async replay(user: SignedIn, id: string): Promise<Replay> {
    const stored = await this.find(user, id);
    return damaged(async () => replay(stored, user));
  }

  /**
   * The member whose flight it is: oneself, or for instructors and officers others. Asked before anything is looked up; whether an
   * instructor may, `decideIn` finds out.
   *
   * @throws ProblemException 403 for somebody else's flight; 422 for times in the wrong order or gone by.
   */
  mayAsk(user: SignedIn, request: FlightRequestDto, begun = false): string {
    const memberId = request.memberId ?? user.memberId;
    if (!mightRead(user, memberId)) throw notToAsk(user);
    flightTimes(request);
    if (!begun) refuseThePast(request, this.clock.now());
    return memberId;
  }
}

/** A departure long gone is a slip of the pen; one a few minutes ago is somebody at the aircraft. */
function refuseThePast(request: FlightRequestDto, knownAt: string): void {
  if (toSeconds(request.departs) >= toSeconds(knownAt) - 15 * 60) return;
  throw new ProblemException('flight-invalid', {
    status: 422,
    title: 'The flight cannot be read',
    detail: `The departure has passed (it is ${knownAt}); give a time to come.`,
    field: 'departs',
  });
}

const noDecision = (id: string): ProblemException =>
  new ProblemException('not-found', {
    status: 404,
    title: 'Not found',
    detail: `There is no decision ${id} that you may see. Check the id.`,
  });
