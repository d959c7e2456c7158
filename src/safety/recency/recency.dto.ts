import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { Shown } from '../../platform/http/fields.js';
import { IsLocalDate, Optional } from '../../platform/http/index.js';
import type { Status } from '../../rules/index.js';
import { BOARD_FLIGHTS, type BoardFlight } from '../board/board-flights.js';

const STATUSES: Status[] = ['met', 'short', 'unknown', 'not-applicable', 'error'];

export class RecencyQuery {
  @ApiPropertyOptional({
    format: 'date',
    description: "As of this day; today in the club's zone unless given",
  })
  @Optional()
  @IsLocalDate()
  on?: string;

  @ApiPropertyOptional({ enum: BOARD_FLIGHTS, description: 'One kind of flight; all of them unless given' })
  @Optional()
  @IsIn(BOARD_FLIGHTS)
  flight?: BoardFlight;
}

/** One thing a finding counted. */
export class CountedView {
  @Shown({ type: 'string', description: 'Id of the record' })
  id: string;
  @Shown({ type: 'string', format: 'date', nullable: true })
  on: string | null;
  @Shown({ type: 'string', example: '3 landings' })
  what: string;
}

/** A requirement of the person's own, as it stands on the day and until when it does. */
export class RequirementView {
  @Shown({ type: 'string' })
  rule: string;
  @Shown({ type: 'string' })
  title: string;
  @Shown({ type: 'string', enum: ['law', 'club'] })
  weight: string;
  @Shown({ type: 'string', example: '14 CFR 61.57(a)' })
  citation: string;
  @Shown({
    ...{ type: 'array', items: { type: 'string', enum: [...BOARD_FLIGHTS] } },
    description: 'The kinds of flight it is the same for',
  })
  flights: BoardFlight[];
  @Shown({
    ...{ type: 'array', items: { type: 'string' }, nullable: true },
    description: 'Registrations; null: every aircraft',
  })
  aircraft: string[] | null;
  @Shown({ type: 'boolean', description: 'Such a flight is not stopped by it on the day' })
  holds: boolean;
  @Shown({ type: 'string', enum: STATUSES })
  status: Status;
  @Shown({ type: 'string', description: 'What the rule says on the day' })
  says: string;
  @Shown({
    ...{ type: 'string', format: 'date', nullable: true },
    description:
      'First day on which it no longer holds; null: it does not hold, or holds through all days looked at',
  })
  lapsesOn: string | null;
  @Shown({ type: 'integer', nullable: true, description: 'Days from the day to the lapse' })
  inDays: number | null;
  @Shown({ type: 'string', nullable: true, description: 'What the rule says on the day of the lapse' })
  lapseSays: string | null;
  @Shown({ type: () => CountedView, isArray: true, description: 'What was counted for it' })
  counted: CountedView[];
  @Shown({
    ...{ type: 'array', items: { type: 'string', format: 'uuid' } },
    description: 'Of what was counted, the entries of the log',
  })
  entryIds: string[];
}

/** What lapses next of one person. */
export class RecencyView {
  @Shown({ type: 'string', format: 'date-time' })
  knownAt: string;
  @Shown({ type: 'string', format: 'date' })
  on: string;
  @Shown({ type: 'string', format: 'date', description: 'Last day looked at' })
  through: string;
  @Shown({
    ...{ type: () => RequirementView, isArray: true },
    description:
      'What lapses, soonest first; then what does not hold; then what holds through all days looked at',
  })
  requirements: RequirementView[];
  @Shown({ type: 'string' })
  caution: string;
}
