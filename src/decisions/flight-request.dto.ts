import { applyDecorators } from '@nestjs/common';
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import {
  ArrayMaxSize,
  ArrayMinSize,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsNumber,
  Matches,
  Max,
  Min,
} from 'class-validator';
import { PartField, PartsField } from '../platform/http/fields.js';
import { IsHoursTenths, IsId, IsInstant, Optional } from '../platform/http/index.js';
import type { AirspaceClass, Purpose } from '../rules/index.js';
import { ReportsDto } from './weather/reports.dto.js';

export const PURPOSES: readonly Purpose[] = [
  'solo',
  'passengers',
  'dual',
  'checkout',
  'maintenance',
  'ferry-to-inspection',
];
const AIRSPACE: readonly AirspaceClass[] = ['A', 'B', 'C', 'D', 'E', 'G'];

/** Weather as the member declares it; each part may be left out. */
export class WeatherDto {
  @ApiPropertyOptional({ format: 'date-time' })
  @Optional()
  @IsInstant()
  observedAt?: string;

  @ApiPropertyOptional({ minimum: 0, maximum: 360, description: 'Wind from, degrees true' })
  @Optional()
  @IsInt()
  @Min(0)
  @Max(360)
  windFromDeg?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 200 })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(200)
  windKt?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 200 })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(200)
  gustKt?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 100, description: 'Statute miles' })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(100)
  visibilitySm?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 60_000 })
  @Optional()
  @IsInt()
  @Min(0)
  @Max(60_000)
  ceilingFtAgl?: number;

  @ApiPropertyOptional({ minimum: -80, maximum: 60 })
  @Optional()
  @IsNumber()
  @Min(-80)
  @Max(60)
  temperatureC?: number;

  @ApiPropertyOptional({ minimum: 25, maximum: 33 })
  @Optional()
  @IsNumber()
  @Min(25)
  @Max(33)
  altimeterInHg?: number;

  @ApiPropertyOptional({ description: 'The runways are wet' })
  @Optional()
  @IsBoolean()
  wet?: boolean;
}

/** The worst forecast for the destination between two times; each part may be left out. */
export class ForecastDto {
  @ApiPropertyOptional({ format: 'date-time' })
  @Optional()
  @IsInstant()
  from?: string;

  @ApiPropertyOptional({ format: 'date-time' })
  @Optional()
  @IsInstant()
  to?: string;

  @ApiPropertyOptional({ minimum: 0, maximum: 60_000, description: 'Feet above the ground' })
  @Optional()
  @IsInt()
  @Min(0)
  @Max(60_000)
  ceilingFtAgl?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 100, description: 'Statute miles' })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(100)
  visibilitySm?: number;

  @ApiPropertyOptional({ description: 'An instrument approach is published for the destination' })
  @Optional()
  @IsBoolean()
  approachPublished?: boolean;
}

/** Weights by place. */
const PoundsField = (description: string): PropertyDecorator =>
  applyDecorators(
    ApiPropertyOptional({
      type: [Number],
      minItems: 1,
      maxItems: 8,
      items: { type: 'number', minimum: 0, maximum: 2000 },
      description,
    }),
    Optional(),
    IsArray(),
    ArrayMinSize(1),
    ArrayMaxSize(8),
    IsNumber({ allowNaN: false, allowInfinity: false }, { each: true }),
    Min(0, { each: true }),
    Max(2000, { each: true }),
  );

/** Loading as the member declares it. */
export class LoadingDto {
  @ApiPropertyOptional({ minimum: 0, maximum: 5000, description: 'All occupants together, pounds' })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(5000)
  occupantsLb?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 2000, description: 'Pounds' })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(2000)
  baggageLb?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 500, description: 'Fuel on board, US gallons' })
  @Optional()
  @IsNumber()
  @Min(0)
  @Max(500)
  fuelUsGal?: number;

  @PoundsField(
    'Occupants by seat row from the front, pounds; together `occupantsLb`, which may then be left out',
  )
  rowsLb?: number[];

  @PoundsField(
    'Baggage by compartment in the order of the aircraft; together `baggageLb`, which may then be left out',
  )
  compartmentsLb?: number[];
}

/** Which runway is meant to be used at an airfield. */
export class RunwayChoiceDto {
  @ApiProperty({ example: 'XQHB' })
  @Matches(/^[A-Z0-9]{2,8}$/, { message: 'airfield must be an airfield code of the club' })
  airfield: string;

  @ApiProperty({ example: '09' })
  @Matches(/^(0[1-9]|[12]\d|3[0-6])[LCR]?$/, {
    message: "runway must be a runway designator such as '09' or '27L'",
  })
  runway: string;
}

/** A flight as a member describes it. What is left out is unknown, never assumed. */
export class FlightRequestDto {
  @ApiPropertyOptional({ format: 'uuid', description: 'Who flies or is taught; yourself unless given' })
  @Optional()
  @IsId()
  memberId?: string;

  @ApiProperty({ format: 'date-time', example: '2027-03-01T18:00:00Z' })
  @IsInstant()
  departs: string;

