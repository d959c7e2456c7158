import type { EntityManager } from 'typeorm';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { LocalDate } from '../rules/index.js';
import type { MoneyUnit } from '../rules/explain/money-words.js';
import { minorPerUnit } from './currency.js';

/**
 * What the club keeps its accounts in: as the ledger has it already, or as the policy of the day says.
 * @throws ProblemException 409 `currency-not-set`
 */
export async function moneyUnit(em: EntityManager, clubId: string, on: LocalDate): Promise<MoneyUnit> {
  const [kept]: MoneyUnit[] = await em.query(
    `SELECT currency, minor_per_unit AS "minorPerUnit" FROM ledger_entries WHERE club_id = $1 LIMIT 1`,
    [clubId],
  );
  if (kept) return kept;
  const [row]: { value: unknown }[] = await em.query(
    `SELECT value FROM policy_values WHERE club_id = $1 AND parameter_id = 'club.charges.currency' AND valid_from <= $2
      ORDER BY valid_from DESC LIMIT 1`,
    [clubId, on],
  );
  const currency = typeof row?.value === 'string' ? row.value : '';
  const count = minorPerUnit(currency);
  if (count === null) throw new ProblemException('currency-not-set');
  return { currency, minorPerUnit: count };
}
