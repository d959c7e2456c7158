import { defineRule } from '../../../engine/rule.js';
import { PERSONAL, PERSONAL_BRANCHES, personalBody } from './in-force.js';
import { CHECK_WIND, judgeWind, WIND_BRANCHES, WIND_WEATHER } from './wind.js';

/** Wind, crosswind by runway and gusts over the wind, against the limits the pilot set. */
export const personalWind = defineRule({
  ...PERSONAL,
  id: 'personal.wind',
  title: 'Own limits: wind',
  settledAt: 'departure',
  whenUnknown: CHECK_WIND,
  parameters: WIND_WEATHER,
  branches: { ...PERSONAL_BRANCHES, ...WIND_BRANCHES },
  bodies: [personalBody(judgeWind)],
});