  @ApiProperty({ format: 'date-time', example: '2027-03-01T20:00:00Z' })
  @IsInstant()
  arrives: string;

  @ApiProperty({ enum: PURPOSES })
  @IsIn(PURPOSES)
  purpose: Purpose;

  @ApiPropertyOptional({ enum: ['VFR', 'IFR'], default: 'VFR' })
  @Optional()
  @IsIn(['VFR', 'IFR'])
  flightRules?: 'VFR' | 'IFR';

  @ApiProperty({ minimum: 1, maximum: 20, description: 'Everyone aboard, pilots included' })
  @IsInt()
  @Min(1)
  @Max(20)
  personsOnBoard: number;

  @ApiPropertyOptional({ format: 'uuid' })
  @Optional()
  @IsId()
  instructorId?: string;

  @ApiPropertyOptional({ format: 'uuid', description: 'Another rated pilot at the controls' })
  @Optional()
  @IsId()
  secondPilotId?: string;

  @ApiPropertyOptional({
    format: 'uuid',
    description: 'Which of two pilots acts as pilot in command; the member unless given',
  })
  @Optional()
  @IsId()
  actingPilotId?: string;

  @ApiPropertyOptional({
    default: false,
    description: 'The second pilot is required crew (safety pilot, 14 CFR 91.109(c))',
  })
  @Optional()
  @IsBoolean()
  secondPilotRequired?: boolean;

  @ApiPropertyOptional({
    default: false,
    description: 'Persons or property are carried for compensation or hire',
  })
  @Optional()
  @IsBoolean()
  forHire?: boolean;

  @ApiPropertyOptional({
    type: [String],
    description: 'Airfield codes in order, every one a landing; home and back unless given',
    example: ['XQHB', 'XQPV', 'XQHB'],
  })
  @Optional()
  @IsArray()
  @ArrayMinSize(2)
  @ArrayMaxSize(12)
  @Matches(/^[A-Z0-9]{2,8}$/, { each: true, message: 'route must hold airfield codes of the club' })
  route?: string[];

  @ApiPropertyOptional({
    type: [String],
    description:
      "Airfield codes of the landings between leaving the aircraft's home and being home again; not with `route`",
    example: ['XQPV'],
  })
  @Optional()
  @IsArray()
  @ArrayMaxSize(10)
  @Matches(/^[A-Z0-9]{2,8}$/, { each: true, message: 'landings must hold airfield codes of the club' })
  landings?: string[];

  @PartsField(() => RunwayChoiceDto, {
    optional: true,
    max: 12,
    description: 'Runways chosen; elsewhere the best for the wind told is reckoned with, or the longest',
  })
  runways?: RunwayChoiceDto[];

  @ApiPropertyOptional({
    description: 'Planned meter hours; the whole time between departure and arrival unless given',
  })
  @Optional()
  @IsHoursTenths()
  plannedHours?: number;

  @ApiPropertyOptional({ type: [String], enum: AIRSPACE })
  @Optional()
  @IsArray()
  @ArrayUnique()
  @IsIn(AIRSPACE, { each: true })
  airspace?: AirspaceClass[];

  @ApiPropertyOptional({ minimum: 0, maximum: 60_000 })
  @Optional()
  @IsInt()
  @Min(0)
  @Max(60_000)
  maxAltitudeFtMsl?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 600 })
  @Optional()
  @IsInt()
  @Min(0)
  @Max(600)
  maxSpeedKias?: number;

  @ApiPropertyOptional()
  @Optional()
  @IsBoolean()
  usesVor?: boolean;

  @ApiPropertyOptional()
  @Optional()
  @IsBoolean()
  usesTransponder?: boolean;

  @ApiPropertyOptional()
  @Optional()
  @IsBoolean()
  overWaterBeyondGlide?: boolean;

  @PartField(() => WeatherDto, { optional: true })
  weather?: WeatherDto;

  @PartField(() => ReportsDto, {
    optional: true,
    description:
      'Weather reports and forecasts pasted word for word; where none is, those that the service fetched count. What is told by hand goes before them',
  })
  reports?: ReportsDto;

  @PartField(() => ForecastDto, { optional: true })
  destinationForecast?: ForecastDto;

  @PartField(() => LoadingDto, { optional: true })
  loading?: LoadingDto;
}

/** A question: a flight, and the aircraft wanted. */
export class AskDto extends FlightRequestDto {
  @ApiPropertyOptional({
    type: [String],
    format: 'uuid',
    description: 'The aircraft asked about; every aircraft of the club unless given',
  })
  @Optional()
  @IsArray()
  @ArrayMinSize(1)
  @ArrayMaxSize(50)
  @ArrayUnique()
  @IsId({ each: true })
  aircraftIds?: string[];

  @ApiPropertyOptional({
    default: false,
    description:
      'Search for ways to yes as well, where one aircraft is asked about and the answer is no plain yes',
  })
  @Optional()
  @IsBoolean()
  ways?: boolean;

  @ApiPropertyOptional({
    default: false,
    description:
      'A question about a day to come, ahead of making a booking: rules about how a booking is made (how far ahead) are not asked',
  })
  @Optional()
  @IsBoolean()
  planned?: boolean;
}
