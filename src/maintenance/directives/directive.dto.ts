import { ApiProperty } from '@nestjs/swagger';
import { NewItem } from '../../fleet/airworthiness/item.dto.js';
import { APPLIES_TO, type Directive } from '../../fleet/directives/directive.entity.js';
import { EQUIPMENT_KINDS } from '../../fleet/vocabulary.js';
import {
  DayField,
  FlagField,
  HoursField,
  IdField,
  IdsField,
  PartsField,
  Shown,
  TextField,
  TextsField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { ChangesOf, RecordHead, SomeOf, ViewOf } from '../../platform/http/views.js';
import type { EquipmentKind } from '../../rules/index.js';
import { ChangedBookingView } from '../equipment-changes/equipment-change-view.dto.js';

/** Serial numbers, both ends within. */
export class Serials {
  @TextField({ max: 40 })
  from: string;

  @TextField({ max: 40, description: 'The same as `from` for one alone' })
  through: string;
}

const INTERVAL = [
  ...(['scope', 'calendarMonths', 'plainMonths', 'days', 'intervalH', 'ferryProhibited'] as const),
] as const;

/** An airworthiness directive as it is published. */
export class DirectiveText extends SomeOf(NewItem, INTERVAL) {
  @TextField({ max: 40, description: 'The authority: FAA, EASA, Transport Canada' })
  issuer: string;

  @TextField({ max: 60 })
  number: string;

  @TextField({ max: 200 })
  title: string;

  @DayField()
  effectiveOn: string;

  @WordField(APPLIES_TO, { description: 'To the aircraft itself, or to pieces of equipment in it' })
  appliesTo: Directive['appliesTo'];

  @IdsField({
    optional: true,
    max: 50,
    description: 'Models it names; none: every model, as for equipment that is found in any',
  })
  modelIds?: string[];

  @WordField(EQUIPMENT_KINDS, { nullable: true, description: 'Needed where it applies to equipment' })
  equipmentKind?: EquipmentKind | null;

  @TextsField({ optional: true, description: 'Part numbers it names; none: any' })
  partNumbers?: string[];

  @PartsField(() => Serials, { optional: true, max: 60, description: 'Serial numbers it names; none: any' })
  serials?: Serials[];

  @FlagField({ description: 'False: settled by one compliance' })
  recurring: boolean;

  @WholeField({
    min: 1,
    max: 20_000,
    nullable: true,
    description:
      'First compliance: days after it took effect. With neither of the two, before the next flight',
  })
  withinDays?: number | null;

  @HoursField({
    nullable: true,
    description: 'First compliance: hours of the inspection meter after it was taken up here',
  })
  withinH?: number | null;

  @DayField({ nullable: true, description: 'From this day on it is in force no more' })
  withdrawnOn?: string | null;
}

/** POST of a directive. */
export class NewDirective extends DirectiveText {
  @IdField({ nullable: true, description: 'The directive it takes the place of' })
  supersedes?: string | null;
}

/** PATCH of a directive: what was entered wrong. One that was published anew is another, which supersedes it. */
export class DirectiveChanges extends ChangesOf(DirectiveText) {}

export class DirectiveView extends ViewOf(NewDirective) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The one that took its place' })
  supersededBy: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

export class DirectiveList {
  @Shown({ type: () => DirectiveView, isArray: true })
  items: DirectiveView[];
}

export const STANDINGS = ['applies', 'unclear', 'not'] as const;

/** How a directive stands to an aircraft or a piece in it. */
export class DirectiveStanding {
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'uuid' })
  directiveId: string;
  @ApiProperty()
  number: string;
  @ApiProperty()
  title: string;
  @ApiProperty({
    type: String,
    format: 'uuid',
    nullable: true,
    description: 'The piece; null: the aircraft itself',
  })
  equipmentId: string | null;
  @ApiProperty({
    enum: STANDINGS,
    description: 'unclear: the records do not tell, so it is due until somebody has looked it up',
  })
  state: (typeof STANDINGS)[number];
  @ApiProperty()
  because: string;
  @ApiProperty({ type: String, format: 'date', nullable: true, description: 'In force from' })
  from: string;
  @ApiProperty({
    type: String,
    format: 'date',
    nullable: true,
    description: 'In force no more from; null: it is',
  })
  until: string | null;
  @ApiProperty({
    type: String,
    format: 'uuid',
    nullable: true,
    description: 'Item of the aircraft that asks for it',
  })
  itemId: string | null;
  @ApiProperty({ type: String, format: 'date', nullable: true })
  lastDoneOn: string | null;
}

export class DirectiveStandings {
  @ApiProperty({ type: [DirectiveStanding] })
  items: DirectiveStanding[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}

/** Somebody has looked up whether a directive applies. */
export class NewFinding {
  @IdField({ nullable: true, description: 'The piece; null or nothing: the aircraft itself' })
  equipmentId?: string | null;

  @FlagField()
  applies: boolean;

  @TextField({ max: 1000, pattern: /\S.{3,}\S/s, says: 'a reason of at least 5 characters' })
  because: string;

  @TextField({ max: 200, description: 'Name and certificate of who looked; it grants no authority' })
  signedBy: string;
}

/** What it does to aircraft and flights. */
export class DirectiveResult {
  @ApiProperty({ type: DirectiveView })
  directive: DirectiveView;
  @ApiProperty({ description: 'Send it with the directive: refused when it would do something else by then' })
  preview: string;
  @ApiProperty({ type: [DirectiveStanding] })
  standings: DirectiveStanding[];
  @ApiProperty({ type: 'integer', description: 'Flights booked on the club’s aircraft, all judged anew' })
  bookingsJudged: number;
  @ApiProperty({ type: [ChangedBookingView], description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}

/** The preview that was looked at. */
export class PreviewOf {
  @TextField({ optional: true, max: 64, description: 'Refused when it would do something else by now' })
  preview?: string;
}
