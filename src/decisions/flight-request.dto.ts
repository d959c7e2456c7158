import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsNumber,
  IsOptional,
  IsUUID,
  Matches,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import { IsHoursTenths, IsInstant } from '../platform/http/index.js';
import type { AirspaceClass, Purpose } from '../rules/index.js';

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
  @IsOptional()
  @IsInstant()
  observedAt?: string;

  @ApiPropertyOptional({ minimum: 0, maximum: 360, description: 'Wind from, degrees true' })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(360)
  windFromDeg?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 200 })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(200)
  windKt?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 200 })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(200)
  gustKt?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 100, description: 'Statute miles' })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(100)
  visibilitySm?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 60_000 })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(60_000)
  ceilingFtAgl?: number;

  @ApiPropertyOptional({ minimum: -80, maximum: 60 })
  @IsOptional()
  @IsNumber()
  @Min(-80)
  @Max(60)
  temperatureC?: number;

  @ApiPropertyOptional({ minimum: 25, maximum: 33 })
  @IsOptional()
  @IsNumber()
  @Min(25)
  @Max(33)
  altimeterInHg?: number;
}

/** Loading as the member declares it. */
export class LoadingDto {
  @ApiPropertyOptional({ minimum: 0, maximum: 5000, description: 'All occupants together, pounds' })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(5000)
  occupantsLb?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 2000, description: 'Pounds' })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(2000)
  baggageLb?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 500, description: 'Fuel on board, US gallons' })
  @IsOptional()
  @IsNumber()
  @Min(0)
  @Max(500)
  fuelUsGal?: number;
}

/** A flight as a member describes it. What is left out is unknown, never assumed. */
export class FlightRequestDto {
  @ApiPropertyOptional({ format: 'uuid', description: 'Who flies or is taught; yourself unless given' })
  @IsOptional()
  @IsUUID()
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
  @IsOptional()
  @IsIn(['VFR', 'IFR'])
  flightRules?: 'VFR' | 'IFR';

  @ApiProperty({ minimum: 1, maximum: 20, description: 'Everyone aboard, pilots included' })
  @IsInt()
  @Min(1)
  @Max(20)
  personsOnBoard: number;

  @ApiPropertyOptional({ format: 'uuid' })
  @IsOptional()
  @IsUUID()
  instructorId?: string;

  @ApiPropertyOptional({ format: 'uuid', description: 'Another rated pilot at the controls' })
  @IsOptional()
  @IsUUID()
  secondPilotId?: string;

  @ApiPropertyOptional({
    format: 'uuid',
    description: 'Which of two pilots acts as pilot in command; the member unless given',
  })
  @IsOptional()
  @IsUUID()
  actingPilotId?: string;

  @ApiPropertyOptional({
    default: false,
    description: 'The second pilot is required crew (safety pilot, 14 CFR 91.109(c))',
  })
  @IsOptional()
  @IsBoolean()
  secondPilotRequired?: boolean;

  @ApiPropertyOptional({
    default: false,
    description: 'Persons or property are carried for compensation or hire',
  })
  @IsOptional()
  @IsBoolean()
  forHire?: boolean;

  @ApiPropertyOptional({
    type: [String],
    description: 'Airfield codes in order, every one a landing; home and back unless given',
    example: ['XQHB', 'XQPV', 'XQHB'],
  })
  @IsOptional()
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
  @IsOptional()
  @IsArray()
  @ArrayMaxSize(10)
  @Matches(/^[A-Z0-9]{2,8}$/, { each: true, message: 'landings must hold airfield codes of the club' })
  landings?: string[];

  @ApiPropertyOptional({
    description: 'Planned meter hours; the whole time between departure and arrival unless given',
  })
  @IsOptional()
  @IsHoursTenths()
  plannedHours?: number;

  @ApiPropertyOptional({ type: [String], enum: AIRSPACE })
  @IsOptional()
  @IsArray()
  @ArrayUnique()
  @IsIn(AIRSPACE, { each: true })
  airspace?: AirspaceClass[];

  @ApiPropertyOptional({ minimum: 0, maximum: 60_000 })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(60_000)
  maxAltitudeFtMsl?: number;

  @ApiPropertyOptional({ minimum: 0, maximum: 600 })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(600)
  maxSpeedKias?: number;

  @ApiPropertyOptional()
  @IsOptional()
  @IsBoolean()
  usesVor?: boolean;

  @ApiPropertyOptional()
  @IsOptional()
  @IsBoolean()
  usesTransponder?: boolean;

  @ApiPropertyOptional()
  @IsOptional()
  @IsBoolean()
  overWaterBeyondGlide?: boolean;

  @ApiPropertyOptional({ type: WeatherDto })
  @IsOptional()
  @ValidateNested()
  @Type(() => WeatherDto)
  weather?: WeatherDto;

  @ApiPropertyOptional({ type: LoadingDto })
  @IsOptional()
  @ValidateNested()
  @Type(() => LoadingDto)
  loading?: LoadingDto;
}

/** A question: a flight, and the aircraft wanted. */
export class AskDto extends FlightRequestDto {
  @ApiPropertyOptional({
    type: [String],
    format: 'uuid',
    description: 'The aircraft asked about; every aircraft of the club unless given',
  })
  @IsOptional()
  @IsArray()
  @ArrayMinSize(1)
  @ArrayMaxSize(50)
  @ArrayUnique()
  @IsUUID(undefined, { each: true })
  aircraftIds?: string[];
}
