import { ApiProperty } from '@nestjs/swagger';
import { DayField, IdField, PartsField, WholeField } from '../../platform/http/fields.js';

/** Weeks planned, unless said otherwise and at most. */
export const MOST_PLANNED = 26;

/** An aircraft wanted in the shop in a week. */
export class PinBody {
  @IdField()
  aircraftId: string;

  @DayField({ description: 'Any day of the week' })
  on: string;
}

export class ClosedBody {
  @DayField({ description: 'Any day of a week in which the shop is closed' })
  on: string;
}

/** What to plan. */
export class SeasonBody {
  @WholeField({
    min: 2,
    max: MOST_PLANNED,
    optional: true,
    description: `Weeks from this one on; ${MOST_PLANNED} unless given`,
  })
  weeks?: number;

  @PartsField(() => PinBody, {
    optional: true,
    max: 100,
    description: 'Besides the shop visits already booked',
  })
  pins?: PinBody[];

  @PartsField(() => ClosedBody, { optional: true, max: MOST_PLANNED })
  closed?: ClosedBody[];
}

export class SeasonWork {
  @ApiProperty()
  title: string;
  @ApiProperty({ enum: ['need', 'wish'] })
  kind: 'need' | 'wish';
  @ApiProperty({ format: 'date', description: 'Monday of the week it begins' })
  week: string;
  @ApiProperty({
    type: String,
    format: 'date',
    nullable: true,
    description: 'Monday of the week it falls due',
  })
  dueWeek: string | null;
  @ApiProperty()
  shopDays: number;
}

export class SeasonWeekCost {
  @ApiProperty({ format: 'date' })
  week: string;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'More than where it is, all else left; null: not possible',
  })
  more: number | null;
}

export class SeasonVisit {
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'date', description: 'Monday of its first week' })
  from: string;
  @ApiProperty({ format: 'date', description: 'Monday of its last week' })
  to: string;
  @ApiProperty({ type: [SeasonWork] })
  work: SeasonWork[];
  @ApiProperty({ type: [String], description: 'Why it is when it is' })
  why: string[];
  @ApiProperty({ type: [SeasonWeekCost] })
  otherWeeks: SeasonWeekCost[];
}

export class SeasonCost {
  @ApiProperty()
  booked: number;
  @ApiProperty()
  expected: number;
  @ApiProperty()
  life: number;
  @ApiProperty({ description: 'What is overdue, waiting' })
  waiting: number;
  @ApiProperty()
  visits: number;
  @ApiProperty({ description: 'What upgrades bring, as a negative cost' })
  wishes: number;
  @ApiProperty()
  saved: number;
  @ApiProperty()
  total: number;
}

/** Another way of doing it, by the same measure. */
export class SeasonBeside {
  @ApiProperty({ type: Number, nullable: true, description: 'Null: it leaves something undone' })
  total: number | null;
  @ApiProperty({ type: [String], description: 'What it leaves undone' })
  left: string[];
}

export class SeasonView {
  @ApiProperty({
    enum: ['optimal', 'infeasible', 'stopped'],
    description: 'optimal: proven, no plan costs less',
  })
  status: 'optimal' | 'infeasible' | 'stopped';
  @ApiProperty({ type: [String], description: 'Mondays' })
  weeks: string[];
  @ApiProperty({ type: [SeasonVisit], description: 'By aircraft and week' })
  visits: SeasonVisit[];
  @ApiProperty({ type: [String], description: 'Upgrades that found no place' })
  wishesLeft: string[];
  @ApiProperty({ type: SeasonCost, nullable: true })
  cost: SeasonCost | null;
  @ApiProperty({
    type: SeasonBeside,
    nullable: true,
    description: 'Drawn up by due date, each as late as it goes',
  })
  byHand: SeasonBeside | null;
  @ApiProperty({
    type: SeasonBeside,
    nullable: true,
    description: 'With the shop visits booked today, and no others',
  })
  asBooked: SeasonBeside | null;
  @ApiProperty({ type: [String], description: 'What falls due before the shop can take it' })
  tooSoon: string[];
  @ApiProperty({ type: String, nullable: true, description: 'Why there is no plan' })
  because: string | null;
  @ApiProperty()
  caution: string;
}
