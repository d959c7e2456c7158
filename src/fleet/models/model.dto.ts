import {
  FlagField,
  NumberField,
  Shown,
  TextField,
  WholeField,
  WordField,
  WordsField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import type { AircraftCategory, AircraftClass, AircraftType } from '../../rules/index.js';
import { CATEGORIES, CLASSES, KINDS_OF_OPERATION } from '../vocabulary.js';

const UNKNOWN = 'Leave it out while the club does not know it';

/** What a model says of itself, from its type design. */
export class NewModel {
  @TextField({ max: 120, description: 'Make and model in words, as endorsements name it' })
  makeModel: string;

  @TextField({
    max: 4,
    pattern: /^[A-Z0-9]{2,4}$/,
    says: '2 to 4 capital letters or digits',
    description: 'Type designator',
  })
  typeDesignator: string;

  @WordField(CATEGORIES)
  category: AircraftCategory;

  @WordField(CLASSES, { description: "'none' where the category has no classes" })
  class: AircraftClass;

  @TextField({ max: 20, nullable: true, description: 'Type designator of the type rating it needs, if any' })
  typeRating?: string | null;

  @WholeField({ min: 0, max: 4 })
  engines: number;

  @WholeField({ min: 1, max: 20_000, nullable: true, description: `Rated power of one engine. ${UNKNOWN}` })
  powerPerEngineHp?: number | null;

  @FlagField()
  retractableGear: boolean;

  @FlagField()
  flaps: boolean;

  @FlagField()
  controllablePropeller: boolean;

  @FlagField()
  tailwheel: boolean;

  @FlagField()
  pressurised: boolean;

  @FlagField({ optional: true, description: 'False unless said otherwise' })
  turbine?: boolean;

  @FlagField({ optional: true, description: 'False unless said otherwise' })
  transportCategory?: boolean;

  @WholeField({ min: 0, max: 60_000, nullable: true, description: UNKNOWN })
  serviceCeilingFt?: number | null;

  @WholeField({ min: 0, max: 60_000, nullable: true, description: UNKNOWN })
  maxOperatingAltitudeFt?: number | null;

  @WholeField({ min: 1, max: 1_000_000, nullable: true, description: UNKNOWN })
  maxTakeoffLb?: number | null;

  @NumberField({
    min: 0,
    max: 300,
    nullable: true,
    description: `Stall speed, clean, calibrated. ${UNKNOWN}`,
  })
  vs1Kcas?: number | null;

  @NumberField({ min: 0, max: 80, nullable: true, description: `Usually not a limitation. ${UNKNOWN}` })
  demonstratedCrosswindKt?: number | null;

  @NumberField({ min: 0, max: 20_000, nullable: true, description: UNKNOWN })
  usableFuelUsGal?: number | null;

  @NumberField({ min: 0, max: 2_000, nullable: true, description: `At normal cruise. ${UNKNOWN}` })
  fuelBurnUsGalPerHour?: number | null;

  @WordsField(KINDS_OF_OPERATION, { least: 1, description: 'Kinds of operation the type design allows' })
  kindsOfOperation: AircraftType['kindsOfOperation'];
}

/** PATCH of a model. */
export class ModelChanges extends ChangesOf(NewModel) {}

/** A model as an answer. */
export class ModelView extends ViewOf(NewModel) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of models. */
export class ModelPage extends PageShape {
  @Shown({ type: () => ModelView, isArray: true })
  items: ModelView[];
}
