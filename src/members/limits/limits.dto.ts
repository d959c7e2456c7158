import {
  DayField,
  FlagField,
  NoteField,
  NumberField,
  Shown,
  WholeField,
} from '../../platform/http/fields.js';
import { ViewOf } from '../../platform/http/views.js';

/** A whole set of limits: what is left out or null is not limited. */
export class LimitsDto {
  @WholeField({ nullable: true, max: 80, description: 'Most wind, gusts counted' })
  windKt?: number | null;

  @WholeField({ nullable: true, max: 80, description: 'Most wind across the runway, from either side' })
  crosswindKt?: number | null;

  @WholeField({ nullable: true, max: 80, description: 'Most that gusts lie over the wind' })
  gustSpreadKt?: number | null;

  @WholeField({ nullable: true, max: 20_000, description: 'Least ceiling by day, above ground' })
  ceilingDayFtAgl?: number | null;

  @WholeField({
    nullable: true,
    max: 20_000,
    description: 'Least ceiling at night; that by day holds besides',
  })
  ceilingNightFtAgl?: number | null;

  @NumberField({ nullable: true, max: 50, description: 'Least visibility by day, statute miles' })
  visibilityDaySm?: number | null;

  @NumberField({
    nullable: true,
    max: 50,
    description: 'Least visibility at night; that by day holds besides',
  })
  visibilityNightSm?: number | null;

  @WholeField({ nullable: true, min: 100, max: 20_000, description: 'Least length of a runway' })
  runwayFt?: number | null;

  @FlagField({ nullable: true, description: 'False: no flying at night' })
  night?: boolean | null;

  @NoteField({ optional: true, max: 2000 })
  note?: string;
}

/** Limits to set. */
export class SetLimitsDto extends LimitsDto {
  @DayField({
    optional: true,
    description:
      "First day they hold, in the club's zone; today unless given. One's own looser figures hold later",
  })
  from?: string;

  @DayField({
    nullable: true,
    description:
      'For an instructor: the day through which they bind whoever holds more than a student certificate; null: students only',
  })
  bindsThrough?: string | null;
}

/** Who set them. */
export class LimitsSetterView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  name: string;
}

/** Limits on record. */
export class LimitsView extends ViewOf(LimitsDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'date' })
  validFrom: string;

  @Shown({ type: 'string', format: 'date', nullable: true })
  bindsThrough: string | null;

  @Shown({ type: () => LimitsSetterView })
  setBy: LimitsSetterView;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** What one side set: what holds today, and what holds from a later day on. */
export class LimitsSideView {
  @Shown({ type: () => LimitsView, nullable: true })
  inForce: LimitsView | null;

  @Shown({ type: () => [LimitsView] })
  toCome: LimitsView[];
}

/** A member's limits: their own, judged as advice, and an instructor's, which bind a student. */
export class MemberLimitsView {
  @Shown({ type: 'string', format: 'date' })
  today: string;

  @Shown({ type: () => LimitsSideView })
  own: LimitsSideView;

  @Shown({ type: () => LimitsSideView })
  instructor: LimitsSideView;

  @Shown({
    type: 'string',
    format: 'date',
    description: 'First day on which the member’s own may be looser than they are today',
  })
  looserFrom: string;

  @Shown({ type: 'string' })
  caution: string;
}
