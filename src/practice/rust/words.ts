/** The sentences of rust and practice plans, in one place. What is said is data: a key and its values. */
import type { Task } from '../tolerances/standards.js';
import type { Condition } from './conditions.js';

/** Every sentence and the values it takes. */
export const PHRASES = {
  'condition.any': 'in any conditions',
  'condition.crosswind': 'with at least {kt} kt across the runway',
  'condition.gust': 'with gusts of at least {kt} kt over the wind',
  'condition.night': 'at night',
  'condition.short-field': 'on a runway of at most {ft} ft',
  'condition.equipment': 'with {group}',
  'rust.never': '{manoeuvre} {condition} is not on record as done to standard.',
  'rust.since': '{manoeuvre} {condition} was last done to standard on {lastGoodOn}; days since then: {days}.',
  'rust.outside-since': 'Performances outside the standard since then: {times}.',
  'rust.not-judged': 'On record without having been judged, so not counted as good: {times}.',
  'rust.condition-unknown': 'On record without the conditions, so not counted here: {times}.',
  'plan.booking': 'The booking on {on} needs it.',
  'plan.checkout': 'Times the checkout still lacks it: {times}.',
  'plan.fewer': 'Times planned: {times}; times wanted: {wanted}. The flight has {minutes} minutes.',
  'plan.if-offered': 'Whether the flight offers it is not known; it is flown only if it does.',
  'plan.dual.always': 'It is practised with an instructor only.',
  'plan.dual.checkout': 'A checkout is flown with an instructor.',
  'plan.dual.never': 'It was never done to standard, so an instructor is aboard.',
  'plan.dual.outside': 'It was not to standard since it last was, so an instructor is aboard.',
  'plan.dual.rusty': 'It is rusty beyond the limit for practising it alone.',
  'plan.out.no-time':
    'It takes at least {minutes} minutes, and what is worth more fills the {available} of the flight.',
  'plan.out.not-offered': 'This flight does not offer it.',
  'plan.out.no-instructor': 'It needs an instructor, and none is on this flight.',
  'plan.out.no-drill': 'How it is practised is not on record.',
  'plan.caution.no-decision':
    'A plan for practice is no leave to fly: the flight is judged like any other, and the pilot in command decides.',
  'plan.caution.model':
    'Rust is an estimate from dates by a stated formula; it knows nothing of how the pilot is today.',
  'plan.caution.from-memory': 'Some tolerances are from memory and not looked up; see the current standard.',
  'plan.caution.no-standard': 'Some of it has no published tolerance at this level.',
} as const;

export type SaidKey = keyof typeof PHRASES;

/** A sentence as data. Dates are ISO; a nested condition is a sentence of its own. */
export interface Said {
  key: SaidKey;
  values: Record<string, string | number | Said>;
}

export const said = (key: SaidKey, values: Said['values'] = {}): Said => ({ key, values });

/** The sentence written out. Throws where a value is missing: half a sentence is worse than none. */
export function write({ key, values }: Said): string {
  const text = PHRASES[key].replace(/\{([a-zA-Z]+)\}/g, (_whole, name: string) => {
    const value = values[name];
    if (value === undefined) throw new RangeError(`${key} lacks ${name}`);
    return typeof value === 'object' ? write(value) : String(value);
  });
  // A condition stands within a sentence, everything else is one.
  return key.startsWith('condition.') ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

/** The condition as words. */
export function conditionSaid(condition: Condition): Said {
  switch (condition.kind) {
    case 'crosswind':
    case 'gust':
      return said(`condition.${condition.kind}`, { kt: condition.atLeastKt });
    case 'short-field':
      return said('condition.short-field', { ft: condition.atMostFt });
    case 'equipment':
      return said('condition.equipment', { group: condition.group });
    default:
      return said(`condition.${condition.kind}`);
  }
}

/** What a manoeuvre is called. */
export const TASK_NAMES: Record<Task, string> = {
  steep_turn: 'steep turn',
  slow_flight: 'slow flight',
  power_off_stall_straight: 'power-off stall, straight',
  power_off_stall_turning: 'power-off stall, turning',
  power_on_stall_straight: 'power-on stall, straight',
  power_on_stall_turning: 'power-on stall, turning',
  normal_landing: 'normal landing',
  short_field_landing: 'short-field landing',
  soft_field_landing: 'soft-field landing',
  forward_slip_landing: 'forward slip to a landing',
  power_off_180_landing: 'power-off 180-degree landing',
  approach_speed: 'approach speed',
  traffic_pattern: 'traffic pattern',
  ground_reference: 'ground reference manoeuvre',
  normal_takeoff_climb: 'normal take-off and climb',
  short_field_takeoff_climb: 'short-field take-off and climb',
  soft_field_takeoff_climb: 'soft-field take-off and climb',
  go_around: 'go-around',
  basic_instrument: 'basic instrument manoeuvre',
  chandelle: 'chandelle',
  lazy_eight: 'lazy eight',
  steep_spiral: 'steep spiral',
  holding: 'holding pattern',
  instrument_flight: 'flight by instruments',
  intercept_and_track: 'intercepting and tracking a course',
  dme_arc: 'DME arc',
  approach_before_final: 'instrument approach before final',
  nonprecision_final: 'nonprecision final approach',
  precision_final: 'precision final approach',
  missed_approach: 'missed approach',
  circling: 'circling approach',
};
