import { ApiProperty } from '@nestjs/swagger';
import {
  DayField,
  FlagField,
  IdField,
  PartsField,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { ChangedBookingView } from '../equipment-changes/equipment-change-view.dto.js';
import { MOST_SECONDS } from '../plan/solve.js';
import { DisplacedView, WorkOrderView } from '../work-orders/work-order.dto.js';

/** Weeks planned, unless said otherwise and at most. */
export const MOST_PLANNED = 26;

/** A search asked to go on may take this long. */
export const MOST_SEARCHED_SECONDS = 600;

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

  @WholeField({
    min: 1,
    max: MOST_SEARCHED_SECONDS,
    optional: true,
    description: `How long to look for the best plan; ${MOST_SECONDS} unless given. When time is up the best so far is told, and how far it may be from the best there is`,
  })
  searchSeconds?: number;
}

export class SeasonWork {
  @ApiProperty({ format: 'uuid', description: 'The item or the wish' })
  id: string;
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
  @ApiProperty({ format: 'date', description: 'First day in the shop' })
  firstDay: string;
  @ApiProperty({ format: 'date', description: 'Last day in the shop' })
  lastDay: string;
  @ApiProperty({ description: 'In the calendar already' })
  booked: boolean;
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
    enum: ['optimal', 'found', 'infeasible', 'stopped'],
    description:
      'optimal: proven, no plan costs less; found: the best when time was up; stopped: time was up before there was any',
  })
  status: 'optimal' | 'found' | 'infeasible' | 'stopped';
  @ApiProperty({ type: [String], description: 'Mondays' })
  weeks: string[];
  @ApiProperty({ type: [SeasonVisit], description: 'By aircraft and week' })
  visits: SeasonVisit[];
  @ApiProperty({ type: [String], description: 'Upgrades that found no place' })
  wishesLeft: string[];
  @ApiProperty({ type: SeasonCost, nullable: true })
  cost: SeasonCost | null;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Proven: no plan costs less. The cost itself where the plan is optimal',
  })
  leastPossible: number | null;
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

/** Work of a visit that is accepted. */
export class AcceptedWork {
  @WordField(['need', 'wish'])
  kind: 'need' | 'wish';

  @IdField({ description: 'The item or the wish, as the plan names it' })
  id: string;
}

/** A visit of a plan, as it is put into the calendar. */
export class AcceptedVisit {
  @IdField()
  aircraftId: string;

  @DayField()
  firstDay: string;

  @DayField({ description: 'The aircraft is back on the day after' })
  lastDay: string;

  @PartsField(() => AcceptedWork, { max: 40 })
  work: AcceptedWork[];
}

/** Visits to be put into the calendar, together or not at all. */
export class AcceptSeason {
  @PartsField(() => AcceptedVisit, { max: 60 })
  visits: AcceptedVisit[];

  @FlagField({
    optional: true,
    description:
      'Flights in the way are cancelled and their people told; otherwise they stop it. False unless said otherwise',
  })
  displace?: boolean;

  @TextField({
    optional: true,
    max: 64,
    description: 'Of the preview that was looked at: refused when it would do something else by now',
  })
  preview?: string;
}

/** What accepting does. */
export class AcceptedSeason {
  @ApiProperty({ type: [WorkOrderView], description: 'One for each visit, planned' })
  orders: WorkOrderView[];
  @ApiProperty()
  preview: string;
  @ApiProperty({ type: [DisplacedView], description: 'Flights that make room; their people are told' })
  displaced: DisplacedView[];
  @ApiProperty({ type: 'integer', description: 'Flights booked on these aircraft, all judged anew' })
  bookingsJudged: number;
  @ApiProperty({ type: [ChangedBookingView], description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];
  @ApiProperty()
  caution: string;
}
