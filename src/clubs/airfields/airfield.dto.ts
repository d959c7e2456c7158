import {
  FlagField,
  NumberField,
  PartsField,
  Shown,
  TextField,
  WholeField,
  WordField,
  ZoneField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import { type Surface, SURFACES } from './runway.entity.js';

/** One direction of a runway. */
export class NewRunway {
  @TextField({
    max: 3,
    pattern: /^(0[1-9]|[12]\d|3[0-6])[LCR]?$/,
    says: "a runway designator such as '09' or '27L'",
    example: '27L',
  })
  designator: string;

  @NumberField({ min: 0, max: 359.99, description: 'Against true north, in degrees' })
  trueHeadingDeg: number;

  @WholeField({ min: 100, max: 20_000 })
  lengthFt: number;

  @WordField(SURFACES)
  surface: Surface;

  @FlagField({ description: 'Whether it has lights' })
  lit: boolean;

  @NumberField({
    min: -20,
    max: 20,
    nullable: true,
    description: "Percent, up in the runway's direction positive. Leave it out while it is not known",
  })
  slopePercent?: number | null;
}

/** PATCH of a runway. */
export class RunwayChanges extends ChangesOf(NewRunway) {}

/** A runway as an answer. */
export class RunwayView extends ViewOf(NewRunway) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  airfieldId: string;

  @Shown({ type: 'integer' })
  rowVersion: number;
}

/** What an airfield says of itself. */
export class AirfieldBody {
  @TextField({
    max: 8,
    pattern: /^[A-Z0-9]{2,8}$/,
    says: '2 to 8 capital letters or digits',
    example: 'XLKF',
  })
  code: string;

  @TextField({ max: 120 })
  name: string;

  @NumberField({ min: -90, max: 90, description: 'WGS 84, north positive' })
  latitudeDeg: number;

  @NumberField({ min: -180, max: 180, description: 'WGS 84, east positive' })
  longitudeDeg: number;

  @WholeField({ min: -1500, max: 20_000, description: 'Above mean sea level' })
  elevationFt: number;

  @ZoneField({ description: 'Zone of the place' })
  zone: string;
}

/** POST /airfields: with its runways, if they are at hand. */
export class NewAirfield extends AirfieldBody {
  @PartsField(() => NewRunway, { optional: true, max: 24 })
  runways?: NewRunway[];
}

/** PATCH of an airfield; runways are edited one by one. */
export class AirfieldChanges extends ChangesOf(AirfieldBody) {}

/** An airfield as an answer. */
export class AirfieldView extends ViewOf(AirfieldBody) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer', description: 'Counts the edits of the airfield; runways count their own' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];

  @Shown({ type: () => RunwayView, isArray: true })
  runways: RunwayView[];
}

/** A page of airfields. */
export class AirfieldPage extends PageShape {
  @Shown({ type: () => AirfieldView, isArray: true })
  items: AirfieldView[];
}
