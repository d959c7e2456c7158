import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { MetersService } from '../../fleet/meters/meters.service.js';
import { SquawksService } from '../../fleet/squawks/squawks.service.js';
import { aircraftFlown } from '../../logbook/aircraft-flown.js';
import { placesOf } from '../../logbook/log-checked.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { toSeconds } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';
import { noBooking } from '../bookings.problems.js';
import { findBooking, lockAircraft, lockBooking } from '../bookings.sql.js';
import { findDispatch } from '../dispatch/dispatch.sql.js';
import { flightView } from '../flights/flight-view.js';
import { mayReturn } from '../flights/who.js';
import type { StoredAnswer } from '../idempotency.js';
import { type Done, underKey } from '../keyed.js';
import { broughtIn } from '../overdue/aircraft-out.js';
import { chargeReturn } from './charge-return.js';
import { checkReturn } from './check-return.js';
import { crewOf } from './crew-of.js';
import { propose } from './propose.js';
import type { ProposalDto, ProposalView, ReturnDto } from './return.dto.js';
import { notOut, refuse } from './return.problems.js';
import { type Flown, insertReturn } from './return.sql.js';
import { writeLog } from './write-log.js';
import { writeMeters } from './write-meters.js';

/** Said with every proposal. */
const PROPOSAL_CAUTION =
  'A proposal from times, airfields and the sun. Whoever logs the flight answers for the entry: look it through.';

/** Brings aircraft back: log, meters, squawks and the charge in one transaction, once. */
@Injectable()
export class ReturnService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly meters: MetersService,
    private readonly squawks: SquawksService,
  ) {}

  /** What the crew may log of it. Nothing is kept. @throws 403, 404, 422 */
  propose(user: SignedIn, bookingId: string, body: ProposalDto): Promise<ProposalView> {
    const { landings = 1, fullStopLandings = Math.min(1, landings) } = body;
    if (fullStopLandings > landings)
      throw refuse('fullStopLandings', 'Full-stop landings are part of the landings.');
    const [departs, arrives] = [toSeconds(body.departedAt), toSeconds(body.arrivedAt)];
    if (arrives <= departs) throw refuse('arrivedAt', 'The flight ends after it begins.');
    if (arrives - departs > 36 * 3600)
      throw refuse('arrivedAt', 'No flight lasts longer than a day and a half.');
    const work = async (em: EntityManager): Promise<ProposalView> => {
      const booking = await this.toReturn(em, user, bookingId);
      const { clubId } = user;
      const places = await placesOf(em, clubId);
      const { category, class: of } = await aircraftFlown(em, clubId, { aircraftId: booking.aircraftId });
      const field = (code: string) => ({ code, at: places.get(code.toUpperCase()) ?? null });
      const flight = {
        ...{ departs, arrives, from: field(body.fromAirfield), to: field(body.toAirfield) },
        ...{ category, class: of, landings, fullStopLandings },
      };
      return { entries: propose(flight, await crewOf(em, booking)), caution: PROPOSAL_CAUTION };
    };
    return this.db.run(user.clubId, work, { readOnly: true });
  }

  /** Brings the aircraft back, or gives the stored answer of an earlier request with the same key. */
  bringBack(user: SignedIn, key: string, bookingId: string, body: ReturnDto): Promise<StoredAnswer> {
    return underKey(this.db, user, key, {
      request: { act: 'return', bookingId, ...body },
      work: (em) => this.write(em, user, bookingId, body),
    });
  }

  private async write(em: EntityManager, user: SignedIn, bookingId: string, body: ReturnDto): Promise<Done> {
    const seen = await this.toReturn(em, user, bookingId);
    await lockAircraft(em, seen.aircraftId);
    await lockBooking(em, bookingId);
    const booking = (await findBooking(em, bookingId))!;
    if (booking.status !== 'dispatched') throw notOut(booking.status, bookingId);
    const dispatch = (await findDispatch(em, bookingId))!;
    const now = this.clock.now();
    checkReturn(body, { booking, dispatch, now });
    const { clubId, memberId } = user;
    const { aircraftId } = booking;
    await insertReturn(em, {
      ...{ id: newId(), bookingId, dispatchId: dispatch.id, replacesId: null, because: null },
      ...{ returnedBy: memberId, returnedAt: now, ...flownOf(body, booking) },
      meters: await writeMeters(em, this.meters, { clubId, aircraftId, body, dispatch }),
      entries: await writeLog(em, { clubId, booking, body, now }),
    });
    for (const squawk of body.squawks ?? [])
      await this.squawks.reportIn(em, { ...squawk, clubId, aircraftId, reportedBy: memberId, bookingId });
    await em.query("UPDATE bookings SET status = 'returned' WHERE club_id = bellcrank_club() AND id = $1", [
      bookingId,
    ]);
    await broughtIn(em, bookingId);
    await chargeReturn(em, bookingId, { clubId, memberId, now });
    return { status: 201, body: await flightView(em, user, bookingId, now) };
  }

  /** The booking, for whoever may bring its aircraft back. @throws 403, 404 */
  private async toReturn(em: EntityManager, user: SignedIn, id: string): Promise<BookingRow> {
    const booking = await findBooking(em, id);
    if (!booking) throw noBooking(id);
    mayReturn(user, booking);
    return booking;
  }
}

/** What a return keeps of the flight besides meters and logs. */
export const flownOf = (
  body: Omit<ReturnDto, 'meters' | 'entries' | 'squawks'>,
  booking: BookingRow,
): Flown => ({
  departedAt: body.departedAt,
  arrivedAt: body.arrivedAt,
  fromAirfield: body.fromAirfield,
  toAirfield: body.toAirfield,
  fuelUsGal: body.fuelUsGal ?? null,
  fuelBoughtUsGal: body.fuelBoughtUsGal ?? 0,
  fuelPaidCents: Math.round((body.fuelPaid ?? 0) * 100),
  oilAddedQt: body.oilAddedQt ?? 0,
  payerId: body.payerId ?? booking.memberId,
});
