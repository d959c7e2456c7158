import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday, clubZone } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { DecisionDto } from '../../decisions/decision.dto.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { assertMayAsk } from '../../decisions/may-read.js';
import { asSeenBy } from '../../decisions/privacy.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { latestReadings, meterViews } from '../../fleet/meters/latest-readings.js';
import { MetersService } from '../../fleet/meters/meters.service.js';
import { openSquawks } from '../../fleet/squawks/open-squawks.js';
import { Squawk } from '../../fleet/squawks/squawk.entity.js';
import { squawkViews } from '../../fleet/squawks/squawk.views.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { plusSeconds } from '../../rules/index.js';
import { BookingDto } from '../booking.dto.js';
import { bringWeatherOf } from '../bring-weather.js';
import type { BookingRow } from '../booking.entity.js';
import { noAircraft, noBooking, notBookable, slotTaken } from '../bookings.problems.js';
import { conflictsOf, findBooking, lockAircraft, lockBooking, lockPeople } from '../bookings.sql.js';
import { flightView } from '../flights/flight-view.js';
import { mayDispatch } from '../flights/who.js';
import type { StoredAnswer } from '../idempotency.js';
import { type Done, underKey } from '../keyed.js';
import { putOut } from '../overdue/aircraft-out.js';
import { keptForOthers } from '../standby/kept-slots.sql.js';
import { type DispatchDto, DispatchSheet, type LookDto } from './dispatch.dto.js';
import {
  cannotGo,
  conditionsNotAccepted,
  notBooked,
  squawkNotOpen,
  squawksNotRead,
} from './dispatch.problems.js';
import { insertDispatch } from './dispatch.sql.js';
import { judgeNow, type JudgedNow } from './judge-now.js';
import { confirmMeters } from './meters-out.js';
import { SELF_ASSESSMENT, SELF_ASSESSMENT_SOURCE } from './self-assessment.js';
import { swapBooking } from './swap.js';

const EARLIEST = 'club.dispatch.earliest-minutes';

/**
 * Hands aircraft out. Locks are taken in the order in which bookings take them: the aircraft, the people, the booking. A
 * refusal commits too, so that the decision behind it is kept, and gives the key back.
 */
@Injectable()
export class DispatchService {
  constructor(
    readonly db: TenantDb,
    private readonly clock: Clock,
    readonly decisions: DecisionsService,
    private readonly meters: MetersService,
  ) {}

  /** Judges the flight as of now and gathers what is to be looked at. The decision is stored. */
  async look(user: SignedIn, bookingId: string, at: LookDto): Promise<DispatchSheet> {
    await bringWeatherOf(this, user, bookingId, at);
    const work = async (em: EntityManager): Promise<DispatchSheet> => {
      const booking = await this.toDispatch(em, user, bookingId, at);
      await this.requireThere(em, at);
      const from = await this.requireTime(em, user, booking, { early: true });
      const now = this.clock.now();
      const judged = await judgeNow(em, this.decisions, { user, booking, at, now });
      const aircraft = await findRecord(em, AIRCRAFT, {
        clubId: user.clubId,
        id: at.aircraftId ?? booking.aircraftId,
      });
      const squawks = await openSquawks(em, user.clubId, aircraft.id);
      const { decided, mayGo, setAside } = judged;
      return {
        booking: BookingDto.from(booking, user),
        decision: DecisionDto.from(decided, user),
        ...{ mayGo, setAside, from },
        squawks: await squawkViews(em, aircraft, squawks),
        meters: meterViews(aircraft, await latestReadings(em, user.clubId, [aircraft.id])),
        selfAssessment: SELF_ASSESSMENT.map((item) => ({ ...item })),
        selfAssessmentSource: SELF_ASSESSMENT_SOURCE,
        caution: decided.decision.caution,
      };
    };
    return this.db.run(user.clubId, work, { actorId: user.memberId });
  }

  /** Hands the aircraft out, or gives the stored answer of an earlier request with the same key. */
  async dispatch(user: SignedIn, key: string, bookingId: string, body: DispatchDto): Promise<StoredAnswer> {
    await bringWeatherOf(this, user, bookingId, body);
    return underKey(this.db, user, key, {
      request: { act: 'dispatch', bookingId, ...body },
      work: (em) => this.handOut(em, user, bookingId, body),
    });
  }

