/** Take-offs and landings as the neutral files list them, made log entries. */
import { localDateOf, toInstant, toSeconds, type LogFact } from '../../../rules/index.js';
import { LOG } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Scene } from '../scene.js';
import { CATEGORY, CLASS, tenths } from './words.js';

/** What the pilot did at the controls, in the files' words. */
const DEVICE: Record<string, LogFact['device']> = {
  none: null,
  full_flight_simulator: 'full-flight-simulator',
  simulator: 'full-flight-simulator',
  flight_training_device: 'flight-training-device',
  aviation_training_device: 'aviation-training-device',
};

/** Reads `takeoffs_landings` as log entries at 08:00, so that an event on the day of the flight comes before it. */
export function landingsLog(facts: NeutralFacts, scene: Scene): LogFact[] {
  return (facts.list('takeoffs_landings') ?? []).map((one, index) => {
    const when = eventTime(one, scene);
    const takeoffs = one.number('takeoffs') ?? 0;
    const landings = one.number('landings') ?? 0;
    const fullStop = one.flag('full_stop') ?? false;
    const night = one.flag('in_61_57b_window') ?? false;
    return {
      ...LOG,
      id: `landings-${index + 1}`,
      ...when,
      category: one.choice('category', CATEGORY) ?? LOG.category,
      class: one.choice('class', CLASS) ?? LOG.class,
      typeRating: one.text('type') ?? null,
      tailwheel: one.flag('tailwheel') ?? false,
      soleManipulator: one.flag('sole_manipulator') ?? true,
      device: one.choice('device', DEVICE) ?? null,
      takeoffs,
      landings,
      fullStopLandings: fullStop ? landings : 0,
      nightTakeoffs: night ? takeoffs : 0,
      nightFullStopLandings: night && fullStop ? landings : 0,
      nightTenths: night ? tenths(1) : 0,
    };
  });
}

/** The date of an event is the one where it happened; a UTC instant with the offset there gives it too. */
function eventTime(one: NeutralFacts, scene: Scene): Pick<LogFact, 'on' | 'departedAt'> {
  const utc = one.oneOf(['utc', 'at_utc', 'datetime_utc', 'date_utc'], (key) => one.text(key));
  const offsetHours = one.oneOf(['utc_offset_hours', 'utc_offset_h', 'utc_offset'], (key) => one.number(key));
  const on = one.date('date');
  if (on !== undefined) return { on, departedAt: scene.instant(on, 8 * 60) };
  const instant = one.need('date', utc);
  if (Number.isNaN(Date.parse(instant)) || offsetHours === undefined)
    throw one.bad('date', 'is missing, and no UTC instant with its offset stands for it');
  const seconds = toSeconds(instant);
  return { on: localDateOf(seconds + offsetHours * 3600, 'UTC'), departedAt: toInstant(seconds) };
}

/** Dates of the entries, for asking how long the newest of them lasts. */
export const datesOf = (log: readonly LogFact[]): string[] => log.map((entry) => entry.on);
