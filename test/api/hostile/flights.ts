import { newId } from '../../../src/platform/ids.js';
import type { Api, Session } from '../../support/api.js';
import { insertInto, type ReadyClub } from '../../support/ready-club.js';
import type { Ids } from './bodies.js';

/** Two flights of this morning: one is out, one is back; and an alert for somebody. Written past the service, for its clock stands still. */
export async function flightsOfToday(
  api: Api,
  { ready, chief, ids }: { ready: ReadyClub; chief: Session; ids: Ids },
): Promise<void> {
  const row = insertInto(api.sql, ready.club.clubId);
  const memberId = ids.memberId!;
  for (const [name, registration] of [
    ['outBookingId', 'NX108B'],
    ['backBookingId', 'NX109B'],
  ] as const) {
    const aircraftId = await ready.addAircraft(registration);
    const [reading] = await api.sql<{ id: string }>(
      "SELECT id FROM meter_readings WHERE aircraft_id = $1 AND kind = 'tachometer'",
      [aircraftId],
    );
    const [bookingId, dispatchId] = [newId(), newId()];
    ids[name] = bookingId;
    const { body } = await chief
      .post('/decisions', {
        ...{ departs: '2026-03-10T16:00:00Z', arrives: '2026-03-10T17:00:00Z', memberId },
        ...{ purpose: 'solo', personsOnBoard: 1, aircraftIds: [aircraftId] },
      })
      .expect(200);
    const decisionId = (body as { decisions: { id: string }[] }).decisions[0]!.id;
    const during =
      name === 'outBookingId'
        ? '[2026-03-10 13:00Z,2026-03-10 14:30Z)'
        : '[2026-03-10 10:00Z,2026-03-10 11:30Z)';
    await row('bookings', {
      ...{ id: bookingId, kind: 'flight', aircraft_id: aircraftId, member_id: memberId, during },
      ...{ expected_tenths: 12, request: { purpose: 'solo', personsOnBoard: 1 }, decision_id: decisionId },
    });
    await row('booking_people', {
      ...{ booking_id: bookingId, member_id: memberId, role: 'pilot', during, occupies: true },
    });
    await row('dispatches', {
      ...{
        id: dispatchId,
        booking_id: bookingId,
        number: 1,
        decision_id: decisionId,
        dispatched_by: memberId,
      },
      ...{ dispatched_at: '2026-03-10T13:00:00Z', persons_on_board: 1, fuel_us_gal: 30, self_assessed: true },
      ...{ squawks_seen: [], conditions_accepted: [] },
    });
    await row('dispatch_meters', {
      ...{ dispatch_id: dispatchId, kind: 'tachometer', reading_id: reading!.id, total_tenths: 10_500 },
    });
    await api.sql("UPDATE bookings SET status = 'dispatched' WHERE id = $1", [bookingId]);
    if (name === 'outBookingId') {
      ids.alertId = newId();
      await row('overdue_alerts', {
        ...{ id: ids.alertId, booking_id: bookingId, dispatch_id: dispatchId, member_id: chief.memberId },
        ...{ stage: 'officers', due_back_at: '2026-03-10T14:30:00Z', told_at: '2026-03-10T15:00:00Z' },
      });
      continue;
    }
    ids.returnId = newId();
    await row('returns', {
      ...{ id: ids.returnId, booking_id: bookingId, dispatch_id: dispatchId, returned_by: memberId },
      ...{ returned_at: '2026-03-10T14:40:00Z', departed_at: '2026-03-10T13:05:00Z' },
      ...{
        arrived_at: '2026-03-10T14:20:00Z',
        from_airfield: 'XQHB',
        to_airfield: 'XQHB',
        payer_id: memberId,
      },
    });
    await row('return_meters', {
      ...{ return_id: ids.returnId, kind: 'tachometer', reading_id: reading!.id },
      ...{ out_tenths: 10_500, in_tenths: 10_500 },
    });
    await api.sql("UPDATE bookings SET status = 'returned' WHERE id = $1", [bookingId]);
  }
}
