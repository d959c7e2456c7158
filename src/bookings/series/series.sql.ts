import type { EntityManager } from 'typeorm';
import { notThere } from '../../platform/database/records.js';
import { ProblemException } from '../../platform/problems/index.js';
import { notOpen } from '../changes/changes.problems.js';

/** A series as it was asked for. */
export interface SeriesRow {
  id: string;
  memberId: string;
  recurrence: string;
  zone: string;
}

/** Keeps what was asked for. */
export async function insertSeries(
  em: EntityManager,
  of: SeriesRow & { madeBy: string; firstDeparts: string },
): Promise<void> {
  await em.query(
    `INSERT INTO booking_series (club_id, id, member_id, made_by, recurrence, zone, first_departs)
     VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6)`,
    [of.id, of.memberId, of.madeBy, of.recurrence, of.zone, of.firstDeparts],
  );
}

/** @throws ProblemException 404 */
export async function findSeries(em: EntityManager, id: string): Promise<SeriesRow> {
  const [row]: SeriesRow[] = await em.query(
    `SELECT id, member_id AS "memberId", recurrence, zone FROM booking_series WHERE club_id = bellcrank_club() AND id = $1`,
    [id],
  );
  if (!row) throw notThere('series');
  return row;
}

/**
 * Bookings of a series that still stand, from one of them on, in order of departure.
 * @throws ProblemException 404 where that one is not of the series, 409 where none stands any more
 */
export async function bookingsFrom(
  em: EntityManager,
  of: { seriesId: string; fromBookingId: string },
): Promise<string[]> {
  const rows: { id: string; counts: boolean }[] = await em.query(
    `SELECT b.id, b.status = 'booked' AS counts
       FROM bookings b JOIN bookings f ON f.club_id = b.club_id AND f.id = $2 AND f.series_id = b.series_id
      WHERE b.club_id = bellcrank_club() AND b.series_id = $1 AND lower(b.during) >= lower(f.during)
      ORDER BY lower(b.during), b.id`,
    [of.seriesId, of.fromBookingId],
  );
  if (rows.length === 0)
    throw new ProblemException('not-found', {
      detail: `The series has no flight ${of.fromBookingId}. Check the id.`,
      field: 'fromBookingId',
    });
  const standing = rows.filter(({ counts }) => counts).map(({ id }) => id);
  if (standing.length === 0)
    throw notOpen('Nothing is left of it', 'No flight of the series stands from there on.');
  return standing;
}

/** Every booking of a series, given back or not, in order of departure. */
export async function bookingsOf(em: EntityManager, seriesId: string): Promise<string[]> {
  const rows: { id: string }[] = await em.query(
    'SELECT id FROM bookings WHERE club_id = bellcrank_club() AND series_id = $1 ORDER BY lower(during), id',
    [seriesId],
  );
  return rows.map(({ id }) => id);
}
