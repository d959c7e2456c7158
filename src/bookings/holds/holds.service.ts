import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubToday, clubZone } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import type { Decided } from '../../decisions/decision-store.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { requireKnown } from '../../decisions/gather/known.js';
import { OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { toInstant, toSeconds } from '../../rules/index.js';
import { keepOverride, refusal } from '../allowed.js';
import { BookingDto } from '../booking.dto.js';
import { bringWeatherOf } from '../bring-weather.js';
import { noAircraft, slotTaken } from '../bookings.problems.js';
import { conflictsOf, findBooking, insertBooking, lockAircraft, lockPeople } from '../bookings.sql.js';
import { notOpen, notYours } from '../changes/changes.problems.js';
import { lockForChange, noteChange, writeState } from '../changes/changes.sql.js';
import { crewJudged } from '../crew.js';
import type { StoredAnswer } from '../idempotency.js';
import { underKey, type Done } from '../keyed.js';
import { keptForOthers } from '../standby/kept-slots.sql.js';
import type { ConfirmHoldDto, HoldDto } from './holds.dto.js';
import { endLapsedHolds } from './lapsed.js';

/** Keeps a slot for a checkout flight until it is judged or its time is up. */
@Injectable()
export class HoldsService {
  constructor(
    readonly db: TenantDb,
    readonly decisions: DecisionsService,
    private readonly clock: Clock,
  ) {}

  hold(user: SignedIn, key: string, hold: HoldDto): Promise<StoredAnswer> {
    const { aircraftId, memberId, departs, arrives } = hold;
    const crew = [memberId, user.memberId];
    const conflict = async (em: EntityManager): Promise<ProblemException | null> => {
      const [found] = await conflictsOf(em, {
        aircraftId,
        memberIds: crew,
        departs,
        arrives,
        exceptId: null,
      });
      const zone = await clubZone(em, user.clubId);
      return found ? slotTaken(found, { aircraftId, memberIds: crew }, zone) : null;
    };
    return underKey(this.db, user, key, {
      request: { hold },
      conflict,
      work: async (em) => {
        this.decisions.mayAsk(user, { ...hold, purpose: 'checkout', personsOnBoard: 2 });
        if (memberId === user.memberId)
          throw new ProblemException('hold-refused', {
            status: 422,
            detail: 'Nobody checks themselves out. Name the member the checkout is for.',
            field: 'memberId',
          });
        await requireKnown(em, { memberId });
        if (!(await lockAircraft(em, aircraftId))) throw noAircraft(aircraftId);
        await lockPeople(em, crew);
        const now = this.clock.now();
        await endLapsedHolds(em, { aircraftId, memberIds: crew, departs, arrives, now });
        const { clubId } = user;
        const taken =
          (await conflict(em)) ??
          (await keptForOthers(em, { clubId, aircraftId, memberId, departs, arrives, now }));
        if (taken) return { refused: taken };
        const holdUntil = await this.until(em, user, departs, now);
        return this.keep(em, user, hold, holdUntil);
      },
    });
  }

  private async keep(em: EntityManager, user: SignedIn, hold: HoldDto, holdUntil: string): Promise<Done> {
    const { aircraftId, memberId, departs, arrives, note = '' } = hold;
    const id = newId();
    const flight = { departs, arrives, purpose: 'checkout', personsOnBoard: 2 };
    await insertBooking(em, {
      ...{ id, kind: 'hold', aircraftId, memberId, departs, arrives, note, decisionId: null, holdUntil },
      request: { ...flight, memberId, instructorId: user.memberId },
      // As for a flight whose hours were not told: the whole time between departure and arrival.
      expectedTenths: Math.ceil((toSeconds(arrives) - toSeconds(departs)) / 360),
      people: [
        { memberId, role: 'pilot' },
        { memberId: user.memberId, role: 'instructor' },
      ],
    });
    return { status: 201, body: BookingDto.from((await findBooking(em, id))!, user) };
  }

  /** Until when it keeps the slot: as long as the club allows, and never beyond its own departure. */
  private async until(em: EntityManager, user: SignedIn, departs: string, now: string): Promise<string> {
    const { clubId, memberId } = user;
    const on = await clubToday(em, clubId, now);
    const hours = await policyNumber(em, { clubId, parameterId: 'club.holds.hours', on });
    const most = await policyNumber(em, { clubId, parameterId: 'club.holds.at-once', on });
    if (!hours || !most)
      throw new ProblemException('hold-refused', {
        detail: 'The policy of the club allows no holds. Book the checkout instead.',
      });
    const [held]: { n: number }[] = await em.query(
      `SELECT count(*)::int AS n FROM bookings b JOIN booking_people p ON p.club_id = b.club_id AND p.booking_id = b.id
        WHERE b.club_id = bellcrank_club() AND b.kind = 'hold' AND b.status = 'booked' AND b.hold_until > $1::timestamptz
          AND p.member_id = $2 AND p.role = 'instructor'`,
      [now, memberId],
    );
    if (held!.n >= most)
      throw new ProblemException('hold-refused', {
        detail: `You hold ${held!.n} slots, the most the club allows. Confirm one, or give one back.`,
      });
    const [end, leaves] = [toSeconds(now) + hours * 3600, toSeconds(departs)];
    if (leaves <= toSeconds(now))
      throw new ProblemException('hold-refused', {
        status: 422,
        detail: 'It departs now; a hold would be over at once. Book the checkout instead.',
        field: 'departs',
      });
    return toInstant(Math.min(end, leaves));
  }

  async confirm(
    user: SignedIn,
    key: string,
    of: { id: string; ifMatch: number } & ConfirmHoldDto,
  ): Promise<StoredAnswer> {
    await bringWeatherOf(this, user, of.id);
    return underKey(this.db, user, key, {
      request: { confirm: of.id, ...of },
      // It keeps its own slot: nothing can be in the way of it.
      conflict: () => Promise.resolve(null),
      work: (em) => this.confirmIn(em, user, of),
    });
  }

  private async confirmIn(
    em: EntityManager,
    user: SignedIn,
    of: { id: string; ifMatch: number } & ConfirmHoldDto,
  ): Promise<Done> {
    const { row, request } = await lockForChange(em, of.id);
    if (!row.people.some(({ memberId }) => memberId === user.memberId) && !hasAnyRole(user, ...OFFICERS))
      throw notYours('Not yours to confirm', 'One of its two people confirms a hold, or an officer.');
    requireVersion(row.rowVersion, of.ifMatch);
    const now = this.clock.now();
    if (row.kind !== 'hold' || row.status !== 'booked')
      throw notOpen('There is nothing to confirm', 'Only a hold that still stands is confirmed.');
    if (row.holdUntil! <= now)
      throw notOpen(
        'Its time is up',
        `The slot was held until ${row.holdUntil}. Book it if it is still free.`,
      );
    const already = { exceptBookingId: row.id };
    const { decided, policy } = await this.decisions.decideIn(em, user, request, [row.aircraftId], already);
    const [one] = decided as [Decided];
    const no = refusal(one, policy, user, of.override !== undefined);
    if (no) return { refused: no };
    await writeState(em, row, {
      ...{ kind: 'flight', aircraftId: row.aircraftId, memberId: row.memberId, note: row.note, request },
      ...{ departs: row.departs, arrives: row.arrives, decisionId: one.id },
      ...{ expectedTenths: one.sheet.flight.plannedTenths, crew: crewJudged(one.sheet) },
    });
    await keepOverride(em, user, { bookingId: row.id, decided: one, reason: of.override?.reason });
    await noteChange(em, {
      ...{ bookingId: row.id, act: 'confirmed', byId: user.memberId, decisionId: one.id, at: now },
      ...{ before: { kind: 'hold' }, after: { kind: 'flight' } },
    });
    return { status: 200, body: BookingDto.from((await findBooking(em, row.id))!, user) };
  }
}
