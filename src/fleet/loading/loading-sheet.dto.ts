import {
  NumberField,
  PartsField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import type { EnvelopeCategory, LoadingFact, StationKind } from '../../rules/index.js';

const NONE_OF_ITS_OWN = 'Leave it out where the handbook sets none';

/** One loading station. */
export class StationDto {
  @TextField({ max: 60, description: 'As members read it', example: 'Front seats' })
  name: string;

  @WordField(['seats', 'fuel', 'baggage', 'other'], { description: "'other' is loaded as baggage is" })
  kind: StationKind;

  @NumberField({ min: -1000, max: 2000, description: 'Inches aft of the datum' })
  armIn: number;

  @NumberField({
    min: 1,
    max: 100_000,
    nullable: true,
    description: `Most it may carry, pounds. ${NONE_OF_ITS_OWN}`,
  })
  maxLb?: number | null;

  @WholeField({ min: 1, max: 10, nullable: true, description: 'Seats of a row; for seats only' })
  seats?: number | null;

  @NumberField({
    min: 0.1,
    max: 20_000,
    nullable: true,
    description: 'Usable fuel, US gallons; for fuel only',
  })
  usableUsGal?: number | null;
}

/** A corner of the limits. */
export class EnvelopePointDto {
  @NumberField({ min: -1000, max: 2000 })
  armIn: number;

  @NumberField({ min: 1, max: 1_000_000 })
  weightLb: number;
}

/** Limits of the centre of gravity. */
export class EnvelopeDto {
  @WordField(['normal', 'utility'])
  category: EnvelopeCategory;

  @PartsField(() => EnvelopePointDto, { max: 24, description: 'Corners in order round it, three or more' })
  points: EnvelopePointDto[];
}

/** What the handbook says of loading. */
export class NewLoadingSheet {
  @TextField({ max: 200, description: 'Document and section the figures are from' })
  source: string;

  @WordField(['avgas', 'jet'])
  fuelKind: LoadingFact['fuelKind'];

  @NumberField({
    min: 1,
    nullable: true,
    description: "Where it differs from the model's own figure, pounds",
  })
  maxTakeoffLb?: number | null;

  @NumberField({ min: 1, nullable: true, description: `Pounds. ${NONE_OF_ITS_OWN}` })
  maxLandingLb?: number | null;

  @NumberField({ min: 1, nullable: true, description: `Pounds. ${NONE_OF_ITS_OWN}` })
  maxZeroFuelLb?: number | null;

  @PartsField(() => StationDto, {
    max: 20,
    description: 'Seat rows from the front, tanks as they are filled',
  })
  stations: StationDto[];

  @PartsField(() => EnvelopeDto, { max: 2, description: 'Each category once' })
  envelopes: EnvelopeDto[];
}

/** A loading sheet as an answer. */
export class LoadingSheetView extends ViewOf(NewLoadingSheet) {
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
