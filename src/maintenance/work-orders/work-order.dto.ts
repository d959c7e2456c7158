import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import {
  FlagField,
  IdField,
  InstantField,
  NoteField,
  PartsField,
  Shown,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';
import { ChangedBookingView } from '../equipment-changes/equipment-change-view.dto.js';
import { LINE_KINDS, OUTCOMES, type LineKind, type Outcome } from './work-line.entity.js';
import { WORK_STATES, type WorkState } from './work-order.entity.js';

/** Something to be done on the visit. */
export class NewLine {
  @WordField(LINE_KINDS)
  kind: LineKind;

  @IdField({
    nullable: true,
    description: 'The item, squawk or wish of this aircraft; none for a weighing and for other work',
  })
  aboutId?: string | null;

  @TextField({
    max: 200,
    nullable: true,
    description: 'Needed for other work; else what it is about says it',
  })
  title?: string | null;
}

/** When the aircraft is down. */
export class ShopTimes {
  @InstantField({ nullable: true, description: 'With `to`; neither: no time is set yet' })
  from?: string | null;

  @InstantField({ nullable: true, description: 'When the shop means to give it back' })
  to?: string | null;

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

/** A visit to the shop. */
export class NewWorkOrder extends ShopTimes {
  @TextField({ max: 200 })
  title: string;

  @NoteField({ max: 200, optional: true, description: 'Where it is done' })
  shop?: string;

  @PartsField(() => NewLine, { max: 60 })
  lines: NewLine[];
}

/** PATCH of the time in the shop: a new time, or none any more. */
export class NewShopTimes extends ShopTimes {}

/** Why it is called off. */
export class WorkCancelled {
  @TextField({ max: 500, pattern: /\S.{3,}\S/s, says: 'a reason of at least 5 characters' })
  because: string;
}

/** The shop has begun. */
export class WorkBegun {
  @InstantField({ nullable: true, description: 'Now unless given; never a time to come' })
  begunAt?: string | null;
}

/** The check flight after work (14 CFR 91.407(b)). */
export class CheckFlight {
  @InstantField({ description: 'When it was over' })
  flownAt: string;

  @IdField({ nullable: true, description: 'Who was pilot in command; yourself unless given' })
  pilotId?: string | null;

  @TextField({ max: 2000, description: 'The entry in the aircraft’s records' })
  entry: string;
}

export class LineView extends ViewOf(NewLine) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string' })
  declare title: string;
  @Shown({
    type: 'string',
    enum: [...OUTCOMES],
    nullable: true,
    description: 'Null until the work is signed',
  })
  outcome: Outcome | null;
  @Shown({ type: 'string', description: 'What was found, or why it was not done' })
  note: string;
}

/** A visit to the shop as an answer. */
export class WorkOrderView {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  shop: string;
  @ApiProperty({ enum: WORK_STATES })
  state: WorkState;
  @ApiProperty({ type: String, format: 'date-time', nullable: true, description: 'Time in the calendar' })
  from: string | null;
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  to: string | null;
  @ApiProperty({ type: [LineView] })
  lines: LineView[];
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  begunAt: string | null;
  @ApiProperty({ type: String, nullable: true })
  cancelledBecause: string | null;
  @ApiProperty({ type: String, format: 'date-time', nullable: true, description: 'When it was entered' })
  signedAt: string | null;
  @ApiProperty({ type: String, format: 'date', nullable: true, description: 'The day the signature bears' })
  signedOn: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'The statement in the maintenance record' })
  statement: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'As entered; it grants no authority' })
  signedBy: string | null;
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  equipmentChangeId: string | null;
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  weighingId: string | null;
  @ApiProperty({
    type: String,
    nullable: true,
    description: 'What makes a check flight necessary before others than required crew are carried',
  })
  checkFlightBecause: string | null;
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  checkFlownAt: string | null;
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  checkFlownBy: string | null;
  @ApiProperty({ type: String, nullable: true })
  checkEntry: string | null;
  @ApiProperty({ type: 'integer' })
  rowVersion: number;
  @ApiProperty({ format: 'date-time' })
  recordedAt: string;
}

/** A page of visits, newest first. */
export class WorkOrderPage extends PageShape {
  @ApiProperty({ type: [WorkOrderView] })
  items: WorkOrderView[];
}

const FILTERS = ['open', ...WORK_STATES];

/** Which visits to list. */
export class WorkOrderQuery extends PageQuery {
  @ApiPropertyOptional({ enum: FILTERS, description: "'open': planned or in work" })
  @IsOptional()
  @IsIn(FILTERS, { message: `state must be one of ${FILTERS.join(', ')}` })
  state?: 'open' | WorkState;
}

export class DisplacedView {
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
}

/** What a step does to everybody else. */
export class WorkOrderResult {
  @ApiProperty({ type: WorkOrderView })
  order: WorkOrderView;
  @ApiProperty({
    description: 'Send it with the step: it is refused when it would do something else by then',
  })
  preview: string;
  @ApiProperty({ type: [DisplacedView], description: 'Flights that make room; their people are told' })
  displaced: DisplacedView[];
  @ApiProperty({ type: 'integer', description: 'Flights booked on the aircraft, all judged anew' })
  bookingsJudged: number;
  @ApiProperty({ type: [ChangedBookingView], description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];
  @ApiProperty({ type: [String], description: 'What to look at before relying on it' })
  cautions: string[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}
