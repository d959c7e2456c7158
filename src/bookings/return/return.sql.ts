import type { EntityManager } from 'typeorm';
import { instant, object } from '../../decisions/gather/sql.js';
import type { MeterKind } from '../../rules/index.js';
import type { ReturnEntryDto } from './return.dto.js';

/** What a return gave to one log: figures only, since words are changed in the log. */
export type Given = Required<Omit<ReturnEntryDto, 'memberId' | 'remarks'>>;

/** A meter over the flight. Running totals in tenths of an hour. */
export interface MeterFlown {
  kind: MeterKind;
  readingId: string;
  shownTenths: number;
  outTenths: number;
  inTenths: number;
}

/** What a return keeps of the flight besides meters and logs. */
export interface Flown {
  departedAt: string;
  arrivedAt: string;
  fromAirfield: string;
  toAirfield: string;
  fuelUsGal: number | null;
  fuelBoughtUsGal: number;
  fuelPaidCents: number;
  oilAddedQt: number;
  payerId: string;
}

/** A return as it is kept. */
export interface ReturnRow extends Flown {
  id: string;
  bookingId: string;
  dispatchId: string;
  replacesId: string | null;
  because: string | null;
  returnedBy: string;
  returnedAt: string;
  meters: MeterFlown[];
  entries: { memberId: string; logEntryId: string; given: Given }[];
}

/** Writes the return with its meters and what it gave to the logs. */
export async function insertReturn(em: EntityManager, row: ReturnRow): Promise<void> {
  await em.query(
    `INSERT INTO returns (club_id, id, booking_id, dispatch_id, replaces_id, because, returned_by, returned_at, departed_at,
       arrived_at, from_airfield, to_airfield, fuel_us_gal, fuel_bought_us_gal, fuel_paid_cents, oil_added_qt, payer_id)
     VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16)`,
    [
      ...[row.id, row.bookingId, row.dispatchId, row.replacesId, row.because, row.returnedBy, row.returnedAt],
      ...[row.departedAt, row.arrivedAt, row.fromAirfield, row.toAirfield, row.fuelUsGal],
      ...[row.fuelBoughtUsGal, row.fuelPaidCents, row.oilAddedQt, row.payerId],
    ],
  );
  await em.query(
    `INSERT INTO return_meters (club_id, return_id, kind, reading_id, out_tenths, in_tenths)
     SELECT bellcrank_club(), $1, m.kind, m."readingId", m."outTenths", m."inTenths"
       FROM jsonb_to_recordset($2::jsonb) AS m (kind text, "readingId" uuid, "outTenths" int, "inTenths" int)`,
    [row.id, JSON.stringify(row.meters)],
  );
  await em.query(
    `INSERT INTO return_entries (club_id, return_id, member_id, log_entry_id, given)
     SELECT bellcrank_club(), $1, e."memberId", e."logEntryId", e.given
       FROM jsonb_to_recordset($2::jsonb) AS e ("memberId" uuid, "logEntryId" uuid, given jsonb)`,
    [row.id, JSON.stringify(row.entries)],
  );
}

/** The return of a booking as it stands, corrections made; null while it has none. */
export async function findReturn(em: EntityManager, bookingId: string): Promise<ReturnRow | null> {
  const meter = object({
    kind: 'm.kind',
    readingId: 'm.reading_id',
    shownTenths: 'x.shown_tenths',
    outTenths: 'm.out_tenths',
    inTenths: 'm.in_tenths',
  });
  const rows: ReturnRow[] = await em.query(
    `SELECT r.id, r.booking_id AS "bookingId", r.dispatch_id AS "dispatchId", r.replaces_id AS "replacesId", r.because,
        r.returned_by AS "returnedBy", ${instant('r.returned_at')} AS "returnedAt", ${instant('r.departed_at')} AS "departedAt",
        ${instant('r.arrived_at')} AS "arrivedAt", r.from_airfield AS "fromAirfield", r.to_airfield AS "toAirfield",
        r.fuel_us_gal::float8 AS "fuelUsGal", r.fuel_bought_us_gal::float8 AS "fuelBoughtUsGal",
        r.fuel_paid_cents AS "fuelPaidCents", r.oil_added_qt::float8 AS "oilAddedQt", r.payer_id AS "payerId",
        (SELECT coalesce(jsonb_agg(${meter} ORDER BY m.kind), '[]'::jsonb) FROM return_meters m
           JOIN meter_readings x ON x.club_id = m.club_id AND x.id = m.reading_id
          WHERE m.club_id = r.club_id AND m.return_id = r.id) AS meters,
        (SELECT coalesce(jsonb_agg(${object({ memberId: 'e.member_id', logEntryId: 'e.log_entry_id', given: 'e.given' })}
            ORDER BY e.member_id), '[]'::jsonb) FROM return_entries e
          WHERE e.club_id = r.club_id AND e.return_id = r.id) AS entries
       FROM returns r WHERE r.club_id = bellcrank_club() AND r.booking_id = $1
        AND NOT EXISTS (SELECT 1 FROM returns n WHERE n.club_id = r.club_id AND n.replaces_id = r.id)`,
    [bookingId],
  );
  return rows[0] ?? null;
}
