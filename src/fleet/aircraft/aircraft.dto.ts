import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import {
  DayField,
  FlagField,
  IdField,
  NumberField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import type { AircraftUse, MeterKind } from '../../rules/index.js';
import { MeterView } from '../meters/meter.dto.js';
import { ModelView } from '../models/model.dto.js';
import { AIRCRAFT_STATUSES, METER_KINDS } from '../vocabulary.js';

const UNKNOWN = 'Leave it out while the club does not know it';

/** What an aircraft says of itself, and how the club uses it. */
export class NewAircraft {
  @TextField({ max: 10, pattern: /^[A-Z0-9-]{2,10}$/, says: '2 to 10 capital letters, digits or hyphens' })
  registration: string;

  @IdField()
  modelId: string;

  @IdField()
  homeAirfieldId: string;

  @WholeField({ min: 1, max: 20, description: "Seats fitted, pilots' included" })
  seats: number;

  @WholeField({ min: 1, max: 20, description: 'Occupants it is certificated for' })
  occupantsCertificated: number;

  @TextField({
    max: 40,
    nullable: true,
    description: `The maker's serial number; directives apply by it. ${UNKNOWN}`,
  })
  serialNumber?: string | null;

  @NumberField({ min: 1, max: 1_000_000, nullable: true, description: UNKNOWN })
  emptyWeightLb?: number | null;

  @FlagField({
    description: 'Certificated after 1996-03-11: anti-collision lights by day (14 CFR 91.205(b)(11))',
  })
  certificatedAfter19960311: boolean;

  @FlagField({
    nullable: true,
    description: `Keeps its rated power to altitude and so needs a manifold pressure gauge (14 CFR 1.1, 91.205(b)(8)). ${UNKNOWN}`,
  })
  altitudeEngine?: boolean | null;

  @DayField({
    nullable: true,
    description: `Shoulder harnesses hang on it (14 CFR 91.205(b)(14)). ${UNKNOWN}`,
  })
  manufacturedOn?: string | null;

  @FlagField({
    nullable: true,
    description: `Certificated with an engine-driven electrical system, originally or since (14 CFR 91.215(b)(3), (5)). ${UNKNOWN}`,
  })
  engineDrivenElectrical?: boolean | null;

  @FlagField({
    nullable: true,
    description: `Flown under an approved minimum equipment list with its letter of authorisation (14 CFR 91.213(a)). ${UNKNOWN}`,
  })
  approvedEquipmentList?: boolean | null;

  @WordField(AIRCRAFT_STATUSES, { optional: true, description: "'in-service' unless said otherwise" })
  status?: AircraftUse['status'];

  @FlagField({
    description:
      'Instruction for hire is given in it and the instructor, or the club for the instructor, provides it',
  })
  instructionForHire: boolean;

  @FlagField()
  carriesForHire: boolean;

  @WordField(METER_KINDS, { description: 'The meter that inspections count by' })
  inspectionMeter: MeterKind;
}

/** PATCH of an aircraft. */
export class AircraftChanges extends ChangesOf(NewAircraft) {}

/** Open squawks by state. */
export class SquawkCounts {
  @Shown({ type: 'integer' })
  reported: number;

  @Shown({ type: 'integer' })
  grounding: number;

  @Shown({ type: 'integer' })
  deferred: number;
}

/** An aircraft in a list. */
export class AircraftSummary {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  registration: string;

  @Shown({ type: 'string', enum: AIRCRAFT_STATUSES })
  status: AircraftUse['status'];

  @Shown({ type: 'string', format: 'uuid' })
  modelId: string;

  @Shown({ type: 'string' })
  makeModel: string;

  @Shown({ type: 'string' })
  typeDesignator: string;

  @Shown({ type: 'integer' })
  seats: number;

  @Shown({ type: 'string', format: 'uuid' })
  homeAirfieldId: string;

  @Shown({ type: 'string' })
  homeAirfieldCode: string;

  @Shown({ type: () => MeterView, isArray: true, description: 'The newest reading of each meter' })
  meters: MeterView[];

  @Shown({ type: () => SquawkCounts })
  openSquawks: SquawkCounts;
}

/** One aircraft. */
export class AircraftView extends ViewOf(NewAircraft) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: () => ModelView })
  model: ModelView;

  @Shown({ type: 'string' })
  homeAirfieldCode: string;

  @Shown({ type: () => MeterView, isArray: true })
  meters: MeterView[];

  @Shown({ type: () => SquawkCounts })
  openSquawks: SquawkCounts;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** Which aircraft to list. */
export class AircraftQuery extends PageQuery {
  @ApiPropertyOptional({ enum: AIRCRAFT_STATUSES })
  @IsOptional()
  @IsIn(AIRCRAFT_STATUSES, { message: `status must be one of ${AIRCRAFT_STATUSES.join(', ')}` })
  status?: AircraftUse['status'];
}

/** A page of aircraft. */
export class AircraftPage extends PageShape {
  @Shown({ type: () => AircraftSummary, isArray: true })
  items: AircraftSummary[];
}
