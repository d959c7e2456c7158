/** What people are told when the database refuses a weather report. */
import { registerConstraint } from '../platform/database/constraint-problems.js';
import { registerChecks } from '../platform/database/constraint-words.js';

registerChecks([
  ['weather_reports_kind_chk', 'kind', 'A text is a report (metar) or a forecast (taf).'],
  ['weather_reports_text_chk', 'text', 'Give the text of the report, at most 2000 characters.'],
  [
    'weather_reports_source_chk',
    undefined,
    'What is pasted names who pasted it and for whom; what is fetched neither.',
  ],
  [
    'weather_reports_span_chk',
    undefined,
    'A forecast holds from one time to a later one; a report tells no span.',
  ],
]);
registerConstraint(
  {
    constraint: 'weather_reports_once',
    ...{ code: 'report-known', status: 409, title: 'Report already there' },
    detail: 'This report is on record already, word for word. Nothing is to be done.',
  },
  {
    constraint: 'weather_fetches_pkey',
    ...{ code: 'report-known', status: 409, title: 'Report already there' },
    detail: 'The weather of this airfield was just fetched. Nothing is to be done.',
  },
  {
    constraint: 'weather_reports_kept_chk',
    ...{ code: 'report-kept', status: 409, title: 'Weather reports are not edited' },
    detail: 'A report stays as it was written; a newer one takes its place.',
  },
  ...['weather_reports_airfield_fk', 'weather_fetches_airfield_fk'].map((constraint) => ({
    constraint,
    ...{ code: 'airfield-unknown', status: 404, title: 'No such airfield' },
    detail: 'The club has no such airfield. Check the id.',
  })),
  ...['weather_reports_member_fk', 'weather_reports_paster_fk'].map((constraint) => ({
    constraint,
    ...{ code: 'member-unknown', status: 404, title: 'No such member' },
    detail: 'The club has no such member. Check the id.',
  })),
);
