/** What people are told when the database refuses limits. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

registerChecks([
  ['personal_limits_wind_chk', 'windKt', 'Give the most wind in knots, 0 to 80.'],
  ['personal_limits_crosswind_chk', 'crosswindKt', 'Give the most crosswind in knots, 0 to 80.'],
  [
    'personal_limits_gust_chk',
    'gustSpreadKt',
    'Give the most that gusts lie over the wind in knots, 0 to 80.',
  ],
  ['personal_limits_ceiling_day_chk', 'ceilingDayFtAgl', 'Give the least ceiling in feet, 0 to 20,000.'],
  ['personal_limits_ceiling_night_chk', 'ceilingNightFtAgl', 'Give the least ceiling in feet, 0 to 20,000.'],
  [
    'personal_limits_visibility_day_chk',
    'visibilityDaySm',
    'Give the least visibility in statute miles, 0 to 50.',
  ],
  [
    'personal_limits_visibility_night_chk',
    'visibilityNightSm',
    'Give the least visibility in statute miles, 0 to 50.',
  ],
  ['personal_limits_runway_chk', 'runwayFt', 'Give the least length of a runway, 100 to 20,000 ft.'],
  ['personal_limits_note_chk', 'note', 'Say it in 2,000 characters.'],
  [
    'personal_limits_through_chk',
    'bindsThrough',
    'Only limits set by an instructor bind through a day, and that is their first day or a later one.',
  ],
  ['personal_limits_append_only', undefined, 'Limits on record are never changed. Set new ones.'],
]);
registerReferences([
  [
    'personal_limits_member_fk',
    undefined,
    'Limits belong to a member of the club, and a member with records is not deleted.',
  ],
  ['personal_limits_setter_fk', undefined, 'They are set by a member of the club, who is not deleted.'],
]);
