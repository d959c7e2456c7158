import { defineRule } from '../../../engine/rule.js';
import { NIGHT_PARAMETERS } from '../../common/shared/by-day.js';
import { STUDENT, STUDENT_BRANCHES, studentBody } from './in-force.js';
import { judgeNight, NIGHT_BRANCHES } from './night.js';

/** Flying at night, against the limits an instructor set. */
export const studentNight = defineRule({
  ...STUDENT,
  id: 'club.student_limits.night',
  title: 'Instructor’s limits: night',
  parameters: NIGHT_PARAMETERS,
  branches: { ...STUDENT_BRANCHES, ...NIGHT_BRANCHES },
  bodies: [studentBody(judgeNight)],
});
