import { type ConstraintWords, registerWords } from '../../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

const every = (tables: readonly string[]): ConstraintWords[] =>
  tables.flatMap((table): ConstraintWords[] => [
    [
      `${table}_scope_chk`,
      'scope',
      'Name the flights it binds: all, ifr, hire-or-instruction, night, transponder-use or advice.',
    ],
    [`${table}_calendar_chk`, 'calendarMonths', 'Give calendar months, 1 or more, or leave them out.'],
    [`${table}_plain_chk`, 'plainMonths', 'Give months, 1 or more, or leave them out.'],
    [`${table}_days_chk`, 'days', 'Give days, 1 or more, or leave them out.'],
    [`${table}_interval_chk`, 'intervalH', 'Give an interval of more than 0 hours, or leave it out.'],
  ]);

/** What the constraints of directives and templates mean to a client. */
registerChecks([
  ...every(['directives', 'item_templates']),
  ['directives_issuer_chk', 'issuer', 'Name the authority in up to 40 characters.'],
  ['directives_number_chk', 'number', 'Give the number in up to 60 characters.'],
  ['directives_title_chk', 'title', 'Say in up to 200 characters what it is about.'],
  ['directives_applies_chk', 'appliesTo', 'Name one of aircraft, equipment.'],
  ['directives_serials_chk', 'serials', 'Give ranges of serial numbers, or none.'],
  ['directives_within_days_chk', 'withinDays', 'Give days, 1 or more, or leave them out.'],
  ['directives_within_hours_chk', 'withinH', 'Give more than 0 hours, or leave them out.'],
  ['directives_itself_chk', 'supersedes', 'A directive supersedes another one.'],
  [
    'directives_equipment_chk',
    'equipmentKind',
    'One about equipment names its kind; one about the aircraft neither kind nor part numbers.',
  ],
  [
    'directives_withdrawn_chk',
    'withdrawnOn',
    'It is withdrawn on or after the day it took effect. Check both.',
  ],
  ['directives_recurs_chk', 'calendarMonths', 'A directive that recurs says when: months, days or hours.'],
  ['airworthiness_items_directive_chk', 'kind', 'An item that comes from a directive is of that kind.'],
  ['directive_findings_because_chk', 'because', 'Say in at least 5 characters what was found.'],
  ['directive_findings_signed_chk', 'signedBy', 'Say who looked: name and certificate.'],
  [
    'item_templates_kind_chk',
    'kind',
    'Name one of the kinds of airworthiness items; directives have a record of their own.',
  ],
  ['item_templates_title_chk', 'title', 'Give the template a title of up to 200 characters.'],
  ['item_templates_tolerance_chk', 'toleranceH', 'Give a tolerance of 0 hours or more.'],
]);
registerWords({ code: 'already-there', status: 409, title: 'There already' }, [
  ['directives_number_uq', 'number', 'The club has this directive on record. Edit that one.'],
  ['directives_supersedes_uq', 'supersedes', 'Another directive has taken its place already.'],
  [
    'airworthiness_items_directive_uq',
    undefined,
    'The aircraft has an item for this directive. Read its items again.',
  ],
  ['directive_models_pkey', 'modelIds', 'The directive names the model already.'],
  ['item_templates_title_uq', 'title', 'The club has a template of this title. Edit that one.'],
]);
registerReferences([
  [
    'directives_supersedes_fk',
    'supersedes',
    'It takes the place of a directive of the club, and both stay on record.',
  ],
  ['directive_models_directive_fk', undefined, 'Models are named by a directive of the club.'],
  [
    'directive_models_model_fk',
    'modelIds',
    'A directive names models of the club; a model it names stays. Correct the directive first.',
  ],
  [
    'airworthiness_items_directive_fk',
    undefined,
    'An item comes from a directive of the club, which stays as long.',
  ],
  [
    'directive_findings_directive_fk',
    undefined,
    'A finding is about a directive of the club, and both stay on record.',
  ],
  [
    'directive_findings_aircraft_fk',
    undefined,
    'A finding is about an aircraft of the club, and stays on record.',
  ],
  [
    'directive_findings_equipment_fk',
    'equipmentId',
    'A finding is about a piece of the same aircraft, and stays on record.',
  ],
  [
    'directive_findings_member_fk',
    undefined,
    'A finding is entered by a member of the club, and keeps that name.',
  ],
  [
    'directive_findings_append_only',
    undefined,
    'Findings are not edited. Record another; the newest counts.',
  ],
]);
