import { defineRule } from '../../../engine/rule.js';
import { STUDENT, STUDENT_BRANCHES, studentBody } from './in-force.js';
import { judgeRunway, RUNWAY_BRANCHES } from './runway.js';
import { LIMITS_WEATHER } from './wind.js';

/** The shortest runway of the flight, against the limit an instructor set. */
export const studentRunway = defineRule({
  ...STUDENT,
  id: 'club.student_limits.runway',
  title: 'Instructor’s limits: runway length',
  parameters: LIMITS_WEATHER,
  branches: { ...STUDENT_BRANCHES, ...RUNWAY_BRANCHES },
  bodies: [studentBody(judgeRunway)],
});
