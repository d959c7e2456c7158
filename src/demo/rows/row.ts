import type { Instant } from '../../rules/index.js';

/** Every row belongs to the club. */
export interface Row {
  club_id: string;
}

/** A row with an id that says when it was written. */
export interface Recorded extends Row {
  id: string;
  recorded_at: Instant;
}
