import { TASK_NAMES } from '../rust/words.js';
import type { Level, Measure, Task } from '../tolerances/index.js';

export const MANOEUVRES = Object.keys(TASK_NAMES) as Task[];

const LEVEL_SET: Record<Level, true> = { private: true, commercial: true, instrument: true };
export const LEVELS = Object.keys(LEVEL_SET) as Level[];

/** Measures with the bounds of what can be entered; the unit is in the name. */
export const MEASURES: Record<Measure, number> = {
  altitudeDevFt: 5000,
  airspeedDevKt: 200,
  headingDevDeg: 180,
  rolloutDevDeg: 180,
  bankDeg: 90,
  bankDevDeg: 90,
  touchdownBeyondPointFt: 10_000,
  needleShare: 1,
  minimumDevFt: 2000,
  arcDevNm: 20,
};
