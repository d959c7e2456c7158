import { DayField, Shown, WholeField, WordField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';
import type { AircraftRate } from '../flights/charge-lines.js';

const MOST_AN_HOUR = 100_000_000;
const MOST_A_GALLON = 1_000_000;

/** What an hour of an instructor costs from a day on. */
export class NewInstructionRate {
  @DayField({ description: "First day it holds, in the club's zone" })
  validFrom: string;

  @WholeField({
    max: MOST_AN_HOUR,
    description: 'For an hour, in the smallest unit of the currency (cents); 0: nothing is charged',
  })
  perHourMinor: number;
}

/** What an hour of an aircraft costs from a day on. */
export class NewAircraftRate extends NewInstructionRate {
  @WordField(['hobbs', 'tachometer', 'clock'], {
    description: 'Which hours are charged; clock: from departure to arrival, to the minute',
  })
  basis: AircraftRate['basis'];

  @WordField(['wet', 'dry'], {
    description:
      'wet: fuel is in the rate, and fuel bought elsewhere is paid back up to a price; dry: the club’s fuel is charged',
  })
  fuel: AircraftRate['fuel'];

  @WholeField({
    max: MOST_A_GALLON,
    description: 'For a US gallon: paid back at most (wet), or charged for the club’s own (dry)',
  })
  fuelPerUsGalMinor: number;
}

const HEAD = {
  id: { type: 'string', format: 'uuid' },
  currency: { type: 'string', description: 'ISO 4217 code', example: 'USD' },
  minorPerUnit: { type: 'integer', description: 'How many of the smallest unit make one', example: 100 },
  inForce: { type: 'boolean', description: 'It is the one that holds today' },
  recordedAt: { type: 'string', format: 'date-time' },
} as const;

/** A rate of an instructor. */
export class InstructionRateView extends ViewOf(NewInstructionRate) {
  @Shown({ type: 'string', format: 'uuid' })
  instructorId: string;

  @Shown(HEAD.id) id: string;
  @Shown(HEAD.currency) currency: string;
  @Shown(HEAD.minorPerUnit) minorPerUnit: number;
  @Shown(HEAD.inForce) inForce: boolean;
  @Shown(HEAD.recordedAt) recordedAt: string;
}

/** A rate of an aircraft. */
export class AircraftRateView extends ViewOf(NewAircraftRate) {
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown(HEAD.id) id: string;
  @Shown(HEAD.currency) currency: string;
  @Shown(HEAD.minorPerUnit) minorPerUnit: number;
  @Shown(HEAD.inForce) inForce: boolean;
  @Shown(HEAD.recordedAt) recordedAt: string;
}

/** One page of an aircraft's rates, written last first. */
export class AircraftRatePage extends PageShape {
  @Shown({ type: () => AircraftRateView, isArray: true })
  items: AircraftRateView[];
}

/** One page of an instructor's rates, written last first. */
export class InstructionRatePage extends PageShape {
  @Shown({ type: () => InstructionRateView, isArray: true })
  items: InstructionRateView[];
}
