import { defineRule } from '../../../engine/rule.js';
import { CEILING_BRANCHES, CHECK_WEATHER, judgeCeilingVisibility } from './ceiling-visibility.js';
import { PERSONAL, PERSONAL_BRANCHES, personalBody } from './in-force.js';
import { WIND_WEATHER } from './wind.js';

/** Ceiling and visibility by day and by night, against the limits the pilot set. */
export const personalCeilingVisibility = defineRule({
  ...PERSONAL,
  id: 'personal.ceiling_visibility',
  title: 'Own limits: ceiling and visibility',
  settledAt: 'departure',
  whenUnknown: CHECK_WEATHER,
  parameters: WIND_WEATHER,
  branches: { ...PERSONAL_BRANCHES, ...CEILING_BRANCHES },
  bodies: [personalBody(judgeCeilingVisibility)],
});
