import type { TenantDb } from '../../platform/database/tenant.js';
import { DEMO_CLUB_ID } from '../ids.js';
import type { Person } from '../people/person.js';
import type { When } from '../when.js';
import { flightsOut } from './flights-out.js';
import { importedLog } from './imported-log.js';
import { onStandby } from './on-standby.js';
import { pastedWeather } from './pasted-weather.js';

/** What a club is in the middle of: aircraft that are out, somebody who waits, weather of the hour, a log taken over. */
export function middleOfToday(db: TenantDb, people: readonly Person[], when: When): Promise<void> {
  return db.run(
    DEMO_CLUB_ID,
    async (em) => {
      await importedLog(em, people, when);
      await pastedWeather(em, people, when);
      await flightsOut(em, people, when);
      await onStandby(em, people, when);
    },
    { retry: false, statementTimeoutMs: 60_000 },
  );
}