  private async handOut(
    em: EntityManager,
    user: SignedIn,
    bookingId: string,
    body: DispatchDto,
  ): Promise<Done> {
    const seen = await this.toDispatch(em, user, bookingId, body);
    await this.requireThere(em, body);
    await this.requireSquawks(em, user.clubId, body.aircraftId ?? seen.aircraftId, body.squawksSeen);
    await this.lock(em, seen, body);
    const booking = (await findBooking(em, bookingId))!;
    if (booking.kind !== 'flight' || booking.status !== 'booked') throw notBooked(booking);
    await this.requireTime(em, user, booking);
    const aircraftId = body.aircraftId ?? booking.aircraftId;
    await this.requireIn(em, aircraftId);
    await this.requireRead(em, user.clubId, aircraftId, body.squawksSeen);
    if (!body.selfAssessed) throw new ProblemException('self-assessment-open', { field: 'selfAssessed' });
    const now = this.clock.now();
    const judged = await judgeNow(em, this.decisions, { user, booking, at: body, now });
    const { decided } = judged;
    if (!judged.mayGo)
      return { refused: notBookable(decided, decided.decision.answer === 'ask-officer', user) };
    const open = openConditions(user, judged, body.conditionsAccepted ?? []);
    if (open.length > 0) return { refused: conditionsNotAccepted(open) };
    const flown = await this.flownAs(em, { user, booking, body, judged, now });
    const confirmed = await confirmMeters(em, this.meters, {
      ...{ clubId: user.clubId, aircraftId, told: body.meters, now },
    });
    await insertDispatch(em, {
      ...{ id: newId(), bookingId: flown, decisionId: decided.id, by: user.memberId, at: now },
      ...{ personsOnBoard: body.personsOnBoard, fuelUsGal: body.fuelUsGal, oilQt: body.oilQt ?? null },
      ...{ squawksSeen: body.squawksSeen, conditionsAccepted: body.conditionsAccepted ?? [] },
      meters: confirmed,
    });
    await putOut(em, { bookingId: flown, dueBackAt: booking.arrives });
    return { status: 201, body: await flightView(em, user, flown, now) };
  }

  /** The booking, for whoever may hand out its aircraft. @throws 403, 404 */
  private async toDispatch(em: EntityManager, user: SignedIn, id: string, at: LookDto): Promise<BookingRow> {
    const booking = await findBooking(em, id);
    if (!booking) throw noBooking(id);
    mayDispatch(user, booking, at.memberId);
    // It is judged anew, and told what was found.
    const instructorId = booking.people.find(({ role }) => role === 'instructor')?.memberId;
    await assertMayAsk(
      em,
      user,
      { memberId: at.memberId ?? booking.memberId, instructorId },
      this.clock.now(),
    );
    return booking;
  }

  /** Whoever and whatever is named exists. */
  private async requireThere(em: EntityManager, { aircraftId, memberId }: LookDto): Promise<void> {
    const [there]: { aircraft: boolean; member: boolean }[] = await em.query(
      `SELECT EXISTS (SELECT 1 FROM aircraft WHERE club_id = bellcrank_club() AND id = $1) AS aircraft,
              EXISTS (SELECT 1 FROM members WHERE club_id = bellcrank_club() AND id = $2) AS member`,
      [aircraftId ?? null, memberId ?? null],
    );
    if (aircraftId !== undefined && !there!.aircraft) throw noAircraft(aircraftId);
    if (memberId !== undefined && !there!.member)
      throw new ProblemException('not-found', {
        field: 'memberId',
        detail: `The club has no member ${memberId}. Check the id.`,
      });
  }

  /** What was read are squawks of this aircraft. */
  private async requireSquawks(
    em: EntityManager,
    clubId: string,
    aircraftId: string,
    seen: string[],
  ): Promise<void> {
    const known = await em.countBy(Squawk, { clubId, aircraftId, id: In(seen) });
    if (known < seen.length) throw squawkNotOpen();
  }

