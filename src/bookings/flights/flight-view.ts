import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hoursOf, show, VoidedView } from '../../platform/http/views.js';
import { BookingDto } from '../booking.dto.js';
import { findBooking } from '../bookings.sql.js';
import { DispatchView } from '../dispatch/dispatch.dto.js';
import { findDispatch, type DispatchRow } from '../dispatch/dispatch.sql.js';
import { dueBackOf } from '../overdue/aircraft-out.js';
import { NOT_FLIGHT_FOLLOWING } from '../overdue/overdue.dto.js';
import { ReturnView } from '../return/return.dto.js';
import { findReturn, type ReturnRow } from '../return/return.sql.js';
import type { FlightView, PlannedView } from './flight.dto.js';

/** A booked flight with what became of it, as of now. The booking is there. */
export async function flightView(
  em: EntityManager,
  user: SignedIn,
  bookingId: string,
  now: string,
): Promise<FlightView> {
  const booking = (await findBooking(em, bookingId))!;
  const dispatch = await findDispatch(em, bookingId);
  const dueBackAt =
    booking.status === 'dispatched' ? ((await dueBackOf(em, bookingId)) ?? booking.arrives) : null;
  const returned = await findReturn(em, bookingId);
  return {
    booking: BookingDto.from(booking, user),
    planned: booking.kind === 'flight' ? await plannedAs(em, bookingId) : null,
    dispatch: dispatch && dispatchView(dispatch),
    return: returned && returnView(returned),
    dueBackAt,
    overdue: dueBackAt !== null && dueBackAt < now,
    caution: NOT_FLIGHT_FOLLOWING,
  };
}

async function plannedAs(em: EntityManager, bookingId: string): Promise<PlannedView> {
  const [row]: PlannedView[] = await em.query(
    `SELECT coalesce(b.request -> 'route' ->> 0, h.code) AS "fromAirfield",
        coalesce(b.request -> 'route' ->> -1, h.code) AS "toAirfield",
        coalesce((b.request ->> 'personsOnBoard')::int, 1) AS "personsOnBoard"
       FROM bookings b JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN airfields h ON h.club_id = a.club_id AND h.id = a.home_airfield_id
      WHERE b.club_id = bellcrank_club() AND b.id = $1`,
    [bookingId],
  );
  return row!;
}

const dispatchView = (row: DispatchRow): DispatchView =>
  show(DispatchView, row, {
    takenBack: VoidedView.of(row.voided ?? undefined),
    meters: row.meters.map(({ kind, shownTenths, gapTenths, gapBecause, gapNote }) => ({
      ...{ kind, shownH: shownTenths / 10, gapH: gapTenths / 10, gapBecause, gapNote },
    })),
  });

const returnView = (row: ReturnRow): ReturnView =>
  show(ReturnView, row, {
    fuelPaid: row.fuelPaidCents / 100,
    meters: row.meters.map(({ kind, shownTenths, outTenths, inTenths }) => ({
      ...{ kind, shownH: shownTenths / 10, flownH: hoursOf(inTenths - outTenths) },
    })),
    entries: row.entries.map(({ given, memberId, logEntryId }) => ({
      ...given,
      ...{ memberId, logEntryId, remarks: '' },
    })),
  });
