import { ApiPropertyOptional } from '@nestjs/swagger';
import { Shown } from '../../platform/http/fields.js';
import { IsLocalDate, Optional } from '../../platform/http/index.js';

export class RefusalsQuery {
  @ApiPropertyOptional({
    format: 'date',
    description: 'First day asked; twelve weeks back unless given, 366 days at most',
  })
  @Optional()
  @IsLocalDate()
  from?: string;
}

export class RefusalWeek {
  @Shown({ type: 'string', format: 'date', description: 'Monday' })
  week: string;
  @Shown({ type: 'integer' })
  decisions: number;
}

/** How often a rule stood in the way. */
export class RuleRefusals {
  @Shown({ type: 'string' })
  rule: string;
  @Shown({ type: 'string', description: 'As it was called then' })
  title: string;
  @Shown({ type: 'integer', description: 'Decisions: one for each aircraft asked about' })
  decisions: number;
  @Shown({ type: 'integer' })
  members: number;
  @Shown({ type: () => RefusalWeek, isArray: true, description: 'Every week, also those without' })
  weeks: RefusalWeek[];
}

export class RefusalsView {
  @Shown({ type: 'string', format: 'date' })
  from: string;
  @Shown({ type: 'string', format: 'date' })
  through: string;
  @Shown({ type: () => RefusalWeek, isArray: true, description: 'All decisions asked, refused or not' })
  asked: RefusalWeek[];
  @Shown({ type: () => RuleRefusals, isArray: true, description: 'Most often first' })
  rules: RuleRefusals[];
}
