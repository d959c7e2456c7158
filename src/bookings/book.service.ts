import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { clubZone } from '../clubs/club-time.js';
import type { Decided } from '../decisions/decision-store.js';
import { DecisionsService } from '../decisions/decisions.service.js';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { newId } from '../platform/ids.js';
import type { ProblemException } from '../platform/problems/index.js';
import { keepOverride, refusal } from './allowed.js';
import { BookDto, BookingDto } from './booking.dto.js';
import type { BookingRow } from './booking.entity.js';
import { noAircraft, slotTaken } from './bookings.problems.js';
import { conflictsOf, findBooking, insertBooking, lockAircraft, lockPeople } from './bookings.sql.js';
import { crewJudged, crewOf } from './crew.js';
import { endLapsedHolds } from './holds/lapsed.js';
import type { StoredAnswer } from './idempotency.js';
import { underKey } from './keyed.js';
import { keptForOthers } from './standby/kept-slots.sql.js';

/** A booking as it stands, or why there is none. */
export type Booked = { booking: BookingRow } | { refused: ProblemException };

/**
 * Judges and books in one transaction.
 *
 * The aircraft's row is locked first, so bookings of one aircraft are judged one after another and hours booked before
 * an inspection are counted once; then the crew's rows, in order of id. The exclusion constraints stay the last judge of
 * overlaps. A refusal commits too: the decision behind it is kept.
 */
@Injectable()
export class BookService {
  constructor(
    private readonly db: TenantDb,
    private readonly decisions: DecisionsService,
    private readonly clock: Clock,
  ) {}

  /** Books, or gives the stored answer of an earlier request with the same key. */
  async book(user: SignedIn, key: string, request: BookDto): Promise<StoredAnswer> {
    await this.decisions.bringWeather(user, request, [request.aircraftId]);
    return underKey(this.db, user, key, {
      request,
      conflict: (em) => this.conflictIn(em, request, user),
      work: async (em) => {
        const done = await this.lockAndBookIn(em, user, request);
        return 'refused' in done ? done : { status: 201, body: BookingDto.from(done.booking, user) };
      },
    });
  }

  /** Judges and books for who holds the locks of the aircraft and the crew. */
  async bookIn(
    em: EntityManager,
    user: SignedIn,
    request: BookDto,
    seriesId: string | null = null,
  ): Promise<Booked> {
    const now = this.clock.now();
    await endLapsedHolds(em, { ...request, memberIds: this.crew(user, request), now });
    const whose = request.memberId ?? user.memberId;
    // Whoever lost the slot is told at once; judging takes longer, and others wait for this lock.
    const taken =
      (await this.conflictIn(em, request, user)) ??
      (await keptForOthers(em, { ...request, clubId: user.clubId, memberId: whose, now }));
    if (taken) return { refused: taken };
    const { aircraftId, note = '', override, ...flight } = request;
    const { decided, policy } = await this.decisions.decideIn(em, user, flight, [aircraftId]);
    const [one] = decided as [Decided];
    const refused = refusal(one, policy, user, override !== undefined);
    if (refused) return { refused };
    // Pasted reports are kept as weather reports; they say nothing of the flight by its booking's day.
    const { reports: _reports, ...booked } = flight;
    const id = newId();
    const { departs, arrives, memberId, plannedTenths } = one.sheet.flight;
    await insertBooking(em, {
      ...{ id, kind: 'flight', aircraftId, memberId, departs, arrives, expectedTenths: plannedTenths },
      ...{ request: booked, note, decisionId: one.id, people: crewJudged(one.sheet), seriesId },
    });
    await keepOverride(em, user, { bookingId: id, decided: one, reason: override?.reason });
    return { booking: (await findBooking(em, id))! };
  }

  /** The same for who books as a part of something else, and holds no locks yet. */
  async lockAndBookIn(em: EntityManager, user: SignedIn, request: BookDto): Promise<Booked> {
    this.decisions.mayAsk(user, request);
    if (!(await lockAircraft(em, request.aircraftId))) throw noAircraft(request.aircraftId);
    await lockPeople(em, this.crew(user, request));
    return this.bookIn(em, user, request);
  }

  private crew(user: SignedIn, request: BookDto): string[] {
    return crewOf({ ...request, memberId: request.memberId ?? user.memberId });
  }

  private async conflictIn(
    em: EntityManager,
    request: BookDto,
    user: SignedIn,
  ): Promise<ProblemException | null> {
    const memberIds = this.crew(user, request);
    const { aircraftId, departs, arrives } = request;
    const [conflict] = await conflictsOf(em, { aircraftId, memberIds, departs, arrives, exceptId: null });
    if (!conflict) return null;
    return slotTaken(conflict, { aircraftId, memberIds }, await clubZone(em, user.clubId));
  }
}
