import { ApiPropertyOptional } from '@nestjs/swagger';
import { Allow, IsOptional, ValidateIf } from 'class-validator';
import { DayField, Shown, TextField } from '../../platform/http/fields.js';
import { IsLocalDate } from '../../platform/http/instants.decorator.js';
import { ChangesOf } from '../../platform/http/views.js';
import type { Parameter, ParameterValue } from '../../rules/index.js';

const VALUE = {
  oneOf: [{ type: 'number' }, { type: 'boolean' }, { type: 'string', maxLength: 200 }],
  nullable: true,
  description:
    'Of the type its definition says; null ends the parameter, and what needs it then cannot be decided',
};

/** What may be said of a value. Its type is held against the parameter's definition by the service. */
export class PolicyValueBody {
  @DayField({ description: "First day it holds, in the club's zone; today or later" })
  validFrom: string;

  @Shown({ ...VALUE, required: true })
  @Allow()
  value: ParameterValue | null;

  @TextField({
    max: 300,
    description: 'The club paper that says so',
    example: 'Committee minutes of 2 March 2026, item 4',
  })
  reference: string;
}

/** POST /policy/values. */
export class NewPolicyValue extends PolicyValueBody {
  @TextField({ max: 120, example: 'club.model-recency.days' })
  parameterId: string;
}

/** PATCH of a value that is not yet in force. */
export class PolicyValueChanges extends ChangesOf(PolicyValueBody) {}

/** A dated value as an answer. */
export class PolicyValueView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  parameterId: string;

  @Shown({ type: 'string', format: 'date' })
  validFrom: string;

  @Shown(VALUE)
  value: ParameterValue | null;

  @Shown({ type: 'string' })
  reference: string;

  @Shown({ type: 'string', enum: ['past', 'in-force', 'to-come'], description: 'As of the day asked for' })
  state: 'past' | 'in-force' | 'to-come';

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** A parameter the club may set, with everything the club ever set. */
export class PolicyParameterView {
  @Shown({ type: 'string', example: 'club.model-recency.days' })
  id: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string' })
  unit: Parameter['unit'];

  @Shown({ type: 'string', enum: ['number', 'boolean', 'string'] })
  valueType: 'number' | 'boolean' | 'string';

  @Shown({
    type: () => PolicyValueView,
    nullable: true,
    description: 'Null when no value is in force: then what needs it cannot be decided',
  })
  inForce: PolicyValueView | null;

  @Shown({ type: () => PolicyValueView, isArray: true, description: 'Oldest first, those to come included' })
  history: PolicyValueView[];
}

/** The club's whole policy on a day. */
export class PolicyView {
  @Shown({ type: 'string', format: 'date' })
  asOf: string;

  @Shown({ type: () => PolicyParameterView, isArray: true })
  items: PolicyParameterView[];
}

/** Which day to ask for. */
export class PolicyQuery {
  @ApiPropertyOptional({
    type: 'string',
    format: 'date',
    description: "Today in the club's zone unless said otherwise",
  })
  @IsOptional()
  @ValidateIf((_query, value) => value !== undefined)
  @IsLocalDate()
  asOf?: string;
}
