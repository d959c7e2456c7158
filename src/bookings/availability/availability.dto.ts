import { ApiProperty } from '@nestjs/swagger';
import { DayField, Shown, TextField, WholeField, WordField } from '../../platform/http/fields.js';
import { IsInstant } from '../../platform/http/index.js';

const CLOCK = /^(([01]\d|2[0-3]):[0-5]\d|24:00)$/;
const CLOCK_SAYS = "a time of day as '09:30', up to 24:00";

/** Hours in which an instructor teaches. */
export class TeachingHoursDto {
  @WordField(['weekly', 'date'], {
    description: 'date: instead of the hours of that week’s day; without times, away all day',
  })
  kind: 'weekly' | 'date';

  @WholeField({ nullable: true, min: 1, max: 7, description: 'Weekly: 1 is Monday, 7 Sunday' })
  weekday?: number | null;

  @DayField({ nullable: true, description: 'Of the kind date' })
  on?: string | null;

  @TextField({ nullable: true, max: 5, pattern: CLOCK, says: CLOCK_SAYS, description: 'On the club’s clock' })
  opens?: string | null;

  @TextField({ nullable: true, max: 5, pattern: CLOCK, says: CLOCK_SAYS })
  closes?: string | null;

  @DayField({ nullable: true, description: 'Weekly: the first day; today unless given' })
  validFrom?: string | null;

  @DayField({ nullable: true, description: 'Weekly: the last day; no end unless given' })
  validThrough?: string | null;
}

export class TeachingHoursView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', enum: ['weekly', 'date'] })
  kind: 'weekly' | 'date';
  @Shown({ type: 'integer', nullable: true })
  weekday: number | null;
  @Shown({ type: 'string', format: 'date', nullable: true })
  on: string | null;
  @Shown({ type: 'string', nullable: true })
  opens: string | null;
  @Shown({ type: 'string', nullable: true })
  closes: string | null;
  @Shown({ type: 'string', format: 'date', nullable: true })
  validFrom: string | null;
  @Shown({ type: 'string', format: 'date', nullable: true })
  validThrough: string | null;
  @Shown({ type: 'integer', description: 'Counts edits; the ETag' })
  rowVersion: number;
}

export class TeachingHoursListView {
  @ApiProperty({
    type: [TeachingHoursView],
    description: 'That hold today or later, by weekday and then by date',
  })
  items: TeachingHoursView[];
}

export class FreeInstructorsQuery {
  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  departs: string;

  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  arrives: string;
}

/** Whether an instructor could take a lesson. */
export class FreeInstructorView {
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string' })
  name: string;
  @Shown({
    type: 'boolean',
    description: 'Nothing else is booked, and the time is not outside the hours kept',
  })
  free: boolean;
  @Shown({
    type: 'string',
    enum: ['within', 'outside', 'none-kept'],
    description: 'none-kept: no hours are on record',
  })
  hours: 'within' | 'outside' | 'none-kept';
  @Shown({
    type: 'string',
    format: 'date-time',
    nullable: true,
    description: 'Until when another booking takes the instructor up',
  })
  busyUntil: string | null;
}

export class FreeInstructorsView {
  @ApiProperty({ type: [FreeInstructorView], description: 'Who is free first' })
  items: FreeInstructorView[];
}
