import type { EntityManager } from 'typeorm';
import { instant } from '../../decisions/gather/sql.js';
import type { MeterKind } from '../../rules/index.js';
import { findReturn } from './return.sql.js';

/** What a flight came to, for whoever works out what it costs. Corrections are in it. Tenths of an hour. */
export interface ReturnedFlight {
  bookingId: string;
  /** The return it stands by; another one after a correction. */
  returnId: string;
  aircraftId: string;
  /** Who flew or was taught. */
  memberId: string;
  /** Who pays. */
  payerId: string;
  instructorId: string | null;
  departedAt: string;
  arrivedAt: string;
  returnedAt: string;
  /** By each meter of the aircraft; null where it has none. */
  flownTenths: Record<MeterKind, number | null>;
  /** As the instructor logged it; 0 without one. */
  instructionTenths: number;
  /** Fuel bought elsewhere. */
  fuelBought: { usGal: number; cents: number } | null;
  oilAddedQt: number;
}

/** The flight as it was flown; null while it is not back, or when it came back before returns were kept. */
export async function returnedFlight(em: EntityManager, bookingId: string): Promise<ReturnedFlight | null> {
  const row = await findReturn(em, bookingId);
  if (row === null) return null;
  const [booking]: {
    aircraftId: string;
    memberId: string;
    instructorId: string | null;
    returnedAt: string;
  }[] = await em.query(
    `SELECT b.aircraft_id AS "aircraftId", b.member_id AS "memberId",
        (SELECT ${instant('r.returned_at')} FROM returns r WHERE r.club_id = b.club_id AND r.booking_id = b.id
            AND r.replaces_id IS NULL) AS "returnedAt",
        (SELECT p.member_id FROM booking_people p WHERE p.club_id = b.club_id AND p.booking_id = b.id
            AND p.role = 'instructor' LIMIT 1) AS "instructorId"
       FROM bookings b WHERE b.club_id = bellcrank_club() AND b.id = $1`,
    [bookingId],
  );
  const flown = (kind: MeterKind): number | null => {
    const meter = row.meters.find((one) => one.kind === kind);
    return meter ? meter.inTenths - meter.outTenths : null;
  };
  const taught = row.entries.find(({ memberId }) => memberId === booking!.instructorId);
  return {
    ...{ bookingId, returnId: row.id, payerId: row.payerId, ...booking! },
    ...{ departedAt: row.departedAt, arrivedAt: row.arrivedAt },
    flownTenths: { hobbs: flown('hobbs'), tachometer: flown('tachometer'), airframe: flown('airframe') },
    instructionTenths: taught ? Math.round(taught.given.dualGivenH * 10) : 0,
    fuelBought:
      row.fuelBoughtUsGal > 0 || row.fuelPaidCents > 0
        ? { usGal: row.fuelBoughtUsGal, cents: row.fuelPaidCents }
        : null,
    oilAddedQt: row.oilAddedQt,
  };
}
