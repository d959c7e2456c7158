/** SQL condition on entries under an alias: they were not reversed, and are no reversal themselves. */
export const entryCounts = (alias: string): string =>
  `${alias}.reverses IS NULL AND NOT EXISTS (SELECT 1 FROM ledger_entries v
     WHERE v.club_id = ${alias}.club_id AND v.reverses = ${alias}.id)`;

/**
 * SQL of the charges of a member (`members` under the alias) that what was received does not cover: whatever came in pays the oldest
 * first. Columns: id, on_day, unpaid_minor, minor_per_unit, currency, recorded_at.
 */
export const unpaidCharges = (member: string): string => `
  SELECT o.id, o.due_from AS on_day, least(o.amount_minor, o.through_here - o.received)::integer AS unpaid_minor,
         o.minor_per_unit, o.currency, o.recorded_at
    FROM (SELECT e.*, sum(greatest(e.amount_minor, 0)) OVER (ORDER BY e.due_from, e.id) AS through_here,
                 sum(greatest(-e.amount_minor, 0)) OVER () AS received
            FROM ledger_entries e
           WHERE e.club_id = ${member}.club_id AND e.member_id = ${member}.id AND ${entryCounts('e')}) o
   WHERE o.amount_minor > 0 AND o.through_here > o.received`;
