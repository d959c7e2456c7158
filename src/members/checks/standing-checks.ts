/** SQL condition on checks under an alias: they were not taken back. */
export const checkStands = (alias: string): string =>
  `NOT EXISTS (SELECT 1 FROM member_check_voids v WHERE v.club_id = ${alias}.club_id AND v.check_id = ${alias}.id)`;
