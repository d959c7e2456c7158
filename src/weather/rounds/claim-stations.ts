/** Airfields whose weather is to be fetched for booked flights, each once an interval however many look. */
import type { EntityManager } from 'typeorm';
import { clubToday } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import type { Instant } from '../../rules/index.js';

/** Location indicators have four letters or digits; other codes of a club are its own. As PostgreSQL takes it. */
export const STATION = '^[A-Z][A-Z0-9]{3}$';
/** No club fetches more often, whatever its policy says: reports come once an hour as a rule. */
const LEAST_MINUTES = 5;

/**
 * Claims the airfields of flights that depart within the club's hours and were not fetched within its minutes. Whoever claims one
 * fetches it; when that fails, the next try is an interval later, and what is on record grows old as rules say.
 * @returns their codes
 */
export async function claimStations(em: EntityManager, clubId: string, now: Instant): Promise<string[]> {
  const on = await clubToday(em, clubId, now);
  const number = (parameterId: string) => policyNumber(em, { clubId, parameterId, on });
  const hours = (await number('club.weather.fetch-ahead-hours')) ?? 0;
  const minutes = (await number('club.weather.fetch-minutes')) ?? 0;
  if (hours <= 0 || minutes <= 0) return [];
  const claimed: { code: string }[] = await em.query(
    `WITH claimed AS (
       INSERT INTO weather_fetches AS w (club_id, airfield_id, fetched_at)
       SELECT f.club_id, f.id, $1 FROM airfields f WHERE f.club_id = bellcrank_club() AND f.code ~ $4
          AND EXISTS (SELECT 1 FROM bookings b JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
            WHERE b.club_id = f.club_id AND b.kind = 'flight' AND b.status = 'booked'
              AND upper(b.during) > $1::timestamptz AND lower(b.during) <= $1::timestamptz + make_interval(mins => ($2 * 60)::int)
              AND CASE WHEN b.request ? 'route' THEN b.request -> 'route' ? f.code
                ELSE f.id = a.home_airfield_id OR coalesce(b.request -> 'landings' ? f.code, false) END)
        ORDER BY f.id
       ON CONFLICT (club_id, airfield_id) DO UPDATE SET fetched_at = EXCLUDED.fetched_at
        WHERE w.fetched_at <= EXCLUDED.fetched_at - make_interval(mins => $3::int)
       RETURNING w.airfield_id)
     SELECT f.code FROM airfields f JOIN claimed c ON c.airfield_id = f.id WHERE f.club_id = bellcrank_club() ORDER BY f.code`,
    [now, hours, Math.max(LEAST_MINUTES, Math.round(minutes)), STATION],
  );
  return claimed.map(({ code }) => code);
}
