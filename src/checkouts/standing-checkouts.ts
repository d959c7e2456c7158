/** SQL condition on checkouts under an alias: they were not taken back. */
export const checkoutStands = (alias: string): string =>
  `NOT EXISTS (SELECT 1 FROM checkout_voids v WHERE v.club_id = ${alias}.club_id AND v.checkout_id = ${alias}.id)`;
