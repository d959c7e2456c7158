import { defineRule } from '../../../engine/rule.js';
import { NIGHT_PARAMETERS } from '../../common/shared/by-day.js';
import { PERSONAL, PERSONAL_BRANCHES, personalBody } from './in-force.js';
import { judgeNight, NIGHT_BRANCHES } from './night.js';

/** Flying at night, against the limits the pilot set. */
export const personalNight = defineRule({
  ...PERSONAL,
  id: 'personal.night',
  title: 'Own limits: night',
  parameters: NIGHT_PARAMETERS,
  branches: { ...PERSONAL_BRANCHES, ...NIGHT_BRANCHES },
  bodies: [personalBody(judgeNight)],
});
