import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import {
  FlagField,
  HoursField,
  InstantField,
  Shown,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import type { MeterKind } from '../../rules/index.js';
import { METER_KINDS } from '../vocabulary.js';
import type { ReadingSource } from './meter-reading.entity.js';

/** POST of a reading. */
export class NewReading {
  @WordField(METER_KINDS)
  kind: MeterKind;

  @HoursField({ description: 'What the meter shows' })
  shownH: number;

  @InstantField({ optional: true, description: 'When it was read; now unless said otherwise' })
  readAt?: string;

  @WordField(['coordinator', 'replacement'], {
    optional: true,
    description: "'replacement' for the first reading of a new meter; 'coordinator' unless said otherwise",
  })
  source?: Exclude<ReadingSource, 'dispatch'>;

  @HoursField({
    optional: true,
    description:
      'With a replacement: what the old meter showed when it was taken out. The running total goes on from there',
  })
  replacedMeterH?: number;

  @FlagField({
    optional: true,
    description: 'Take a reading that is far above the last one; check it twice, readings are never edited',
  })
  confirmJump?: boolean;

  @TextField({ max: 500, nullable: true })
  note?: string | null;
}

/** A reading as an answer. */
export class ReadingView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string', enum: METER_KINDS })
  kind: MeterKind;

  @Shown({ type: 'number', description: 'What the meter showed' })
  shownH: number;

  @Shown({
    type: 'number',
    description: 'Hours of the meters before this one; negative when it already showed more',
  })
  offsetH: number;

  @Shown({ type: 'number', description: 'Running total over all meters: what intervals count by' })
  totalH: number;

  @Shown({ type: 'string', format: 'date-time' })
  readAt: string;

  @Shown({ type: 'string', enum: ['dispatch', 'coordinator', 'replacement'] })
  source: ReadingSource;

  @Shown({ type: 'string', nullable: true })
  note: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Since when it does not count' })
  voidedAt: string | null;

  @Shown({ type: 'string', nullable: true })
  voidReason: string | null;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** Why a reading is taken back. */
export class VoidReading {
  @TextField({
    max: 500,
    pattern: /\S.{3,}\S/s,
    says: 'at least 5 characters',
    description: 'What was wrong with it',
  })
  reason: string;
}

/** The newest reading of one meter. */
export class MeterView {
  @Shown({ type: 'string', enum: METER_KINDS })
  kind: MeterKind;

  @Shown({ type: 'number' })
  shownH: number;

  @Shown({ type: 'number', description: 'Running total over all meters' })
  totalH: number;

  @Shown({ type: 'string', format: 'date-time' })
  readAt: string;

  @Shown({ type: 'string', format: 'uuid' })
  readingId: string;

  @Shown({ type: 'boolean', description: 'Whether inspections count by this meter' })
  countsForInspections: boolean;
}

/** The newest reading of each meter that has one. */
export class MeterList {
  @Shown({ type: () => MeterView, isArray: true })
  items: MeterView[];
}

/** Which readings to list. */
export class ReadingQuery extends PageQuery {
  @ApiPropertyOptional({ enum: METER_KINDS })
  @IsOptional()
  @IsIn(METER_KINDS, { message: `kind must be one of ${METER_KINDS.join(', ')}` })
  kind?: MeterKind;
}

/** A page of readings, newest record first. */
export class ReadingPage extends PageShape {
  @Shown({ type: () => ReadingView, isArray: true })
  items: ReadingView[];
}
