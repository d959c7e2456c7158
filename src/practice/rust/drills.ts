/** How manoeuvres are practised, which are watched for rust, and what a checkout usually asks for: common practice, no source. */
import type { Level, Task } from '../tolerances/standards.js';
import type { Condition } from './conditions.js';
import type { Drill } from './plan-types.js';

type Row = readonly [
  manoeuvre: Task,
  where: Drill['where'],
  order: number,
  setUpMinutes: number,
  minutesEach: number,
  least: number,
  most: number,
  alwaysDual?: boolean,
];

const ROWS: readonly Row[] = [
  ['slow_flight', 'practice-area', 1, 3, 4, 1, 2],
  ['ground_reference', 'practice-area', 2, 3, 5, 1, 2],
  ['steep_turn', 'practice-area', 3, 2, 3, 2, 4],
  ['power_off_stall_straight', 'practice-area', 4, 3, 3, 1, 3],
  ['power_off_stall_turning', 'practice-area', 5, 3, 3, 1, 2],
  ['power_on_stall_straight', 'practice-area', 6, 3, 3, 1, 3],
  ['power_on_stall_turning', 'practice-area', 7, 3, 3, 1, 2],
  ['chandelle', 'practice-area', 8, 2, 3, 2, 4],
  ['lazy_eight', 'practice-area', 9, 2, 4, 1, 3],
  ['steep_spiral', 'practice-area', 10, 4, 5, 1, 2],
  ['basic_instrument', 'practice-area', 11, 3, 8, 1, 2, true],
  ['holding', 'practice-area', 12, 5, 8, 1, 2],
  ['intercept_and_track', 'practice-area', 13, 3, 6, 1, 2],
  ['nonprecision_final', 'practice-area', 14, 5, 15, 1, 2],
  ['precision_final', 'practice-area', 15, 5, 15, 1, 2],
  ['missed_approach', 'practice-area', 16, 2, 5, 1, 2],
  ['normal_landing', 'pattern', 1, 0, 7, 3, 6],
  ['go_around', 'pattern', 2, 0, 6, 1, 2],
  ['soft_field_landing', 'pattern', 3, 0, 7, 1, 3],
  ['short_field_landing', 'pattern', 4, 0, 7, 2, 4],
  ['forward_slip_landing', 'pattern', 5, 0, 7, 1, 3],
  ['power_off_180_landing', 'pattern', 6, 0, 7, 2, 4],
];

export const DRILLS: readonly Drill[] = ROWS.map(
  ([manoeuvre, where, order, setUpMinutes, minutesEach, least, most, alwaysDual = false]) => ({
    ...{ manoeuvre, where, order, setUpMinutes, minutesEach, least, most, alwaysDual },
  }),
);

/** Limits from which a condition counts as one. */
export interface ConditionLimits {
  crosswindKt: number;
  gustKt: number;
  shortRunwayFt: number;
}

const WATCHED: Record<Level, readonly Task[]> = {
  private: [
    ...(['slow_flight', 'steep_turn', 'power_off_stall_straight', 'power_on_stall_straight'] as const),
    ...(['normal_landing', 'short_field_landing', 'soft_field_landing', 'go_around'] as const),
  ],
  commercial: ['chandelle', 'lazy_eight', 'steep_spiral', 'power_off_180_landing'],
  instrument: ['holding', 'nonprecision_final', 'precision_final', 'missed_approach'],
};

/** What is watched for rust: by level, landings in conditions, and each piece of equipment the pilot has used. */
export function watchedFor(
  levels: readonly Level[],
  limits: ConditionLimits,
  equipment: readonly { manoeuvre: Task; group: string }[],
): { manoeuvre: Task; condition: Condition }[] {
  const any: Condition = { kind: 'any' };
  const landing: Condition[] = [
    { kind: 'night' },
    { kind: 'crosswind', atLeastKt: limits.crosswindKt },
    { kind: 'gust', atLeastKt: limits.gustKt },
    { kind: 'short-field', atMostFt: limits.shortRunwayFt },
  ];
  return [
    ...(['private', 'commercial', 'instrument'] as const)
      .filter((level) => level === 'private' || levels.includes(level))
      .flatMap((level) => WATCHED[level].map((manoeuvre) => ({ manoeuvre, condition: any }))),
    ...landing.map((condition) => ({ manoeuvre: 'normal_landing' as const, condition })),
    ...equipment.map(({ manoeuvre, group }) => ({
      manoeuvre,
      condition: { kind: 'equipment' as const, group },
    })),
  ];
}

/** What a checkout of a model usually asks for, where the club has laid nothing down. */
export const CHECKOUT_ITEMS: readonly { manoeuvre: Task; times: number }[] = [
  { manoeuvre: 'slow_flight', times: 1 },
  { manoeuvre: 'steep_turn', times: 2 },
  { manoeuvre: 'power_off_stall_straight', times: 1 },
  { manoeuvre: 'power_on_stall_straight', times: 1 },
  { manoeuvre: 'normal_landing', times: 3 },
  { manoeuvre: 'go_around', times: 1 },
];
