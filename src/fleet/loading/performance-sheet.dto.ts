import {
  NumberField,
  PartField,
  PartsField,
  Shown,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import type { DistanceFactors } from '../../rules/index.js';
import { NumbersField, TableField } from './number-fields.js';

const MOST = 20;
const SILENT = 'Leave it out where the handbook says nothing';
const FEET = { min: 1, max: 30_000, most: MOST };

/** A printed table at one weight. */
export class DistanceTableDto {
  @NumberField({ min: 1, description: 'Pounds' })
  weightLb: number;

  @NumbersField({ min: -2000, max: 30_000, most: MOST, description: 'Two or more, ascending' })
  pressureAltitudesFt: number[];

  @NumbersField({ min: -60, max: 60, most: MOST, description: 'Two or more, ascending' })
  temperaturesC: number[];

  @TableField({ ...FEET, description: 'A row for each pressure altitude, a figure for each temperature' })
  groundRollFt: number[][];

  @TableField({ ...FEET, description: 'The whole distance over a 50 ft obstacle' })
  over50Ft: number[][];
}

/** What the handbook adds to its tables, in percent. */
export class DistanceFactorsDto {
  @NumberField({
    max: 10,
    nullable: true,
    description: 'Taken off for each knot from ahead; none unless given',
  })
  headwindPercentPerKt?: number | null;

  @NumberField({ max: 50, nullable: true, description: `For each knot from behind. ${SILENT}` })
  tailwindPercentPerKt?: number | null;

  @NumberField({ max: 50, nullable: true, description: 'Knots from behind up to which that holds' })
  tailwindMaxKt?: number | null;

  @NumberField({ max: 200, nullable: true, description: `Dry grass. ${SILENT}` })
  grassPercent?: number | null;

  @NumberField({ max: 200, nullable: true, description: SILENT })
  gravelPercent?: number | null;

  @NumberField({ max: 200, nullable: true, description: SILENT })
  wetPavedPercent?: number | null;

  @NumberField({ max: 200, nullable: true, description: `Wet grass or gravel, on top of the dry. ${SILENT}` })
  wetUnpavedPercent?: number | null;

  @NumberField({ max: 100, nullable: true, description: `For each percent of slope against it. ${SILENT}` })
  slopePercentPerPercent?: number | null;

  @WordField(['ground-roll', 'distance'], { description: 'What surface, wet and slope are percent of' })
  surfaceIsOf: DistanceFactors['surfaceIsOf'];
}

/** Tables and factors of take-off or landing. */
export class DistanceDto {
  @PartsField(() => DistanceTableDto, { max: 6, description: 'One for each weight, ascending' })
  tables: DistanceTableDto[];

  @PartField(() => DistanceFactorsDto)
  factors: DistanceFactorsDto;
}

/** What the handbook says of take-off and landing distance. */
export class NewPerformanceSheet {
  @TextField({ max: 200, description: 'Document and section the figures are from' })
  source: string;

  @NumberField({ min: 1, max: 300, nullable: true, description: 'Airspeed at lift-off, knots indicated' })
  liftOffKias?: number | null;

  @PartField(() => DistanceDto)
  takeoff: DistanceDto;

  @PartField(() => DistanceDto)
  landing: DistanceDto;
}

/** A performance sheet as an answer. */
export class PerformanceSheetView extends ViewOf(NewPerformanceSheet) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  modelId: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The one aircraft it is for' })
  aircraftId: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}
