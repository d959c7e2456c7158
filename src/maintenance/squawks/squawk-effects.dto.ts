import { NewDeferral } from '../../fleet/squawks/deferral.dto.js';
import { PartField, Shown, WordField } from '../../platform/http/fields.js';
import { BroughtFinding, ChangedBookingView } from '../equipment-changes/equipment-change-view.dto.js';
import { KINDS, type KindOfFlight } from '../trials/kinds-of-flight.js';
import type { EffectVerdict, SquawkEffect } from './squawk-effect.js';

const STEPS = ['as-is', 'ground', 'defer', 'fix'] as const;
export type EffectStep = (typeof STEPS)[number];
const VERDICTS: EffectVerdict[] = ['no', 'unknown', 'conditions', 'none'];

/** POST …/effects. */
export class SquawkStep {
  @WordField([...STEPS], { description: 'What would be decided; as-is: what it does as it stands' })
  step: EffectStep;

  @PartField(() => NewDeferral, {
    optional: true,
    description: 'Needed with defer: the steps as they would be recorded',
  })
  deferral?: NewDeferral;
}

export class SquawkEffectView implements SquawkEffect {
  @Shown({
    type: 'string',
    enum: VERDICTS,
    description:
      'no: it stops such a flight; unknown: because of it there is no yes; conditions: such a flight may go, if; none: nothing',
  })
  verdict: EffectVerdict;

  @Shown({ type: () => BroughtFinding, isArray: true })
  says: BroughtFinding[];

  @Shown({ type: 'array', items: { type: 'string' } })
  conditions: string[];
}

/** One kind of flight, with the squawk as it is and as it would be; each against the same flight without it. */
export class KindEffect {
  @Shown({ type: 'string', enum: [...KINDS] })
  kind: KindOfFlight;

  @Shown({ type: 'string' })
  title: string;

  @Shown({
    type: 'string',
    format: 'date-time',
    nullable: true,
    description: 'Departure of the flight tried',
  })
  departs: string | null;

  @Shown({ type: 'string', nullable: true, description: 'Why no flight of the kind could be tried' })
  because: string | null;

  @Shown({ type: () => SquawkEffectView, nullable: true })
  now: SquawkEffectView | null;

  @Shown({ type: () => SquawkEffectView, nullable: true })
  then: SquawkEffectView | null;
}

/** What a step would do. */
export class SquawkEffects {
  @Shown({ type: 'string', enum: [...STEPS] })
  step: EffectStep;

  @Shown({ type: () => KindEffect, isArray: true, description: 'As the rules say of flights of tomorrow' })
  kinds: KindEffect[];

  @Shown({ type: 'integer', description: 'Flights booked on the aircraft, all judged anew' })
  bookingsJudged: number;

  @Shown({ type: () => ChangedBookingView, isArray: true, description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];

  @Shown({ type: 'string', description: 'The usual caution' })
  caution: string;
}
