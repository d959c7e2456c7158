import { defineRule } from '../../../engine/rule.js';
import { PERSONAL, PERSONAL_BRANCHES, personalBody } from './in-force.js';
import { judgeRunway, RUNWAY_BRANCHES } from './runway.js';
import { LIMITS_WEATHER } from './wind.js';

/** The shortest runway of the flight, against the limit the pilot set. */
export const personalRunway = defineRule({
  ...PERSONAL,
  id: 'personal.runway',
  title: 'Own limits: runway length',
  parameters: LIMITS_WEATHER,
  branches: { ...PERSONAL_BRANCHES, ...RUNWAY_BRANCHES },
  bodies: [personalBody(judgeRunway)],
});
