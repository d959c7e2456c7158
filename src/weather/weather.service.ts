import { Injectable } from '@nestjs/common';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { toSeconds } from '../rules/index.js';
import { isCurrent, keepReports } from './reports/keep-reports.js';
import { claimStations, STATION } from './rounds/claim-stations.js';
import { WeatherSource } from './source/weather-source.js';

/** No forecast speaks of a later departure. */
const AHEAD_HOURS = 30;

/** What tells which airfields a flight touches. */
export interface WhereFlown {
  departs: string;
  route?: string[];
  landings?: string[];
}

/** Brings current reports in before a flight is judged. */
@Injectable()
export class WeatherService {
  constructor(
    private readonly db: TenantDb,
    private readonly source: WeatherSource,
    private readonly clock: Clock,
  ) {}

  /** Whether there is a source to fetch from. */
  get fetches(): boolean {
    return this.source.configured;
  }

  /**
   * Fetches the reports of a flight's airfields and keeps them for the club. Does nothing where no source is configured, the
   * flight is too far ahead, or the source gives nothing. Runs before the transaction that judges, so that none waits for it.
   */
  async bringIn(clubId: string, flight: WhereFlown, aircraftIds: string[] | null): Promise<void> {
    if (!this.source.configured) return;
    const now = this.clock.now();
    const ahead = toSeconds(flight.departs) - toSeconds(now);
    if (!Number.isFinite(ahead) || ahead > AHEAD_HOURS * 3600) return;
    const codes = await this.db.run(clubId, (em) => em.query(AIRFIELDS, named(flight, aircraftIds)), {
      readOnly: true,
    });
    await this.keep(
      clubId,
      (codes as { code: string }[]).map(({ code }) => code),
      now,
    );
  }

  /**
   * Fetches for the club's booked flights that depart soon, each airfield once an interval (`club.weather.fetch-*`). The transaction
   * that claims the airfields is over before the source is asked.
   * @returns how many airfields were asked for, and how many reports came
   */
  async bringInBooked(clubId: string): Promise<{ stations: number; reports: number }> {
    if (!this.source.configured) return { stations: 0, reports: 0 };
    const now = this.clock.now();
    const stations = await this.db.run(clubId, (em) => claimStations(em, clubId, now));
    return { stations: stations.length, reports: await this.keep(clubId, stations, now) };
  }

  private async keep(clubId: string, stations: readonly string[], now: string): Promise<number> {
    const reports = (await this.source.reportsOf(stations)).filter((report) => isCurrent(report, now));
    if (reports.length > 0)
      await this.db.run(clubId, (em) => keepReports(em, reports, { obtainedAt: now, pasted: null }));
    return reports.length;
  }
}

const AIRFIELDS = `SELECT f.code FROM airfields f WHERE f.club_id = bellcrank_club() AND f.code ~ $4 AND (f.code = ANY ($1::text[])
   OR ($2 AND f.id IN (SELECT a.home_airfield_id FROM aircraft a WHERE a.club_id = bellcrank_club()
     AND ($3::uuid[] IS NULL OR a.id = ANY ($3::uuid[]))))) ORDER BY f.code`;

const named = ({ route, landings }: WhereFlown, aircraftIds: string[] | null): unknown[] => [
  route ?? landings ?? [],
  route === undefined,
  aircraftIds,
  STATION,
];
