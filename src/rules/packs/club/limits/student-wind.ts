import { defineRule } from '../../../engine/rule.js';
import { STUDENT, STUDENT_BRANCHES, studentBody } from './in-force.js';
import { CHECK_WIND, judgeWind, WIND_BRANCHES, WIND_WEATHER } from './wind.js';

/** Wind, crosswind by runway and gusts over the wind, against the limits an instructor set. */
export const studentWind = defineRule({
  ...STUDENT,
  id: 'club.student_limits.wind',
  title: 'Instructor’s limits: wind',
  settledAt: 'departure',
  whenUnknown: CHECK_WIND,
  parameters: WIND_WEATHER,
  branches: { ...STUDENT_BRANCHES, ...WIND_BRANCHES },
  bodies: [studentBody(judgeWind)],
});
