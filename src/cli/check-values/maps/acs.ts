/** Practice against the airman certification standards. */
import { judgeAcs } from '../../../rules/air/acs-judge.js';
import type { AcsLevel, AcsMeasure, AcsTask, Limits } from '../../../rules/air/acs.js';
import type { Mapping } from '../mapping.js';

const LEVEL: Record<string, AcsLevel> = { private: 'private', commercial: 'commercial' };

const TASK: Record<string, AcsTask> = {
  steep_turn: 'steep_turn',
  steep_turns: 'steep_turn',
  slow_flight: 'slow_flight',
  power_off_stall: 'power_off_stall_straight',
  power_off_stall_straight: 'power_off_stall_straight',
  power_off_stall_turning: 'power_off_stall_turning',
  power_on_stall: 'power_on_stall_straight',
  power_on_stall_straight: 'power_on_stall_straight',
  power_on_stall_turning: 'power_on_stall_turning',
  normal_landing: 'normal_landing',
  short_field_landing: 'short_field_landing',
  power_off_180: 'power_off_180_landing',
  power_off_180_landing: 'power_off_180_landing',
  approach: 'approach_speed',
  approach_speed: 'approach_speed',
  traffic_pattern: 'traffic_pattern',
  ground_reference: 'ground_reference',
};

/** Each measure: its name among the facts, and among the limits. */
const MEASURE: readonly (readonly [AcsMeasure, fact: string, limit: string])[] = [
  ['altitudeDevFt', 'altitude_dev_ft', 'altitude_ft'],
  ['airspeedDevKt', 'airspeed_dev_kt', 'airspeed_kt'],
  ['headingDevDeg', 'heading_dev_deg', 'heading_deg'],
  ['rolloutDevDeg', 'rollout_dev_deg', 'rollout_deg'],
  ['bankDeg', 'bank_deg', 'bank_deg'],
  ['bankDevDeg', 'bank_dev_deg', 'bank_deg'],
  ['touchdownBeyondPointFt', 'touchdown_beyond_point_ft', 'touchdown_ft'],
];

/** Day of practice; the entries are about the editions now in force. */
const ON = '2027-03-01';

const tolerance: Mapping = {
  rules: ['acs.tolerance'],
  map(facts) {
    const level = facts.need('level', facts.choice('level', LEVEL));
    const task = facts.need('task', facts.choice('task', TASK));
    const measured = Object.fromEntries(
      MEASURE.map(([measure, fact]) => [measure, facts.number(fact)] as const).filter(
        ([, value]) => value !== undefined,
      ),
    );
    const verdict = judgeAcs(
      level,
      task,
      measured,
      facts.oneOf(['as_of', 'date'], (key) => facts.date(key)) ?? ON,
    );
    if (!verdict) throw facts.bad('task', `is not asked of a ${level} pilot`);
    return {
      // An entry names what deviated and is silent on the rest; whatever it names must count towards the task.
      within: () => {
        const ignored = Object.keys(measured).filter((measure) => !(measure in verdict.limits));
        if (ignored.length > 0) return `${ignored.join(', ')} does not count towards ${task}`;
        return Object.keys(measured).length > 0 ? verdict.outside.length === 0 : null;
      },
      limits: (expected) => limitsLike(verdict.limits, expected),
    };
  },
};

/** The limits by name; the range alone where an entry expects one and there is one. */
function limitsLike(limits: Partial<Record<AcsMeasure, Limits>>, expected: unknown): unknown {
  if (Array.isArray(expected)) {
    const all = Object.values(limits);
    return all.length === 1 ? [...all[0]!] : limits;
  }
  const wanted = (expected ?? {}) as Record<string, unknown>;
  return Object.fromEntries(
    MEASURE.filter(([measure]) => measure in limits).map(([measure, , name]) => {
      const [least, greatest] = limits[measure]!;
      const asBound = typeof wanted[name] === 'number' && least === -greatest;
      return [name, asBound ? greatest : [least, greatest]];
    }),
  );
}

export const ACS_MAPS: readonly Mapping[] = [tolerance];
