import { newId } from '../../platform/ids.js';
import { startingPolicy } from '../../rules/index.js';

/** Writes the dated values a new club starts with. Run it in the transaction that makes the club, with the club set. */
export async function writeStartingPolicy(
  db: { query(text: string, params: unknown[]): Promise<unknown> },
  clubId: string,
): Promise<void> {
  const rows = startingPolicy().values.map(({ id, from, value, reference }) => ({
    id: newId(),
    parameter_id: id,
    valid_from: from,
    value,
    reference,
  }));
  await db.query(
    `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference)
     SELECT $1, v.id, v.parameter_id, v.valid_from, v.value, v.reference
     FROM jsonb_to_recordset($2::jsonb) AS v (id uuid, parameter_id text, valid_from date, value jsonb, reference text)`,
    [clubId, JSON.stringify(rows)],
  );
}
