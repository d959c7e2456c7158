import { METER_KINDS } from '../../fleet/vocabulary.js';
import { NewSquawk } from '../../fleet/squawks/squawk.dto.js';
import { LOG_ROLES } from '../../logbook/words.js';
import {
  FlagField,
  HoursField,
  IdField,
  InstantField,
  NoteField,
  NumberField,
  PartsField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { ViewOf } from '../../platform/http/views.js';
import type { LogFact, MeterKind } from '../../rules/index.js';

const COUNT = { max: 200 };
const CODE = { max: 40, example: 'XLF' };

/** What one person of the crew logs of the flight. */
export class ReturnEntryDto {
  @IdField({ description: 'Somebody of the booking' })
  memberId: string;

  @WordField(LOG_ROLES)
  role: LogFact['role'];

  @FlagField({ description: 'Sole manipulator of the controls (14 CFR 61.57)' })
  soleManipulator: boolean;

  @HoursField()
  totalH: number;

  @HoursField()
  nightH: number;

  @HoursField()
  crossCountryH: number;

  @HoursField({ optional: true, description: 'Of the total, by instruments in actual conditions' })
  actualInstrumentH?: number;

  @HoursField({ optional: true, description: 'Of the total, by instruments under a view-limiting device' })
  simulatedInstrumentH?: number;

  @HoursField({ optional: true, description: 'Instruction given' })
  dualGivenH?: number;

  @WholeField(COUNT)
  takeoffs: number;

  @WholeField({ ...COUNT, description: 'All landings, full stop or not' })
  landings: number;

  @WholeField({ ...COUNT, description: 'Of the landings, those to a full stop' })
  fullStopLandings: number;

  @WholeField({ ...COUNT, description: 'From one hour after sunset to one hour before sunrise' })
  nightTakeoffs: number;

  @WholeField({ ...COUNT, description: 'From one hour after sunset to one hour before sunrise' })
  nightFullStopLandings: number;

  @WholeField({ ...COUNT, optional: true, description: 'Instrument approaches' })
  approaches?: number;

  @FlagField({ optional: true })
  holding?: boolean;

  @FlagField({ optional: true, description: 'Courses intercepted and tracked by electronic navigation' })
  interceptTrack?: boolean;

  @NoteField({ optional: true, max: 2000, description: 'Kept in the log only; changed there' })
  remarks?: string;
}

/** A meter after the flight. */
export class MeterInDto {
  @WordField(METER_KINDS)
  kind: MeterKind;

  @HoursField({ description: 'What the meter shows' })
  shownH: number;

  @FlagField({
    optional: true,
    description: 'Take more hours than the flight lasted; check the figure twice',
  })
  confirmJump?: boolean;
}

/** When and between which airfields it was flown. */
export class FlownDto {
  @InstantField({ description: 'Off blocks' })
  departedAt: string;

  @InstantField({ description: 'On blocks' })
  arrivedAt: string;

  @TextField(CODE)
  fromAirfield: string;

  @TextField(CODE)
  toAirfield: string;
}

/** What a flight came to, apart from what was found wrong with the aircraft. */
export class FlightFlownDto extends FlownDto {
  @PartsField(() => MeterInDto, { max: 3, description: 'The meters that were confirmed before departure' })
  meters: MeterInDto[];

  @NumberField({ optional: true, max: 500, description: 'Fuel left on board, US gallons' })
  fuelUsGal?: number;

  @NumberField({ optional: true, max: 500, description: 'Fuel bought elsewhere, US gallons' })
  fuelBoughtUsGal?: number;

  @NumberField({ optional: true, max: 100_000, description: "What was paid for it, in the club's currency" })
  fuelPaid?: number;

  @NumberField({ optional: true, max: 60, description: 'Oil added, US quarts' })
  oilAddedQt?: number;

  @IdField({ optional: true, description: 'Who pays: somebody of the booking; the pilot unless given' })
  payerId?: string;

  @PartsField(() => ReturnEntryDto, {
    max: 3,
    description:
      "What goes into whose log: the pilot's, and those of instructor and second pilot where they log",
  })
  entries: ReturnEntryDto[];
}

/** The aircraft brought back. */
export class ReturnDto extends FlightFlownDto {
  @PartsField(() => NewSquawk, { optional: true, max: 20, description: 'What was found wrong with it' })
  squawks?: NewSquawk[];
}

/** A return put right. */
export class CorrectionDto extends FlightFlownDto {
  @IdField({ description: 'The return it stands in the place of: the one that was read' })
  replacesId: string;

  @TextField({ max: 500, pattern: /\S.{3,}\S/s, says: 'at least 5 characters' })
  because: string;
}

/** What a proposal is worked out from. */
export class ProposalDto extends FlownDto {
  @WholeField({ ...COUNT, description: 'All landings; 1 unless given', optional: true })
  landings?: number;

  @WholeField({ ...COUNT, description: 'Of them, to a full stop; 1 unless given', optional: true })
  fullStopLandings?: number;
}

/** What somebody may log of it, to be looked through: null where it cannot be worked out. */
export class ProposedEntry {
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string' })
  name: string;
  @Shown({ type: 'string', enum: LOG_ROLES })
  role: LogFact['role'];
  @Shown({ type: 'boolean' })
  soleManipulator: boolean;
  @Shown({ type: 'number' })
  totalH: number;
  @Shown({
    type: 'number',
    nullable: true,
    description: 'null: an airfield whose place the club does not know',
  })
  nightH: number | null;
  @Shown({ type: 'number' })
  crossCountryH: number;
  @Shown({ type: 'number' })
  dualGivenH: number;
  @Shown({ type: 'integer' })
  takeoffs: number;
  @Shown({ type: 'integer' })
  landings: number;
  @Shown({ type: 'integer' })
  fullStopLandings: number;
  @Shown({ type: 'integer', nullable: true })
  nightTakeoffs: number | null;
  @Shown({ type: 'integer', nullable: true })
  nightFullStopLandings: number | null;
}

/** A proposal for the logs. */
export class ProposalView {
  @Shown({ type: () => ProposedEntry, isArray: true })
  entries: ProposedEntry[];
  @Shown({ type: 'string' })
  caution: string;
}

/** A meter over the flight. */
export class MeterFlownView {
  @Shown({ type: 'string', enum: METER_KINDS })
  kind: MeterKind;
  @Shown({ type: 'number' })
  shownH: number;
  @Shown({ type: 'number', description: 'Hours between departure and return' })
  flownH: number;
}

/** What went into a log, as the return gave it. */
export class ReturnEntryView extends ViewOf(ReturnEntryDto) {
  @Shown({ type: 'string', format: 'uuid' })
  logEntryId: string;
}

/** A return as it stands. */
export class ReturnView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'date-time' })
  returnedAt: string;
  @Shown({ type: 'string', format: 'uuid' })
  returnedBy: string;
  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'The return it stands in the place of',
  })
  replacesId: string | null;
  @Shown({ type: 'string', nullable: true })
  because: string | null;
  @Shown({ type: 'string', format: 'date-time' })
  departedAt: string;
  @Shown({ type: 'string', format: 'date-time' })
  arrivedAt: string;
  @Shown({ type: 'string' })
  fromAirfield: string;
  @Shown({ type: 'string' })
  toAirfield: string;
  @Shown({ type: () => MeterFlownView, isArray: true })
  meters: MeterFlownView[];
  @Shown({ type: 'number', nullable: true })
  fuelUsGal: number | null;
  @Shown({ type: 'number' })
  fuelBoughtUsGal: number;
  @Shown({ type: 'number' })
  fuelPaid: number;
  @Shown({ type: 'number' })
  oilAddedQt: number;
  @Shown({ type: 'string', format: 'uuid' })
  payerId: string;
  @Shown({ type: () => ReturnEntryView, isArray: true })
  entries: ReturnEntryView[];
}
