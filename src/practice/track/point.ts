/** A flight as recorded: where the aircraft was, and when. */

/** One recorded position. Degrees north and east positive; elevation in metres above mean sea level. */
export interface TrackPoint {
  /** Seconds since 1970-01-01T00:00:00Z; a recorder may give fractions. */
  atSeconds: number;
  latitudeDeg: number;
  longitudeDeg: number;
  /** Null where the recorder gave none. */
  elevationM: number | null;
  /** Which stretch of unbroken recording the point belongs to, counted from 0 (GPX: trkseg). */
  segment: number;
}
