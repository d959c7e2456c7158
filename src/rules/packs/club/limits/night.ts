/** Night against the limits set. */
import { touchesNight } from '../../../sky/nights.js';
import { downBeforeNight, flyByDay } from '../../common/shared/by-day.js';
import { takeInstructor } from '../../take-instructor.js';
import { countedLimits, type LimitsJudge } from './in-force.js';

export const NIGHT_BRANCHES = {
  'no-limit': { status: 'not-applicable', says: 'The limits of {from} leave the night open.' },
  'by-day': { status: 'met', says: 'No part of the flight is at night, as the limits of {from} ask.' },
  'at-night': {
    status: 'short',
    says: 'Part of the flight is at night, and the limits of {from} allow no flying at night.',
  },
} as const;

/** Night is that of 14 CFR 1.1: from the end of evening civil twilight to the beginning of morning civil twilight. */
export const judgeNight: LimitsJudge<keyof typeof NIGHT_BRANCHES> = ({ limits, f, moment, p, take }) => {
  const { from } = limits;
  if (limits.night !== false) return take('no-limit', { from });
  const { route } = f.flight;
  const counted = [countedLimits(limits)];
  if (touchesNight(moment, route, 'civil'))
    return take(
      'at-night',
      { from },
      {
        counted,
        remedies: () => [...flyByDay(moment, route, 'civil'), ...takeInstructor(f.flight)],
      },
    );
  return take('by-day', { from }, { counted, conditions: downBeforeNight(moment, route, 'civil', p) });
};
