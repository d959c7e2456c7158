import type { EntityManager } from 'typeorm';
import { toSeconds } from '../rules/calendar/instants.js';
import { checksOf, type Field } from './checks/index.js';
import type { CheckedEntryView } from './log-list.dto.js';
import type { LogEntry } from './log-entry.entity.js';
import { viewOf } from './log-rows.js';

/** Where the club's airfields lie, by code. */
export type Places = ReadonlyMap<string, Field['at']>;

export async function placesOf(em: EntityManager, clubId: string): Promise<Places> {
  const rows = await em.query<{ code: string; at: NonNullable<Field['at']> }[]>(
    `SELECT code, jsonb_build_object('latitudeDeg', latitude_deg, 'longitudeDeg', longitude_deg, 'zone', zone) AS at
       FROM airfields WHERE club_id = $1`,
    [clubId],
  );
  return new Map(rows.map(({ code, at }) => [code, at]));
}

/** The entry as the API shows it, and each of its values held against what can be worked out. */
export const checked = (row: LogEntry, places: Places): CheckedEntryView => ({
  ...viewOf(row),
  checks: checksOf({
    ...row,
    departs: toSeconds(row.departedAt),
    arrives: toSeconds(row.arrivedAt),
    on: row.flownOn,
    from: fieldOf(row.fromAirfield, places),
    to: fieldOf(row.toAirfield, places),
  }),
});

/** People write codes as they like; the club's are in capitals. */
function fieldOf(code: string, places: Places): Field {
  return { code, at: places.get(code.trim().toUpperCase()) ?? null };
}
