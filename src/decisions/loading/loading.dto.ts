import { ApiProperty } from '@nestjs/swagger';
import type {
  EnvelopeCategory,
  LoadingWork,
  WorkedLine,
  WorkedPoint,
  WorkedRunway,
} from '../../rules/index.js';

const CATEGORIES = ['normal', 'utility'];

export class WorkedLineDto implements WorkedLine {
  @ApiProperty()
  what: string;
  @ApiProperty({ description: 'Pounds' })
  weightLb: number;
  @ApiProperty({ description: 'Inches aft of the datum' })
  armIn: number;
  @ApiProperty({ description: 'Pound-inches' })
  momentLbIn: number;
}

export class WorkedPointDto implements WorkedPoint {
  @ApiProperty({ enum: ['takeoff', 'landing', 'zero-fuel'] })
  when: WorkedPoint['when'];
  @ApiProperty()
  weightLb: number;
  @ApiProperty()
  armIn: number;
  @ApiProperty()
  momentLbIn: number;
  @ApiProperty({ enum: CATEGORIES, isArray: true, description: 'In whose limits it lies; none: outside' })
  categories: EnvelopeCategory[];
}

export class CornerDto {
  @ApiProperty()
  armIn: number;
  @ApiProperty()
  weightLb: number;
}

export class LimitsDto {
  @ApiProperty({ enum: CATEGORIES })
  category: EnvelopeCategory;
  @ApiProperty({ type: [CornerDto], description: 'Corners in order; the edge is inside' })
  points: CornerDto[];
}

export class DistanceStepDto {
  @ApiProperty({ enum: ['table', 'headwind', 'tailwind', 'slope', 'surface', 'wet'] })
  step: WorkedRunway['steps'][number]['step'];
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Added; taken off where negative; null: the table',
  })
  percent: number | null;
  @ApiProperty()
  groundRollFt: number;
  @ApiProperty()
  over50Ft: number;
}

export class HalfWayDto {
  @ApiProperty({ description: 'Half the runway, feet' })
  atFt: number;
  @ApiProperty({
    description: 'Knots indicated with which a take-off goes on there (common practice, no source)',
  })
  leastKt: number;
  @ApiProperty()
  expectedKt: number;
}

export class WorkedRunwayDto implements WorkedRunway {
  @ApiProperty({ enum: ['takeoff', 'landing'] })
  does: WorkedRunway['does'];
  @ApiProperty()
  airfield: string;
  @ApiProperty()
  runway: string;
  @ApiProperty()
  lengthFt: number;
  @ApiProperty()
  weightLb: number;
  @ApiProperty()
  pressureAltitudeFt: number;
  @ApiProperty()
  densityAltitudeFt: number;
  @ApiProperty()
  oatC: number;
  @ApiProperty({ description: 'Negative: from behind' })
  headwindKt: number;
  @ApiProperty({ type: [DistanceStepDto], description: 'Each factor in turn' })
  steps: DistanceStepDto[];
  @ApiProperty()
  groundRollFt: number;
  @ApiProperty()
  over50Ft: number;
  @ApiProperty({ description: 'With the club’s margin' })
  neededFt: number;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Over 50 ft on a wet runway, where it is not told',
  })
  ifWetFt: number | null;
  @ApiProperty({ type: HalfWayDto, nullable: true })
  halfWay: HalfWayDto | null;
}

/** A flight's loading and runways, every step shown. */
export class LoadingWorkDto implements LoadingWork {
  @ApiProperty({ type: [WorkedLineDto], description: 'At take-off' })
  lines: WorkedLineDto[];
  @ApiProperty({ type: [WorkedPointDto] })
  points: WorkedPointDto[];
  @ApiProperty({ type: [LimitsDto] })
  envelopes: LimitsDto[];
  @ApiProperty({ type: Number, nullable: true })
  maxTakeoffLb: number | null;
  @ApiProperty({ type: [WorkedRunwayDto] })
  runways: WorkedRunwayDto[];
  @ApiProperty({ type: Number, nullable: true, description: 'The club’s factor on distances' })
  marginFactor: number | null;
  @ApiProperty({ type: [String], description: 'Why the rest is not known' })
  unknown: string[];
  @ApiProperty()
  caution: string;
}
