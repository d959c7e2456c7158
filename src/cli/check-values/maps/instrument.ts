/** Instrument recency (14 CFR 61.57(c), (d)). */
import type { LogFact, ReviewFact } from '../../../rules/index.js';
import { LOG, REVIEW } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { CATEGORY, CLASS, named, USUAL_CLASS } from './words.js';

const RULE = 'recency.instrument';
const BY_TASKS = 'fly-instrument-tasks';
const BY_CHECK = 'pass-instrument-proficiency-check';

const DEVICE: Record<string, LogFact['device']> = {
  none: null,
  aircraft: null,
  'approved simulator or training device': 'aviation-training-device',
  full_flight_simulator: 'full-flight-simulator',
  'full flight simulator': 'full-flight-simulator',
  flight_training_device: 'flight-training-device',
  'flight training device': 'flight-training-device',
  aviation_training_device: 'aviation-training-device',
  'aviation training device': 'aviation-training-device',
  simulator: 'full-flight-simulator',
};

function taskSets(facts: NeutralFacts, scene: Scene): LogFact[] {
  return (facts.list('task_sets') ?? []).map((one, index) => {
    const on = one.need('date', one.date('date'));
    // Whether an instructor sat beside the device has not mattered since 2018.
    one.remark('instructor_present', true, false);
    const category = one.choice('category', CATEGORY) ?? 'airplane';
    return {
      ...LOG,
      id: `tasks-${index + 1}`,
      on,
      departedAt: scene.instant(on, 8 * 60),
      category,
      class: one.choice('class', CLASS) ?? USUAL_CLASS[category],
      approaches: one.number('approaches') ?? 0,
      holding: one.flag('holding') ?? false,
      interceptTrack: one.flag('intercept_track') ?? false,
      device: one.choice('device', DEVICE) ?? null,
    };
  });
}

const instrument: Mapping = {
  rules: [RULE, `${RULE}.grace`, `${RULE}.ipc`],
  map(facts) {
    const scene = new Scene(facts.need('as_of', facts.date('as_of'))).flight({ flightRules: 'IFR' });
    const category = facts.oneOf(['flight_category', 'aircraft_category', 'category'], (key) =>
      facts.choice(key, CATEGORY),
    );
    if (category) scene.aircraft({ category, class: USUAL_CLASS[category] });
    const log = taskSets(facts, scene);
    const checkOn = facts.date('ipc_date');
    const checkCategory = facts.choice('ipc_category', CATEGORY) ?? category ?? 'airplane';
    const check = (on: string): ReviewFact => ({
      ...REVIEW,
      kind: 'instrument-proficiency-check',
      on,
      category: checkCategory,
    });
    scene.set('member.log', log);
    scene.set('member.reviews', checkOn === undefined ? [] : [check(checkOn)]);
    const through = (): string | null => scene.lastValidDate(RULE, [...log.map((one) => one.on), checkOn]);
    const acts = (): string[] => scene.acts(RULE);
    return {
      may_act_pic_ifr: () => scene.allows(RULE),
      valid_through: through,
      ipc_required: () => acts().includes(BY_CHECK) && !acts().includes(BY_TASKS),
      restore_by: (expected) => {
        if (acts().includes(BY_TASKS)) return named(expected, ['tasks_with_safety_pilot_or_device', 'tasks']);
        return acts().includes(BY_CHECK)
          ? named(expected, ['ipc', 'ipc_only', 'instrument_proficiency_check'])
          : null;
      },
    };
  },
};

export const INSTRUMENT_MAPS: readonly Mapping[] = [instrument];
