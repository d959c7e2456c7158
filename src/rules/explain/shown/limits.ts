import type { LimitsFact } from '../../facts/person.js';
import { parts, type Show } from './shown.js';

const figure = (value: number | null, words: (value: number) => string): string | null =>
  value === null ? null : words(value);

/** Limits as set, without what is left open. */
export const showLimits: Show<LimitsFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.from,
    says: parts(
      `set by ${one.setBy === 'member' ? 'the pilot' : 'an instructor'}, from ${one.from}`,
      one.through && `binding through ${one.through}`,
      figure(one.windKt, (kt) => `wind at most ${kt} kt`),
      figure(one.crosswindKt, (kt) => `crosswind at most ${kt} kt`),
      figure(one.gustSpreadKt, (kt) => `gusts at most ${kt} kt over the wind`),
      figure(one.ceilingDayFtAgl, (ft) => `ceiling by day at least ${ft} ft`),
      figure(one.ceilingNightFtAgl, (ft) => `ceiling by night at least ${ft} ft`),
      figure(one.visibilityDaySm, (sm) => `visibility by day at least ${sm} SM`),
      figure(one.visibilityNightSm, (sm) => `visibility by night at least ${sm} SM`),
      figure(one.runwayFt, (ft) => `runway at least ${ft} ft`),
      one.night === false && 'no flying at night',
    ),
  }));
