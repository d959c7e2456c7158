import { defineRule } from '../../../engine/rule.js';
import { CEILING_BRANCHES, CHECK_WEATHER, judgeCeilingVisibility } from './ceiling-visibility.js';
import { STUDENT, STUDENT_BRANCHES, studentBody } from './in-force.js';
import { WIND_WEATHER } from './wind.js';

/** Ceiling and visibility by day and by night, against the limits an instructor set. */
export const studentCeilingVisibility = defineRule({
  ...STUDENT,
  id: 'club.student_limits.ceiling_visibility',
  title: 'Instructor’s limits: ceiling and visibility',
  settledAt: 'departure',
  whenUnknown: CHECK_WEATHER,
  parameters: WIND_WEATHER,
  branches: { ...STUDENT_BRANCHES, ...CEILING_BRANCHES },
  bodies: [studentBody(judgeCeilingVisibility)],
});