  private async lock(em: EntityManager, booking: BookingRow, body: DispatchDto): Promise<void> {
    const aircraft = [...new Set([booking.aircraftId, body.aircraftId ?? booking.aircraftId])].sort();
    for (const id of aircraft) await lockAircraft(em, id);
    const people = booking.people.map(({ memberId }) => memberId);
    await lockPeople(em, body.memberId ? [...people, body.memberId] : people);
    await lockBooking(em, booking.id);
  }

  /** @returns from when it is handed out @throws 409 too early, or after its time */
  private async requireTime(
    em: EntityManager,
    user: SignedIn,
    booking: BookingRow,
    { early = false }: { early?: boolean } = {},
  ): Promise<string> {
    const now = this.clock.now();
    const { clubId } = user;
    if (booking.kind !== 'flight' || booking.status !== 'booked') throw notBooked(booking);
    if (booking.arrives <= now) throw cannotGo(`Its time ended at ${booking.arrives}. Book the flight anew.`);
    const on = await clubToday(em, clubId, now);
    const minutes = (await policyNumber(em, { clubId, parameterId: EARLIEST, on })) ?? 0;
    const from = plusSeconds(booking.departs, -minutes * 60);
    if (!early && now < from)
      throw cannotGo(`It is handed out from ${from} on, ${minutes} minutes before departure.`, { from });
    return from;
  }

  /** The aircraft is not out with somebody else. */
  private async requireIn(em: EntityManager, aircraftId: string): Promise<void> {
    const [out]: { id: string; name: string }[] = await em.query(
      `SELECT b.id, m.name FROM bookings b JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
        WHERE b.club_id = bellcrank_club() AND b.aircraft_id = $1 AND b.status = 'dispatched'`,
      [aircraftId],
    );
    if (out)
      throw cannotGo(`The aircraft is still out with ${out.name}. It has to be returned first.`, {
        bookingId: out.id,
      });
  }

  /** Every squawk that is open now was read; one that was closed meanwhile does no harm. */
  private async requireRead(
    em: EntityManager,
    clubId: string,
    aircraftId: string,
    seen: string[],
  ): Promise<void> {
    const open = await openSquawks(em, clubId, aircraftId);
    const unread = open.filter(({ id }) => !seen.includes(id)).map(({ id }) => id);
    if (unread.length > 0) throw squawksNotRead(unread);
  }

  /** The booking that is flown: this one, or the one that takes its place with another aircraft or pilot. */
  private async flownAs(
    em: EntityManager,
    of: { user: SignedIn; booking: BookingRow; body: DispatchDto; judged: JudgedNow; now: string },
  ): Promise<string> {
    const { user, booking, body, judged, now } = of;
    const { flight, aircraft } = judged.decided.sheet;
    if (aircraft.id === booking.aircraftId && flight.memberId === booking.memberId) return booking.id;
    const memberIds = [flight.memberId, flight.instructorId, flight.secondPilotId].filter(
      (id): id is string => id !== null,
    );
    const wanted = { aircraftId: aircraft.id, memberIds };
    const [conflict] = await conflictsOf(em, {
      ...{ ...wanted, departs: flight.departs, arrives: flight.arrives, exceptId: booking.id },
    });
    if (conflict) throw slotTaken(conflict, wanted, await clubZone(em, user.clubId));
    const { clubId } = user;
    const kept = await keptForOthers(em, { ...flight, clubId, aircraftId: aircraft.id, now });
    if (kept) throw kept;
    if (body.personsOnBoard < memberIds.length)
      throw new ProblemException('value-refused', {
        ...{ status: 422, field: 'personsOnBoard' },
        detail: 'The crew alone are more. Count everyone aboard.',
      });
    return swapBooking(em, booking, judged, { byId: user.memberId, now });
  }
}

/** Conditions of the answer, as this person may read them, that were not accepted. */
function openConditions(user: SignedIn, { decided }: JudgedNow, accepted: string[]): string[] {
  const { conditions } = asSeenBy(user, decided.sheet, decided.decision);
  return conditions.filter((condition) => !accepted.includes(condition));
}
