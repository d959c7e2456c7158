import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { readingStands } from '../../fleet/meters/standing-readings.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { addDays, localDateOf, startOfDay, toInstant, toSeconds, type LocalDate } from '../../rules/index.js';
import { aircraftForecast, type Past, type Today } from './aircraft-forecast.js';
import { attemptsOf, boundsOf } from './backtest.js';
import { DEFAULT_WEEKS, type ForecastBody, type ForecastView } from './forecast.dto.js';
import { mondayOf, weeklyUsage, type Reading } from './usage.js';
import { FORECAST_CAUTION, testSays } from './words.js';

/** Weeks of past that are read: two years, so that last year's weeks have weeks around them. */
const PAST_WEEKS = 104;
/** Weeks ahead the method is tested at: beyond a quarter few clubs plan by the hour. */
const TESTED_AHEAD = 13;

/** When everything falls due, from what is on record, what is booked and what was flown. */
@Injectable()
export class ForecastService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws ProblemException 404 for an aircraft the club does not have. */
  forecast(
    { clubId }: SignedIn,
    { aircraftIds, weeks = DEFAULT_WEEKS }: ForecastBody,
  ): Promise<ForecastView> {
    const now = this.clock.now();
    const work = async (em: EntityManager) => {
      const { zone, jurisdiction } = await gatherClub(em, now);
      const today: Today = { on: localDateOf(toSeconds(now), zone), zone, jurisdiction };
      // The method is tested on all the club's aircraft, whichever are asked about.
      const pasts = await pastsOf(em, today, now);
      for (const id of aircraftIds ?? [])
        if (!pasts.some(({ facts }) => facts.id === id))
          throw new ProblemException('not-found', {
            detail: `The club has no aircraft ${id}. Check the id.`,
            field: 'aircraftIds',
          });
      const bounds = boundsOf(pasts.flatMap(({ history }) => attemptsOf(history, TESTED_AHEAD)));
      const asked = pasts.filter(({ facts }) => aircraftIds?.includes(facts.id) ?? true);
      return {
        today: today.on,
        aircraft: asked.map((past) => aircraftForecast(past, { today, weeks, bounds })),
        coverage: bounds?.coverage ?? null,
        testedBy: bounds?.testedBy ?? 0,
        tested: testSays(bounds),
        caution: FORECAST_CAUTION,
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}

async function pastsOf(em: EntityManager, { on, zone }: Today, now: string): Promise<Past[]> {
  const aircraft = await gatherAircraft(em, null, now, null);
  const since = addDays(mondayOf(on), -7 * PAST_WEEKS);
  const rows: { aircraftId: string; on: LocalDate; totalTenths: number }[] = await em.query(
    `SELECT r.aircraft_id AS "aircraftId", (r.read_at AT TIME ZONE $2)::date::text AS on, max(r.total_tenths) AS "totalTenths"
       FROM meter_readings r JOIN aircraft a ON a.club_id = r.club_id AND a.id = r.aircraft_id AND a.inspection_meter = r.kind
      WHERE r.club_id = bellcrank_club() AND r.read_at >= $1::timestamptz
        AND ${readingStands('r')}
      GROUP BY 1, 2 ORDER BY 1, 2`,
    [toInstant(startOfDay(since, zone)), zone],
  );
  return aircraft.map(({ facts }) => {
    const readings: Reading[] = rows.filter(({ aircraftId }) => aircraftId === facts.id);
    return { facts, history: historyTo(readings, on) };
  });
}

/** Whole weeks up to today's. Weeks after the last reading were not flown: nobody flies without a reading. */
function historyTo(readings: readonly Reading[], today: LocalDate): number[] {
  const last = readings.at(-1);
  if (!last) return [];
  const held = last.on < today ? [...readings, { on: today, totalTenths: last.totalTenths }] : readings;
  return weeklyUsage(held)?.tenths ?? [];
}
