import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubZone } from '../../clubs/club-time.js';
import type { Decided } from '../../decisions/decision-store.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { requireKnown } from '../../decisions/gather/known.js';
import { OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { keepOverride, refusal } from '../allowed.js';
import { BookingDto } from '../booking.dto.js';
import type { BookingRow } from '../booking.entity.js';
import { bringWeatherOf } from '../bring-weather.js';
import { slotTaken } from '../bookings.problems.js';
import { conflictsOf, findBooking } from '../bookings.sql.js';
import { crewJudged } from '../crew.js';
import { endLapsedHolds } from '../holds/lapsed.js';
import type { StoredAnswer } from '../idempotency.js';
import { underKey, type Done } from '../keyed.js';
import type { AcceptHandOverDto, HandOverDto } from './changes.dto.js';
import { notOpen, notYours } from './changes.problems.js';
import { lockForChange, noteChange, openBooking, writeState } from './changes.sql.js';
import { closeOffer, offer, openOffers } from './hand-overs.sql.js';
import { tellOffered } from './tell-offered.js';

const refused = (detail: string, field?: string): ProblemException =>
  new ProblemException('hand-over-refused', { detail, ...(field ? { field } : {}) });

/**
 * Hands a booked flight over to another member: offered by who has it or an officer, taken by the other member or by an officer for
 * them, and judged for who is to fly it. Until then it stays with who has it.
 */
@Injectable()
export class HandOverService {
  constructor(
    readonly db: TenantDb,
    readonly decisions: DecisionsService,
    private readonly clock: Clock,
  ) {}

  list(user: SignedIn): Promise<HandOverDto[]> {
    return this.db.run(user.clubId, (em) => openOffers(em, user.memberId, this.clock.now()), {
      readOnly: true,
    });
  }

  /** Offers it. An offer that is open must be withdrawn first. */
  offer(user: SignedIn, of: { id: string; ifMatch: number; toId: string }): Promise<BookingRow> {
    const { id, ifMatch, toId } = of;
    return this.db.run(
      user.clubId,
      async (em) => {
        const { row } = await lockForChange(em, id);
        if (row.memberId !== user.memberId && !hasAnyRole(user, ...OFFICERS))
          throw notYours('Not yours to hand over', 'Who has booked the flight hands it over, or an officer.');
        requireVersion(row.rowVersion, ifMatch);
        this.requireToCome(row);
        await requireKnown(em, { memberId: toId }, { memberId: 'toId', aircraftId: 'aircraftId' });
        if (row.people.some(({ memberId }) => memberId === toId))
          throw refused('Whoever it is offered to is aboard already. Name somebody else.', 'toId');
        if (row.handOver)
          throw refused(`It is offered to ${row.handOver.toName} already. Withdraw that offer first.`);
        await offer(em, { bookingId: id, fromId: row.memberId, toId, offeredBy: user.memberId });
        await tellOffered(em, row, toId, this.clock.now());
        return (await findBooking(em, id))!;
      },
      { actorId: user.memberId },
    );
  }

  /** Declines the open offer, or withdraws it: who it is offered to, who has the flight, an officer. */
  close(user: SignedIn, id: string): Promise<BookingRow> {
    return this.db.run(
      user.clubId,
      async (em) => {
        const { row } = await lockForChange(em, id);
        const { handOver } = row;
        const declines = handOver?.toId === user.memberId;
        if (!declines && row.memberId !== user.memberId && !hasAnyRole(user, ...OFFICERS))
          throw notYours(
            'Not yours to close',
            'Who it is offered to, who has the flight, or an officer closes an offer.',
          );
        if (!handOver) throw refused('Nothing is offered; it may have been taken or closed by now.');
        const outcome = declines ? 'declined' : 'withdrawn';
        await closeOffer(em, { bookingId: id, outcome, now: this.clock.now() });
        return (await findBooking(em, id))!;
      },
      { actorId: user.memberId },
    );
  }

  /** Takes it over: judged for the new member, who accepts it themselves or through an officer. */
  async accept(
    user: SignedIn,
    key: string,
    of: { id: string; ifMatch: number } & AcceptHandOverDto,
  ): Promise<StoredAnswer> {
    await bringWeatherOf(this, user, of.id);
    return underKey(this.db, user, key, {
      request: { accept: of.id, ...of },
      conflict: async (em) => {
        const { row } = await openBooking(em, of.id);
        return row.handOver ? this.conflictIn(em, user, row, row.handOver.toId) : null;
      },
      work: (em) => this.acceptIn(em, user, of),
    });
  }

  private async acceptIn(
    em: EntityManager,
    user: SignedIn,
    of: { id: string; ifMatch: number } & AcceptHandOverDto,
  ): Promise<Done> {
    const offered = (await openBooking(em, of.id)).row.handOver;
    const open = await lockForChange(em, of.id, { memberIds: offered ? [offered.toId] : [] });
    const { row } = open;
    const toId = row.handOver?.toId;
    if (toId !== user.memberId && !hasAnyRole(user, ...OFFICERS))
      throw notYours(
        'Not offered to you',
        'Who the flight is offered to takes it over, or an officer for them.',
      );
    requireVersion(row.rowVersion, of.ifMatch);
    // Offered to somebody else since the locks were taken: whoever accepts has seen another offer.
    if (!row.handOver || toId === undefined || row.handOver.id !== offered?.id)
      throw refused('Nothing is offered; it may have been taken or closed by now.');
    this.requireToCome(row);
    const now = this.clock.now();
    await endLapsedHolds(em, { ...row, memberIds: [toId], now });
    const taken = await this.conflictIn(em, user, row, toId);
    if (taken) return { refused: taken };
    const { actingPilotId, ...rest } = open.request;
    // Who acted as pilot in command before is not aboard any more.
    const acting = actingPilotId === undefined || actingPilotId === row.memberId ? {} : { actingPilotId };
    const request = { ...rest, ...acting, memberId: toId };
    const already = { exceptBookingId: row.id };
    const asked = { ...request, planned: true };
    const { decided, policy } = await this.decisions.decideIn(em, user, asked, [row.aircraftId], already);
    const [one] = decided as [Decided];
    const no = refusal(one, policy, user, of.override !== undefined);
    if (no) return { refused: no };
    await writeState(em, row, {
      ...{ kind: row.kind, aircraftId: row.aircraftId, memberId: toId, note: row.note, request },
      ...{ departs: row.departs, arrives: row.arrives, decisionId: one.id },
      ...{ expectedTenths: one.sheet.flight.plannedTenths, crew: crewJudged(one.sheet) },
    });
    await keepOverride(em, user, { bookingId: row.id, decided: one, reason: of.override?.reason });
    await closeOffer(em, { bookingId: row.id, outcome: 'accepted', now });
    await noteChange(em, {
      ...{ bookingId: row.id, act: 'handed-over', byId: user.memberId, decisionId: one.id, at: now },
      ...{ before: { memberId: row.memberId }, after: { memberId: toId } },
    });
    return { status: 200, body: BookingDto.from((await findBooking(em, row.id))!, user) };
  }

  private async conflictIn(
    em: EntityManager,
    user: SignedIn,
    row: BookingRow,
    toId: string,
  ): Promise<ProblemException | null> {
    const { aircraftId, departs, arrives } = row;
    const memberIds = [toId];
    const [conflict] = await conflictsOf(em, { aircraftId, memberIds, departs, arrives, exceptId: row.id });
    if (!conflict) return null;
    return slotTaken(conflict, { aircraftId, memberIds }, await clubZone(em, user.clubId));
  }

  private requireToCome(row: BookingRow): void {
    if (row.kind !== 'flight') throw refused('Only a flight is handed over. Confirm a hold first.');
    if (row.status !== 'booked' || row.departs <= this.clock.now())
      throw notOpen(
        'It can no longer be handed over',
        'Only a booked flight that has not begun is handed over.',
      );
  }
}
