/** Scenes for going round the service. The refusals themselves: test/support/refusals.ts. */
import type { EntityManager } from 'typeorm';
import type { TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { fleetRows, type FleetIds } from './fleet-rows.js';
import { insertion, refusal, type Refusal, type Row } from '../support/refusals.js';

/** Inserts one row as it is. */
export async function insertRow(em: Pick<EntityManager, 'query'>, table: string, row: Row): Promise<void> {
  await em.query(...insertion(String(row['club_id']), table, row));
}

/** What the database says to a row, in a transaction of `clubId`. */
export const rowRefusal = (
  db: TestDatabase,
  clubId: string,
  table: string,
  row: Row,
): Promise<Refusal | null> => refusal(db, clubId, ...insertion(clubId, table, row));

/** A club with one member, made past row-level security. */
export async function plantClub(db: TestDatabase): Promise<{ clubId: string; memberId: string }> {
  const [clubId, memberId] = [newId(), newId()];
  await db.admin.query(
    "INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, 'Larkfield', 'America/Chicago', 'US')",
    [clubId, `club-${clubId.slice(-12)}`],
  );
  await db.admin.query(
    `INSERT INTO members (club_id, id, name, email, standing_since, membership_from)
     VALUES ($1, $2, 'Robin Test', $3, '2020-01-01', '2020-01-01')`,
    [clubId, memberId, `m-${memberId}@larkfield.example`],
  );
  return { clubId, memberId };
}

/** Named constraints of some tables in the live catalog that a case has to prove: not the primary keys, not the club's. */
export async function constraintsToProve(db: TestDatabase, tables: string[]): Promise<string[]> {
  const { rows } = await db.admin.query<{ conname: string }>(
    `SELECT conname FROM pg_constraint WHERE conrelid = ANY ($1::text[]::regclass[]) AND contype NOT IN ('p', 'n')
       AND conname NOT LIKE '%\\_club\\_id\\_fkey' ORDER BY conname COLLATE "C"`,
    [tables],
  );
  return rows.map(({ conname }) => conname);
}

/** New ids for one club's fleet. */
export const fleetIds = (of: { clubId: string; memberId: string }): FleetIds => ({
  ...of,
  ...{ airfieldId: newId(), modelId: newId(), aircraftId: newId(), secondAircraftId: newId() },
  ...{
    equipmentId: newId(),
    secondEquipmentId: newId(),
    itemId: newId(),
    squawkId: newId(),
    changeId: newId(),
  },
});

/** An airfield, a model, two aircraft of it, and a piece of equipment in the first. */
export async function insertAircraft(em: Pick<EntityManager, 'query'>, ids: FleetIds): Promise<void> {
  const rows = fleetRows(ids);
  await insertRow(em, 'airfields', rows.airfields({ id: ids.airfieldId }));
  await insertRow(em, 'aircraft_models', rows.aircraft_models({ id: ids.modelId }));
  await insertRow(em, 'aircraft', rows.aircraft({ id: ids.aircraftId }));
  await insertRow(em, 'aircraft', rows.aircraft({ id: ids.secondAircraftId, registration: 'XB-202' }));
  await insertRow(em, 'equipment', rows.equipment({ id: ids.equipmentId }));
}
