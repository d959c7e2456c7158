import type { EntityManager } from 'typeorm';
import { instant, object } from '../../decisions/gather/sql.js';
import type { Gap } from './dispatch.dto.js';
import type { MeterOut } from './meters-out.js';

/** A dispatch to be written. */
export interface NewDispatch {
  id: string;
  bookingId: string;
  decisionId: string;
  by: string;
  at: string;
  personsOnBoard: number;
  fuelUsGal: number;
  oilQt: number | null;
  squawksSeen: string[];
  conditionsAccepted: string[];
  meters: MeterOut[];
}

/** A dispatch with its meters, as it is kept. */
export interface DispatchRow extends Omit<NewDispatch, 'meters' | 'bookingId' | 'by' | 'at'> {
  dispatchedBy: string;
  dispatchedAt: string;
  meters: {
    kind: MeterOut['kind'];
    shownTenths: number;
    totalTenths: number;
    gapTenths: number;
    gapBecause: Gap | null;
    gapNote: string | null;
  }[];
  voided: { voidedBy: string; recordedAt: string; reason: string } | null;
}

/** Writes it, and hands the aircraft out. The booking's row is locked. */
export async function insertDispatch(em: EntityManager, of: NewDispatch): Promise<void> {
  await em.query(
    `INSERT INTO dispatches (club_id, id, booking_id, number, decision_id, dispatched_by, dispatched_at, persons_on_board,
       fuel_us_gal, oil_qt, self_assessed, squawks_seen, conditions_accepted)
     VALUES (bellcrank_club(), $1, $2, (SELECT coalesce(max(x.number), 0) + 1 FROM dispatches x
         WHERE x.club_id = bellcrank_club() AND x.booking_id = $2), $3, $4, $5, $6, $7, $8, true, $9, $10)`,
    [
      ...[of.id, of.bookingId, of.decisionId, of.by, of.at, of.personsOnBoard, of.fuelUsGal, of.oilQt],
      ...[of.squawksSeen, of.conditionsAccepted],
    ],
  );
  await em.query(
    `INSERT INTO dispatch_meters (club_id, dispatch_id, kind, reading_id, total_tenths, gap_tenths, gap_because, gap_note)
     SELECT bellcrank_club(), $1, m.kind, m."readingId", m."totalTenths", m."gapTenths", m."gapBecause", m."gapNote"
       FROM jsonb_to_recordset($2::jsonb) AS m (kind text, "readingId" uuid, "totalTenths" int, "gapTenths" int,
         "gapBecause" text, "gapNote" text)`,
    [of.id, JSON.stringify(of.meters)],
  );
  await em.query("UPDATE bookings SET status = 'dispatched' WHERE club_id = bellcrank_club() AND id = $1", [
    of.bookingId,
  ]);
}

/** The last dispatch of a booking, taken back or not; null before the first. */
export async function findDispatch(em: EntityManager, bookingId: string): Promise<DispatchRow | null> {
  const meter = object({
    kind: 'm.kind',
    shownTenths: 'r.shown_tenths',
    totalTenths: 'm.total_tenths',
    gapTenths: 'm.gap_tenths',
    gapBecause: 'm.gap_because',
    gapNote: 'm.gap_note',
  });
  const rows: DispatchRow[] = await em.query(
    `SELECT d.id, d.decision_id AS "decisionId", d.dispatched_by AS "dispatchedBy", ${instant('d.dispatched_at')} AS "dispatchedAt",
        d.persons_on_board AS "personsOnBoard", d.fuel_us_gal::float8 AS "fuelUsGal", d.oil_qt::float8 AS "oilQt",
        d.squawks_seen AS "squawksSeen", d.conditions_accepted AS "conditionsAccepted",
        (SELECT coalesce(jsonb_agg(${meter} ORDER BY m.kind), '[]'::jsonb) FROM dispatch_meters m
           JOIN meter_readings r ON r.club_id = m.club_id AND r.id = m.reading_id
          WHERE m.club_id = d.club_id AND m.dispatch_id = d.id) AS meters,
        (SELECT ${object({ voidedBy: 'v.voided_by', recordedAt: instant('v.recorded_at'), reason: 'v.reason' })}
           FROM dispatch_voids v WHERE v.club_id = d.club_id AND v.dispatch_id = d.id) AS voided
       FROM dispatches d WHERE d.club_id = bellcrank_club() AND d.booking_id = $1 ORDER BY d.number DESC LIMIT 1`,
    [bookingId],
  );
  return rows[0] ?? null;
}
