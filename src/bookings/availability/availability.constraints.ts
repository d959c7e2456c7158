import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

registerChecks([
  ['teaching_hours_kind_chk', 'kind', 'Hours are weekly, or of one date.'],
  ['teaching_hours_weekday_chk', 'weekday', 'Give the day of the week, 1 for Monday to 7 for Sunday.'],
  [
    'teaching_hours_shape_chk',
    'kind',
    'Weekly hours name a weekday, a first day and times; hours of one date name the date.',
  ],
  ['teaching_hours_minutes_chk', 'closes', 'Give both times of one day, the later one second, or neither.'],
  ['teaching_hours_span_chk', 'validThrough', 'The last day is the first or a later one.'],
]);
registerReferences([
  [
    'teaching_hours_member_fk',
    undefined,
    'Hours belong to a member of the club, and a member with records is not deleted.',
  ],
]);
