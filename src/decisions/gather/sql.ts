/** Small pieces of SQL that shape rows as facts (src/rules/facts). */
import { instant } from '../../platform/database/instant.js';

export { instant };

/** A date column as 'YYYY-MM-DD' (or null). */
export const date = (column: string): string => `to_char(${column}, 'YYYY-MM-DD')`;

/**
 * A list fact: known even when empty, since the club's own record is what counts; last known when its newest row was
 * written; with no row, when its owner was (`$since$`), so that asking twice gives the same bytes.
 *
 * @param object SQL of one record as jsonb
 * @param from   FROM and WHERE of the rows, aliased `t`, with a `recorded_at`
 * @param order  ORDER BY of the list, so that the same rows give the same sheet
 */
export function listFact(object: string, from: string, order: string): string {
  return `(SELECT jsonb_build_object('known', true, 'status', 'recorded',
      'value', coalesce(jsonb_agg(${object} ORDER BY ${order}), '[]'::jsonb),
      'lastKnownAt', coalesce(${instant('max(t.recorded_at)')}, $since$))
    FROM ${from})`;
}

/** A fact held in one column: unknown, with the reason, when it is null. */
export function columnFact(value: string, recordedAt: string, because: string): string {
  return `CASE WHEN ${value} IS NULL THEN jsonb_build_object('known', false, 'because', '${because}')
    ELSE jsonb_build_object('known', true, 'status', 'recorded', 'value', ${value}, 'lastKnownAt', ${instant(recordedAt)}) END`;
}

/** A fact that is one record. */
export function recordFact(object: string, recordedAt: string): string {
  return `jsonb_build_object('known', true, 'status', 'recorded', 'value', ${object}, 'lastKnownAt', ${instant(recordedAt)})`;
}

/** A fact that is one row of another table; unknown, with the reason, when there is none. `from` ends in LIMIT 1. */
export function newestFact(object: string, from: string, because: string): string {
  return `coalesce((SELECT ${recordFact(object, 't.recorded_at')} FROM ${from}),
    jsonb_build_object('known', false, 'because', '${because}'))`;
}

/** jsonb_build_object from pairs of name and SQL. */
export function object(fields: Record<string, string>): string {
  return `jsonb_build_object(${Object.entries(fields)
    .map(([name, sql]) => `'${name}', ${sql}`)
    .join(', ')})`;
}
