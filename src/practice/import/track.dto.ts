import { IdField, PartField, PartsField, Shown, TextField } from '../../platform/http/fields.js';
import { LogEntryDto, LogEntryView } from '../../logbook/log.dto.js';
import { PracticeRecordDto, PracticeRecordView, SpanDto } from '../records/practice.dto.js';

/** A position for the picture. */
export class TrackPointView {
  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'number' })
  latitudeDeg: number;

  @Shown({ type: 'number' })
  longitudeDeg: number;

  @Shown({ type: 'number', nullable: true })
  elevationFt: number | null;
}

/** One of the factors whose product a confidence is. */
export class TrackFactorView {
  @Shown({ type: 'string', description: 'What it is about' })
  says: string;

  @Shown({ type: 'number', description: '0 to 1; 1 takes nothing away' })
  factor: number;
}

/** Something the track shows. */
export class TrackEventView {
  @Shown({ type: 'string', example: 'steep-turn-1' })
  id: string;

  @Shown({ type: 'string', enum: ['take-off', 'landing', 'low-approach', 'steep-turn', 'hold'] })
  kind: string;

  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'string', format: 'date-time' })
  until: string;

  @Shown({ type: 'string', nullable: true })
  airfield: string | null;

  @Shown({ type: 'string', nullable: true })
  runway: string | null;

  @Shown({
    type: 'boolean',
    nullable: true,
    description: 'Of a landing; null: the track does not show the stop',
  })
  fullStop: boolean | null;

  @Shown({ type: 'number', nullable: true, description: 'Middle bank of a steep turn, degrees' })
  bankDeg: number | null;

  @Shown({ type: () => SpanDto, nullable: true, description: 'Of a steep turn, from its beginning; feet' })
  altitudeDevFt: SpanDto | null;

  @Shown({
    type: 'number',
    nullable: true,
    description: 'Wind at the height of a turn, from its drift; true',
  })
  windFromDeg: number | null;

  @Shown({ type: 'number', nullable: true })
  windKt: number | null;

  @Shown({ type: 'number', description: 'A product of named factors, 0 to 1; no probability' })
  confidence: number;

  @Shown({ type: () => TrackFactorView, isArray: true, description: 'The factors' })
  factors: TrackFactorView[];
}

/** A value of the log that the track suggests. */
export class TrackLogValueView {
  @Shown({ type: 'string', example: 'landings' })
  field: string;

  @Shown({ oneOf: [{ type: 'string' }, { type: 'number' }, { type: 'boolean' }], nullable: true })
  value: string | number | boolean | null;

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Events it was counted from' })
  evidence: string[];

  @Shown({ type: 'number' })
  confidence: number;

  @Shown({ type: 'array', items: { type: 'string' } })
  caveats: string[];
}

/** A practice record the track suggests. */
export class TrackPracticeView {
  @Shown({ type: 'string' })
  event: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: () => PracticeRecordDto, description: 'As it would be confirmed' })
  record: PracticeRecordDto;

  @Shown({ type: 'number' })
  confidence: number;

  @Shown({ type: 'array', items: { type: 'string' } })
  caveats: string[];

  @Shown({ type: 'boolean', description: 'On record already' })
  onRecord: boolean;
}

/** What a track shows. Nothing is stored. */
export class TrackReadingView {
  @Shown({ type: 'string', description: 'SHA-256 of the file, to confirm with' })
  trackSha256: string;

  @Shown({ type: 'string', format: 'date-time' })
  from: string;

  @Shown({ type: 'string', format: 'date-time' })
  to: string;

  @Shown({ type: 'integer' })
  points: number;

  @Shown({ type: () => TrackPointView, isArray: true, description: 'Some of the points, for a picture' })
  picture: TrackPointView[];

  @Shown({ type: () => TrackEventView, isArray: true })
  events: TrackEventView[];

  @Shown({ type: () => TrackLogValueView, isArray: true })
  log: TrackLogValueView[];

  @Shown({ type: () => TrackPracticeView, isArray: true })
  practice: TrackPracticeView[];

  @Shown({ type: 'array', items: { type: 'string' }, description: 'What was not looked for, and why' })
  unseen: string[];

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'A flight of that time in the log' })
  loggedAlready: string | null;

  @Shown({ type: 'string' })
  caution: string;
}

/** A practice record with the event it was seen in. */
export class ConfirmedPracticeDto extends PracticeRecordDto {
  @TextField({ max: 60, pattern: /^[a-z]+(-[a-z]+)*-[0-9]{1,5}$/, says: 'an event as the reading named it' })
  event: string;
}

/** What of a track's proposals is entered. */
export class ConfirmTrackDto {
  @TextField({ max: 64, pattern: /^[0-9a-f]{64}$/, says: 'the digest the reading answered with' })
  trackSha256: string;

  @PartField(() => LogEntryDto, { nullable: true, description: 'The flight; null: it is not logged' })
  log?: LogEntryDto | null;

  @IdField({ nullable: true, description: 'A flight in the log already, for the practice to hang on' })
  logEntryId?: string | null;

  @PartsField(() => ConfirmedPracticeDto, { max: 60 })
  practice: ConfirmedPracticeDto[];
}

/** What was entered. */
export class ConfirmedTrackView {
  @Shown({ type: () => LogEntryView, nullable: true })
  log: LogEntryView | null;

  @Shown({ type: () => PracticeRecordView, isArray: true })
  practice: PracticeRecordView[];
}
