import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubZone } from '../../clubs/club-time.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { readingStands } from '../../fleet/meters/standing-readings.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { addDays, CAUTION, localDateOf, startOfDay, toInstant, toSeconds } from '../../rules/index.js';
import { type FlownSpan, meterRates, type MeterStretch, type RateReading } from './rates.js';
import type { MeterRatesView, MeterStretchView, RatesQuery } from './rates.dto.js';

const YEAR = 365;

/** Holds meters against the log: a flight that was not logged, a reading that was not noted, a meter that fails. */
@Injectable()
export class RatesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  of({ clubId }: SignedIn, aircraftId: string, query: RatesQuery): Promise<MeterRatesView> {
    const work = async (em: EntityManager): Promise<MeterRatesView> => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const zone = await clubZone(em, clubId);
      const today = localDateOf(toSeconds(this.clock.now()), zone);
      const since = toInstant(startOfDay(query.from ?? addDays(today, -YEAR), zone));
      const readings: RateReading[] = await em.query(
        `SELECT m.id, m.kind, extract(epoch FROM m.read_at)::float8 AS at, m.total_tenths AS "totalTenths"
           FROM meter_readings m WHERE m.club_id = bellcrank_club() AND m.aircraft_id = $1 AND m.read_at >= $2::timestamptz
            AND ${readingStands('m')} ORDER BY m.read_at, m.id`,
        [aircraftId, since],
      );
      const flown: FlownSpan[] = await em.query(
        `SELECT extract(epoch FROM l.departed_at)::float8 AS "from",
            extract(epoch FROM l.arrived_at)::float8 AS "to"
           FROM log_entries l WHERE l.club_id = bellcrank_club() AND l.aircraft_id = $1 AND l.departed_at >= $2::timestamptz
            AND l.voided_at IS NULL AND l.device IS NULL`,
        [aircraftId, since],
      );
      const { usual, stretches } = meterRates(readings, flown);
      const views = stretches.map(view).sort((a, b) => (a.to < b.to ? 1 : a.to > b.to ? -1 : 0));
      return {
        usual: usual.map((one) => ({ ...one, ratio: Math.round(one.ratio * 100) / 100 })),
        ...{ stretches: views, caution: CAUTION },
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}

function view({ meterTenths, flownTenths, ratio, from, to, look, ...rest }: MeterStretch): MeterStretchView {
  const [meterH, flownH] = [meterTenths / 10, Math.round(flownTenths) / 10];
  return {
    ...{ ...rest, from: toInstant(from), to: toInstant(to), meterH, flownH, look },
    ratio: ratio === null ? null : Math.round(ratio * 100) / 100,
    says: SAYS[look](meterH.toFixed(1), flownH.toFixed(1)),
  };
}

const SAYS: Record<MeterStretch['look'], (meter: string, flown: string) => string> = {
  'as-usual': (meter, flown) => `The meter ran ${meter} h, and ${flown} h are logged.`,
  'nothing-logged': (meter) =>
    `The meter ran ${meter} h, and no flight is logged. Look for a flight that is missing.`,
  'more-than-flown': (meter, flown) =>
    `The meter ran ${meter} h for ${flown} h logged, more than it usually does. Look for a flight that is missing, and at the figures.`,
  'less-than-flown': (meter, flown) =>
    `The meter ran ${meter} h for ${flown} h logged, less than it usually does. Look at the figures, and whether the meter runs.`,
};
