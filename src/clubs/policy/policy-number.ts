import type { EntityManager } from 'typeorm';
import type { LocalDate } from '../../rules/index.js';

/** A number of the club's policy as of a date in its zone; null where the club never set it. */
export async function policyNumber(
  em: Pick<EntityManager, 'query'>,
  of: { clubId: string; parameterId: string; on: LocalDate },
): Promise<number | null> {
  const [row]: { value: unknown }[] = await em.query(
    `SELECT value FROM policy_values WHERE club_id = $1 AND parameter_id = $2 AND valid_from <= $3
      ORDER BY valid_from DESC LIMIT 1`,
    [of.clubId, of.parameterId, of.on],
  );
  return typeof row?.value === 'number' ? row.value : null;
}
