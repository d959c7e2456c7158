import { ApiPropertyOptional } from '@nestjs/swagger';
import { Shown } from '../platform/http/fields.js';
import { IsLocalDate, Optional } from '../platform/http/index.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../rules/facts/person.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../members/vocabulary.js';
import { LOG_ROLES } from './words.js';

export class TotalsQuery {
  @ApiPropertyOptional({
    ...{ format: 'date', description: "Flights up to this day count; today in the club's zone unless given" },
  })
  @Optional()
  @IsLocalDate()
  on?: string;
}

/** Hours in aircraft by condition. Time in training devices is never among them. */
export class HoursView {
  @Shown({ type: 'integer' })
  flights: number;

  @Shown({ type: 'number' })
  totalH: number;

  @Shown({ type: 'number' })
  nightH: number;

  @Shown({ type: 'number' })
  crossCountryH: number;

  @Shown({ type: 'number' })
  actualInstrumentH: number;

  @Shown({ type: 'number' })
  simulatedInstrumentH: number;

  @Shown({ type: 'number', description: 'Instruction given' })
  dualGivenH: number;

  @Shown({ type: 'number', description: 'Instruction received: all of the flights in that role' })
  dualReceivedH: number;

  @Shown({ type: 'number', description: 'Alone, before the certificate' })
  soloH: number;

  @Shown({
    type: 'number',
    description: 'As pilot in command, alone and as instructor (14 CFR 61.51(e))',
  })
  commandH: number;

  @Shown({ type: 'integer' })
  takeoffs: number;

  @Shown({ type: 'integer' })
  landings: number;

  @Shown({ type: 'integer' })
  fullStopLandings: number;

  @Shown({ type: 'integer' })
  nightTakeoffs: number;

  @Shown({ type: 'integer' })
  nightFullStopLandings: number;

  @Shown({ type: 'integer', description: 'Instrument approaches' })
  approaches: number;
}

/** Hours in a category. */
export class CategoryHoursView extends HoursView {
  @Shown({ type: 'string', enum: AIRCRAFT_CATEGORIES })
  category: AircraftCategory;
}

/** Hours in a category and class. */
export class ClassHoursView extends CategoryHoursView {
  @Shown({ type: 'string', enum: AIRCRAFT_CLASSES })
  class: AircraftClass;
}

/** Hours in a model of the club, or in aircraft described with the same words. */
export class ModelHoursView extends HoursView {
  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Null: no model of the club' })
  modelId: string | null;

  @Shown({ type: 'string', description: 'The model, or the aircraft in the words of its entries' })
  model: string;
}

/** Hours in a role. */
export class RoleHoursView extends HoursView {
  @Shown({ type: 'string', enum: LOG_ROLES })
  role: LogFact['role'];
}

/** The last 90 days, in aircraft of every kind together; what they count for, the rules say. */
export class RecentView extends HoursView {
  @Shown({
    type: 'string',
    format: 'date',
    description: 'First day counted, in the zone of the place flown from',
  })
  from: string;

  @Shown({ type: 'string', format: 'date', description: 'Last day counted: the day asked about' })
  through: string;
}

/** Sums over a member's log up to a day, without voided entries. */
export class LogTotalsView extends HoursView {
  @Shown({ type: 'string', format: 'date' })
  on: string;

  @Shown({ type: 'number', description: 'In simulators and training devices' })
  deviceH: number;

  @Shown({ type: 'number', description: 'By instruments in simulators and training devices' })
  deviceInstrumentH: number;

  @Shown({ type: () => CategoryHoursView, isArray: true })
  byCategory: CategoryHoursView[];

  @Shown({ type: () => ClassHoursView, isArray: true })
  byClass: ClassHoursView[];

  @Shown({ type: () => ModelHoursView, isArray: true, description: 'Most hours first' })
  byModel: ModelHoursView[];

  @Shown({ type: () => RoleHoursView, isArray: true })
  byRole: RoleHoursView[];

  @Shown({ type: () => RecentView })
  last90Days: RecentView;
}
