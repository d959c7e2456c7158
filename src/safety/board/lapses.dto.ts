import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { Shown } from '../../platform/http/fields.js';
import { IsId, IsLocalDate, Optional } from '../../platform/http/index.js';
import { ANSWERS } from '../../decisions/decision.dto.js';
import type { Answer } from '../../rules/index.js';
import { BOARD_FLIGHTS, type BoardFlight } from './board-flights.js';

export class LapsesQuery {
  @ApiPropertyOptional({
    format: 'date',
    description: 'Last day looked at; 90 days from today unless given, 366 at most',
  })
  @Optional()
  @IsLocalDate()
  through?: string;

  @ApiPropertyOptional({ enum: BOARD_FLIGHTS, description: 'Kind of flight; day-passengers unless given' })
  @Optional()
  @IsIn(BOARD_FLIGHTS)
  flight?: BoardFlight;

  @ApiPropertyOptional({ format: 'uuid', description: 'One aircraft only' })
  @Optional()
  @IsId()
  aircraftId?: string;
}

/** A booking that a lapse stands in the way of. */
export class LapseCost {
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string', format: 'date-time' })
  departs: string;
  @Shown({
    type: 'string',
    enum: ANSWERS,
    description: 'What the rules say of it today, judged at its departure',
  })
  answer: Answer;
  @Shown({ type: 'boolean', description: 'Nothing else stands in its way' })
  alone: boolean;
}

/** A requirement that holds now and lapses. */
export class LapseView {
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string' })
  memberName: string;
  @Shown({ type: 'string' })
  rule: string;
  @Shown({ type: 'string' })
  title: string;
  @Shown({ type: 'string', enum: ['law', 'club'] })
  weight: string;
  @Shown({ type: 'string', format: 'date', description: 'First day on which such a flight no longer passes' })
  on: string;
  @Shown({ type: 'integer' })
  inDays: number;
  @Shown({ type: 'string', description: 'What the rule says on that day' })
  says: string;
  @Shown({
    ...{ type: 'array', items: { type: 'string' }, nullable: true },
    description: 'Registrations; null: every aircraft looked at',
  })
  aircraft: string[] | null;
  @Shown({
    type: () => LapseCost,
    isArray: true,
    description: 'Flights booked after it that it stands in the way of',
  })
  costs: LapseCost[];
}

/** A requirement people do not meet today. */
export class LackingView {
  @Shown({ type: 'string' })
  rule: string;
  @Shown({ type: 'string' })
  title: string;
  @Shown({ type: 'integer', description: 'Members, on at least one aircraft looked at' })
  members: number;
}

/** Who lapses next. */
export class LapsesView {
  @Shown({ type: 'string', format: 'date-time' })
  knownAt: string;
  @Shown({ type: 'string', format: 'date' })
  from: string;
  @Shown({ type: 'string', format: 'date' })
  through: string;
  @Shown({ type: 'string', enum: [...BOARD_FLIGHTS] })
  flight: BoardFlight;
  @Shown({ type: 'integer', description: 'Members looked at: all whose membership touches the days' })
  members: number;
  @Shown({ type: () => LapseView, isArray: true, description: 'Soonest first' })
  lapses: LapseView[];
  @Shown({ type: () => LackingView, isArray: true, description: 'Most members first' })
  lacking: LackingView[];
  @Shown({ type: 'string' })
  caution: string;
}
