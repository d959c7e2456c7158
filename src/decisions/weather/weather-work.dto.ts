import { ApiProperty } from '@nestjs/swagger';
import type {
  FieldWeather,
  ForecastPeriod,
  RunwayComponents,
  ShownReport,
  WeatherWork,
  WindOnRunways,
  WorkedPhase,
} from '../../rules/index.js';

const INSTANT = { type: String, format: 'date-time' } as const;
const KNOTS = { type: Number, nullable: true } as const;

export class ShownReportDto implements ShownReport {
  @ApiProperty()
  id: string;
  @ApiProperty({ enum: ['metar', 'taf'] })
  kind: ShownReport['kind'];
  @ApiProperty()
  airfield: string;
  @ApiProperty({ description: 'Word for word' })
  text: string;
  @ApiProperty({ enum: ['fetched', 'pasted'] })
  source: ShownReport['source'];
  @ApiProperty({ ...INSTANT, description: 'Observed or issued' })
  issuedAt: string;
  @ApiProperty({ ...INSTANT, description: 'When the service got it' })
  obtainedAt: string;
  @ApiProperty({ ...INSTANT, nullable: true })
  from: string | null;
  @ApiProperty({ ...INSTANT, nullable: true })
  to: string | null;
  @ApiProperty({ type: [String], description: 'Groups that could not be read' })
  unread: string[];
  @ApiProperty({ description: 'What was read of a report; a forecast is told by phase' })
  says: string;
}

export class RunwayComponentsDto implements RunwayComponents {
  @ApiProperty()
  runway: string;
  @ApiProperty({ ...KNOTS, description: 'Negative: from behind; null: the wind keeps to no direction' })
  headwindKt: number | null;
  @ApiProperty({ ...KNOTS, description: 'Positive: from the right' })
  crosswindKt: number | null;
  @ApiProperty(KNOTS)
  gustHeadwindKt: number | null;
  @ApiProperty(KNOTS)
  gustCrosswindKt: number | null;
}

export class WindOnRunwaysDto implements WindOnRunways {
  @ApiProperty(KNOTS)
  windKt: number | null;
  @ApiProperty(KNOTS)
  gustKt: number | null;
  @ApiProperty({ type: [RunwayComponentsDto] })
  runways: RunwayComponentsDto[];
}

export class FieldWeatherDto extends WindOnRunwaysDto implements FieldWeather {
  @ApiProperty()
  airfield: string;
  @ApiProperty({ description: 'Id of the report' })
  report: string;
  @ApiProperty({ description: 'From the observation to the asking' })
  ageMinutes: number;
  @ApiProperty()
  minutesBeforeDeparture: number;
  @ApiProperty({ type: Number, nullable: true })
  pressureAltitudeFt: number | null;
  @ApiProperty({ type: Number, nullable: true })
  densityAltitudeFt: number | null;
}

export class PassingDto {
  @ApiProperty({ enum: ['prevailing', 'temporary', 'probable'] })
  change: ForecastPeriod['change'];
  @ApiProperty({ type: Number, nullable: true })
  probabilityPercent: number | null;
  @ApiProperty(INSTANT)
  from: string;
  @ApiProperty(INSTANT)
  to: string;
  @ApiProperty()
  says: string;
}

export class WorkedPhaseDto implements WorkedPhase {
  @ApiProperty({ enum: ['departure', 'en-route', 'arrival'] })
  phase: WorkedPhase['phase'];
  @ApiProperty()
  airfield: string;
  @ApiProperty({ type: [String], description: 'What may prevail; none: nothing speaks of it' })
  prevailing: string[];
  @ApiProperty({ type: Number, nullable: true, description: 'The lowest that may prevail; null: not known' })
  ceilingFtAgl: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'Statute miles' })
  visibilitySm: number | null;
  @ApiProperty({
    type: [WindOnRunwaysDto],
    description: 'Departure and arrival, where a forecast speaks of them: each wind that may prevail',
  })
  winds: WindOnRunwaysDto[];
  @ApiProperty({ type: [PassingDto] })
  passing: PassingDto[];
  @ApiProperty({ description: 'A newer forecast will be there before the departure' })
  oldForecast: boolean;
  @ApiProperty({ type: [String] })
  reportIds: string[];
}

/** A flight's weather, worked out. */
export class WeatherWorkDto implements WeatherWork {
  @ApiProperty({ type: [ShownReportDto] })
  reports: ShownReportDto[];
  @ApiProperty({ type: [FieldWeatherDto] })
  fields: FieldWeatherDto[];
  @ApiProperty({ type: [WorkedPhaseDto] })
  phases: WorkedPhaseDto[];
  @ApiProperty({ type: [String], description: 'What is not known, and why' })
  unknown: string[];
  @ApiProperty()
  caution: string;
}
