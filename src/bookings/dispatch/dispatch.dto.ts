import { ApiPropertyOptional } from '@nestjs/swagger';
import { ArrayMaxSize, IsArray, IsString, MaxLength } from 'class-validator';
import { DecisionDto } from '../../decisions/decision.dto.js';
import { LoadingDto, WeatherDto } from '../../decisions/flight-request.dto.js';
import { MeterView } from '../../fleet/meters/meter.dto.js';
import { SquawkView } from '../../fleet/squawks/squawk.dto.js';
import { METER_KINDS } from '../../fleet/vocabulary.js';
import {
  FlagField,
  HoursField,
  IdField,
  IdsField,
  NumberField,
  PartField,
  PartsField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { NoNul, Optional } from '../../platform/http/index.js';
import { VoidedView } from '../../platform/http/views.js';
import type { MeterKind } from '../../rules/index.js';
import { BookingDto } from '../booking.dto.js';

/** What a gap between the last reading and the one before departure can be. */
export const GAPS = ['flight-not-entered', 'engine-run', 'misread-before', 'not-known'] as const;
export type Gap = (typeof GAPS)[number];

/** Who and what is there in place of what was booked, and the weather; what is left out stays as it was booked. */
export class AtTheAircraft {
  @IdField({ optional: true, description: 'Another aircraft in place of the booked one' })
  aircraftId?: string;

  @IdField({
    optional: true,
    description:
      'Another pilot in place of the one who booked: for instructors and officers, or the second pilot of the booking',
  })
  memberId?: string;

  @PartField(() => WeatherDto, { optional: true })
  weather?: WeatherDto;

  @PartField(() => LoadingDto, { optional: true, description: 'Its fuel is `fuelUsGal` where that is given' })
  loading?: LoadingDto;
}

/** A look at the flight as it stands now. Nothing is handed out. */
export class LookDto extends AtTheAircraft {
  @WholeField({ optional: true, min: 1, max: 20, description: 'Everyone aboard, pilots included' })
  personsOnBoard?: number;

  @NumberField({ optional: true, max: 500, description: 'Fuel on board, US gallons' })
  fuelUsGal?: number;
}

/** What a meter shows that went on since it was last read. */
export class GapDto {
  @WordField(GAPS)
  because: Gap;

  @TextField({ max: 500, pattern: /\S.*\S.*\S/s, says: 'at least 3 characters' })
  note: string;
}

/** A meter before departure. */
export class MeterOutDto {
  @WordField(METER_KINDS)
  kind: MeterKind;

  @HoursField({ description: 'What the meter shows' })
  shownH: number;

  @PartField(() => GapDto, {
    optional: true,
    description: 'Needed where it shows more than the last reading: what the hours between are',
  })
  gap?: GapDto;
}

/** The aircraft handed over. */
export class DispatchDto extends AtTheAircraft {
  @WholeField({ min: 1, max: 20, description: 'Everyone aboard, pilots included' })
  personsOnBoard: number;

  @NumberField({ max: 500, description: 'Fuel on board, US gallons' })
  fuelUsGal: number;

  @NumberField({ optional: true, max: 60, description: 'Oil, US quarts' })
  oilQt?: number;

  @PartsField(() => MeterOutDto, { max: 3, description: 'Every meter that has been read before' })
  meters: MeterOutDto[];

  @IdsField({ description: 'Open and deferred squawks that were read: all of them' })
  squawksSeen: string[];

  @ApiPropertyOptional({
    type: [String],
    maxItems: 100,
    description: 'The conditions of the answer as they were shown, each accepted by itself',
  })
  @Optional()
  @IsArray()
  @ArrayMaxSize(100)
  @IsString({ each: true })
  @NoNul({ each: true })
  @MaxLength(2000, { each: true })
  conditionsAccepted?: string[];

  @FlagField({ description: 'The self-assessment was gone through. Nothing else of it is kept' })
  selfAssessed: boolean;
}

/** Why something is taken back. */
export class BecauseDto {
  @TextField({ max: 500, pattern: /\S.{3,}\S/s, says: 'at least 5 characters' })
  reason: string;
}

/** A meter as it was confirmed. */
export class MeterOutView {
  @Shown({ type: 'string', enum: METER_KINDS })
  kind: MeterKind;
  @Shown({ type: 'number' })
  shownH: number;
  @Shown({ type: 'number', description: 'Hours since the last reading; 0 where it agreed' })
  gapH: number;
  @Shown({ type: 'string', enum: [...GAPS], nullable: true })
  gapBecause: Gap | null;
  @Shown({ type: 'string', nullable: true })
  gapNote: string | null;
}

/** A dispatch. */
export class DispatchView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'date-time' })
  dispatchedAt: string;
  @Shown({ type: 'string', format: 'uuid' })
  dispatchedBy: string;
  @Shown({ type: 'string', format: 'uuid' })
  decisionId: string;
  @Shown({ type: 'integer' })
  personsOnBoard: number;
  @Shown({ type: 'number' })
  fuelUsGal: number;
  @Shown({ type: 'number', nullable: true })
  oilQt: number | null;
  @Shown({ type: () => MeterOutView, isArray: true })
  meters: MeterOutView[];
  @Shown({ type: 'string', format: 'uuid', isArray: true })
  squawksSeen: string[];
  @Shown({ type: 'string', isArray: true })
  conditionsAccepted: string[];
  @Shown({ type: () => VoidedView, nullable: true })
  takenBack: VoidedView | null;
}

/** One item of the pilot's self-assessment. */
export class SelfAssessmentItem {
  @Shown({ type: 'string', example: 'Illness' })
  item: string;
  @Shown({ type: 'string' })
  asks: string;
}

/** Everything to be looked at before the aircraft is handed over, judged as of now. */
export class DispatchSheet {
  @Shown({ type: () => BookingDto })
  booking: BookingDto;
  @Shown({ type: () => DecisionDto, description: 'The answer with the facts of now' })
  decision: DecisionDto;
  @Shown({ type: 'boolean', description: 'Whether the answer lets the flight go' })
  mayGo: boolean;
  @Shown({
    type: 'string',
    isArray: true,
    description: 'Club rules in the way that an officer set aside for this booking; that stays good',
  })
  setAside: string[];
  @Shown({ type: () => SquawkView, isArray: true, description: 'Open and deferred, newest first' })
  squawks: SquawkView[];
  @Shown({ type: () => MeterView, isArray: true, description: 'The last reading of each meter' })
  meters: MeterView[];
  @Shown({ type: () => SelfAssessmentItem, isArray: true })
  selfAssessment: SelfAssessmentItem[];
  @Shown({ type: 'string' })
  selfAssessmentSource: string;
  @Shown({ type: 'string', format: 'date-time', description: 'The aircraft is handed out from then on' })
  from: string;
  @Shown({ type: 'string' })
  caution: string;
}
