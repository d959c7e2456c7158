import { ApiProperty } from '@nestjs/swagger';
import type { EntityManager } from 'typeorm';
import { Shown } from '../../platform/http/fields.js';
import type { ParameterValue } from '../../rules/index.js';

/** Changes told at most, the newest. A parameter changes a few times a year. */
const MOST = 200;

const ACTIONS = ['set', 'changed', 'taken-back'] as const;

/** A dated value as it stood before or after a change. */
export class PolicyValueThen {
  @Shown({ type: 'string', format: 'date' })
  validFrom: string;

  @Shown({ oneOf: [{ type: 'number' }, { type: 'boolean' }, { type: 'string' }], nullable: true })
  value: ParameterValue | null;

  @Shown({ type: 'string' })
  reference: string;
}

/** Who changed a dated value, when, and how. */
export class PolicyChangeView {
  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'string', enum: [...ACTIONS] })
  action: (typeof ACTIONS)[number];

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Null for what came with the club' })
  memberId: string | null;

  @Shown({ type: 'string', nullable: true })
  memberName: string | null;

  @Shown({ type: () => PolicyValueThen, nullable: true })
  before: PolicyValueThen | null;

  @Shown({ type: () => PolicyValueThen, nullable: true })
  after: PolicyValueThen | null;
}

/** The newest changes of one parameter. */
export class PolicyChangesView {
  @ApiProperty({ type: [PolicyChangeView], description: `Newest first, at most ${MOST}` })
  items: PolicyChangeView[];
}

const then = (row: string): string =>
  `CASE WHEN ${row} IS NOT NULL THEN jsonb_build_object('validFrom', ${row} ->> 'valid_from', 'value', ${row} -> 'value',
     'reference', ${row} ->> 'reference') END`;

/** Changes of a parameter's values out of the audit log, which the database writes by itself. */
export function changesOf(em: EntityManager, parameterId: string): Promise<PolicyChangeView[]> {
  return em.query(
    `SELECT to_char(l.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS at,
        CASE l.action WHEN 'insert' THEN 'set' WHEN 'update' THEN 'changed' ELSE 'taken-back' END AS action,
        l.actor_id AS "memberId", m.name AS "memberName", ${then('l.before')} AS before, ${then('l.after')} AS after
       FROM audit_log l LEFT JOIN members m ON m.club_id = l.club_id AND m.id = l.actor_id
      WHERE l.club_id = bellcrank_club() AND l.table_name = 'policy_values'
        AND coalesce(l.after, l.before) ->> 'parameter_id' = $1
      ORDER BY l.id DESC LIMIT ${MOST}`,
    [parameterId],
  );
}
