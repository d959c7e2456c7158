import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, TextColumn } from '../../platform/database/columns.js';

/** One dated value of a policy parameter. Null from a date on: the parameter has no value any more. */
@Entity('policy_values')
export class PolicyValueRow extends FactRow {
  @TextColumn('parameter_id')
  parameterId: string;

  /** First date it holds, in the club's zone. */
  @DateColumn('valid_from')
  validFrom: string;

  @Column({ name: 'value', type: 'jsonb', nullable: true })
  value: number | boolean | string | null;

  /** The club paper that says so. */
  @TextColumn('reference')
  reference: string;
}
