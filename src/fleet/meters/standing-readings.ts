/** SQL condition on readings under an alias: they were not taken back. */
export const readingStands = (alias: string): string =>
  `NOT EXISTS (SELECT 1 FROM meter_reading_voids v WHERE v.club_id = ${alias}.club_id AND v.reading_id = ${alias}.id)`;
