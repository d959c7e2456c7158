import type { EntityManager } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { startingPolicy } from '../../rules/packs/club/starting-policy.js';
import { PolicyValueRow } from './policy-value.entity.js';

/** Writes the dated values a new club starts with. Run it in the transaction that makes the club. */
export async function writeStartingPolicy(em: EntityManager, clubId: string): Promise<void> {
  const rows = startingPolicy().values.map(({ id, from, value, reference }) => ({
    clubId,
    id: newId(),
    parameterId: id,
    validFrom: from,
    value,
    reference,
  }));
  await em.insert(PolicyValueRow, rows);
}
