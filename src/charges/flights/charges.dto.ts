import { ApiPropertyOptional } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import {
  HoursField,
  IdField,
  InstantField,
  NumberField,
  Shown,
  WholeField,
} from '../../platform/http/fields.js';
import { IsHoursTenths, IsId, IsInstant, Optional } from '../../platform/http/index.js';
import { PageShape } from '../../platform/http/pages.js';
import { type ChargeLine, LINE_KINDS } from './charge-lines.js';

const MOST_MINUTES = 6_000;

/** What was flown, to charge it by. */
export class ChargeFlightDto {
  @IdField({ optional: true, description: 'On whose account it goes; left out: whoever booked it' })
  payerId?: string;

  @IdField({ nullable: true, description: 'Who taught; null: nobody' })
  instructorId?: string | null;

  @InstantField()
  departedAt: string;

  @InstantField()
  arrivedAt: string;

  @HoursField({ nullable: true, description: 'What the Hobbs meter ran; null: not read' })
  hobbsH?: number | null;

  @HoursField({ nullable: true, description: 'What the tachometer ran; null: not read' })
  tachH?: number | null;

  @WholeField({ max: MOST_MINUTES, nullable: true, description: 'Flight and ground; null: not told' })
  instructionMinutes?: number | null;

  @NumberField({ max: 1000, optional: true, description: 'Bought elsewhere and paid for by the member' })
  fuelBoughtUsGal?: number;

  @WholeField({ max: 10_000_000, optional: true, description: 'In the smallest unit of the currency' })
  fuelPaidMinor?: number;

  @NumberField({ max: 1000, optional: true, description: "Drawn from the club's own supply" })
  fuelClubUsGal?: number;
}

/** One line of a charge: quantity by rate, rounded half up to the smallest unit of the currency. */
export class ChargeLineView implements ChargeLine {
  @Shown({ type: 'string', enum: [...LINE_KINDS] })
  kind: ChargeLine['kind'];

  @Shown({ type: 'number' })
  quantity: number;

  @Shown({ type: 'string', enum: ['h', 'min', 'US gal'] })
  unit: ChargeLine['unit'];

  @Shown({
    type: 'integer',
    nullable: true,
    description: 'For an hour or a gallon; null: what was paid comes back as it is',
  })
  perUnitMinor: number | null;

  @Shown({ type: 'number', description: 'Before rounding, to three decimals' })
  exactMinor: number;

  @Shown({ type: 'integer', description: 'Rounded half up; money that comes back is less than nothing' })
  amountMinor: number;

  @Shown({ type: 'string', format: 'uuid', description: 'The rate it was worked out by' })
  rateId: string;
}

/** A flight to be priced before it is flown. */
export class EstimateQuery {
  @ApiPropertyOptional({ format: 'date-time', description: 'Left out: now' })
  @Optional()
  @IsInstant()
  departs?: string;

  @ApiPropertyOptional({
    ...{ format: 'date-time', description: 'Left out: the hours to be flown later, or one hour' },
  })
  @Optional()
  @IsInstant()
  arrives?: string;

  @ApiPropertyOptional({
    type: 'number',
    description: 'Hours to be flown; left out: from departure to arrival',
  })
  @Optional()
  @Transform(({ value }) =>
    typeof value === 'string' && /^\d{1,5}(\.\d)?$/.test(value) ? Number(value) : value,
  )
  @IsHoursTenths()
  hours?: number;

  @ApiPropertyOptional({ format: 'uuid' })
  @Optional()
  @IsId()
  instructorId?: string;
}

/** About what a flight in one aircraft would cost. */
export class EstimateView {
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'integer', nullable: true, description: 'Null: something is missing' })
  amountMinor: number | null;

  @Shown({ type: () => ChargeLineView, isArray: true })
  lines: ChargeLineView[];

  @Shown({ type: 'string', nullable: true, description: 'What is missing, and what to do' })
  missing: string | null;
}

/** For each aircraft in use. */
export class EstimatesView {
  @Shown({ type: 'string', nullable: true, description: 'ISO 4217 code; null: no aircraft has a rate' })
  currency: string | null;

  @Shown({ type: 'integer', nullable: true, description: 'How many of the smallest unit make one' })
  minorPerUnit: number | null;

  @Shown({ type: () => EstimateView, isArray: true })
  estimates: EstimateView[];
}

/** A flight that came back and is not charged. */
export class UnchargedView {
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string' })
  registration: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string' })
  memberName: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Who was booked to teach' })
  instructorId: string | null;

  @Shown({ type: 'string', format: 'date-time' })
  departs: string;

  @Shown({ type: 'string', format: 'date-time' })
  arrives: string;
}

/** One page of them, oldest booking first. */
export class UnchargedPage extends PageShape {
  @Shown({ type: () => UnchargedView, isArray: true })
  items: UnchargedView[];
}
