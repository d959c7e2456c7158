import { ApiProperty } from '@nestjs/swagger';
import { ANSWERS } from '../../decisions/decision.dto.js';
import { PageShape } from '../../platform/http/pages.js';
import type { Answer, EquipmentKind } from '../../rules/index.js';
import { EQUIPMENT_KINDS } from '../../fleet/vocabulary.js';
import { CAPABLE, type Capability, type CapabilityChange } from '../trials/capability.js';
import { KINDS, type KindOfFlight } from '../trials/kinds-of-flight.js';

/** A change as it is kept. */
export class EquipmentChangeView {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ format: 'date' })
  doneOn: string;
  @ApiProperty()
  statement: string;
  @ApiProperty()
  signedBy: string;
  @ApiProperty({ type: [String] })
  documents: string[];
  @ApiProperty({ type: [String], description: 'Pieces taken out, by name' })
  removed: string[];
  @ApiProperty({ type: [String], description: 'Pieces put in, by name' })
  installed: string[];
  @ApiProperty({ format: 'uuid', description: 'Who entered it' })
  madeBy: string;
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  takenBackAt: string | null;
  @ApiProperty({ type: String, nullable: true })
  takenBackReason: string | null;
  @ApiProperty({ format: 'date-time' })
  recordedAt: string;
}

export class EquipmentChangePage extends PageShape {
  @ApiProperty({ type: [EquipmentChangeView] })
  items: EquipmentChangeView[];
}

/** Weight before and after; nulls where it is not known. */
export class WeightAfter {
  @ApiProperty({ type: Number, nullable: true, description: 'Pounds' })
  emptyWeightLb: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'Inches aft of the datum' })
  emptyArmIn: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'Pound-inches' })
  emptyMomentLbIn: number | null;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Maximum take-off weight less empty weight, pounds',
  })
  usefulLoadLb: number | null;
}

export class WeightChange {
  @ApiProperty({ type: WeightAfter })
  before: WeightAfter;
  @ApiProperty({ type: WeightAfter })
  after: WeightAfter;
  @ApiProperty({ type: String, nullable: true, description: 'Why the weight after is not known' })
  because: string | null;
}

export class NamedItem {
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  id: string | null;
  @ApiProperty()
  title: string;
}

/** A member who flies this model, and the differences checkout. */
export class MemberToShow {
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ description: 'Shown the same equipment in another aircraft, which the club lets count' })
  exempt: boolean;
}

export class BroughtFinding {
  @ApiProperty()
  rule: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  says: string;
}

export class ChangedBookingView {
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ enum: ANSWERS })
  before: Answer;
  @ApiProperty({ enum: ANSWERS })
  after: Answer;
  @ApiProperty({ type: [BroughtFinding], description: 'What the change put in the way' })
  because: BroughtFinding[];
}

export class CapabilityView implements Capability {
  @ApiProperty({ enum: CAPABLE })
  verdict: Capability['verdict'];
  @ApiProperty({ type: [String], description: 'What keeps it from a yes' })
  says: string[];
}

/** A kind of flight before and after, by the rules of the aircraft alone. */
export class CapabilityChangeView implements CapabilityChange {
  @ApiProperty({ enum: KINDS })
  kind: KindOfFlight;
  @ApiProperty()
  title: string;
  @ApiProperty({ type: CapabilityView, nullable: true, description: 'Null: none of the kind can be tried' })
  before: CapabilityView | null;
  @ApiProperty({ type: CapabilityView, nullable: true })
  after: CapabilityView | null;
}

/** What a change does, or did. */
export class EquipmentChangeResult {
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'Null in a preview' })
  changeId: string | null;
  @ApiProperty({
    description: 'Send it with the change: it is refused when it would do something else by then',
  })
  preview: string;
  @ApiProperty({ type: WeightChange })
  weight: WeightChange;
  @ApiProperty({ enum: EQUIPMENT_KINDS, isArray: true, description: 'Kinds of equipment it has no more' })
  lost: EquipmentKind[];
  @ApiProperty({ enum: EQUIPMENT_KINDS, isArray: true, description: 'Kinds of equipment it has now' })
  gained: EquipmentKind[];
  @ApiProperty({
    type: [CapabilityChangeView],
    description: 'What it can be flown for tomorrow, with and without the change',
  })
  kinds: CapabilityChangeView[];
  @ApiProperty({ type: [NamedItem], description: 'Items that end' })
  itemsEnded: NamedItem[];
  @ApiProperty({ type: [NamedItem], description: 'Items that begin' })
  itemsBegun: NamedItem[];
  @ApiProperty({
    type: [MemberToShow],
    description: 'Members who may fly this model and have to be shown the change',
  })
  members: MemberToShow[];
  @ApiProperty({ type: 'integer', description: 'Flights booked on the aircraft, all judged anew' })
  bookingsJudged: number;
  @ApiProperty({ type: [ChangedBookingView], description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}
