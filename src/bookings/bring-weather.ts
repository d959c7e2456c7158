import type { SignedIn } from '../accounts/current-user.js';
import type { DecisionsService } from '../decisions/decisions.service.js';
import type { FlightRequestDto } from '../decisions/flight-request.dto.js';
import { instant } from '../decisions/gather/sql.js';
import type { TenantDb } from '../platform/database/tenant.js';

/**
 * Fetches the current weather reports of a booking's flight before it is judged again; ahead of the transaction, so that no lock
 * waits for the source. `changed` is what will be another one of it. An unknown booking is told of by who judges it.
 */
export async function bringWeatherOf(
  of: { db: TenantDb; decisions: DecisionsService },
  user: SignedIn,
  bookingId: string,
  changed: Partial<Pick<FlightRequestDto, 'departs' | 'route'>> & { aircraftId?: string } = {},
): Promise<void> {
  if (!of.decisions.fetchesWeather) return;
  const [booked]: { aircraftId: string; departs: string; request: FlightRequestDto }[] = await of.db.run(
    user.clubId,
    (em) =>
      em.query(
        `SELECT aircraft_id AS "aircraftId", ${instant('lower(during)')} AS departs, request FROM bookings
          WHERE club_id = bellcrank_club() AND id = $1 AND kind IN ('flight', 'hold')`,
        [bookingId],
      ),
    { readOnly: true },
  );
  if (!booked) return;
  const { aircraftId = booked.aircraftId, departs = booked.departs, route = booked.request.route } = changed;
  const flight = { ...booked.request, departs, ...(route === undefined ? {} : { route }) };
  await of.decisions.bringWeather(user, flight, [aircraftId]);
}
