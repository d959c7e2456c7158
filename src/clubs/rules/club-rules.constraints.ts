/** What people are told when the database refuses a rule of the club. */
import { type ConstraintWords, registerConstraint } from '../../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

const impossible: ConstraintWords[] = [
  [
    'club_rules_code_chk',
    'slug',
    "Write the short name in lower-case words and digits joined by single hyphens; with 'club.own.' it has at most 80 characters.",
  ],
  ['club_rules_version_chk', undefined, 'Versions count from 1.'],
  ['club_rules_title_chk', 'title', 'Give the rule a title.'],
  ['club_rules_weight_chk', 'weight', 'Name one of club, advice.'],
  [
    'club_rules_applies_chk',
    'appliesWhen',
    "Write an expression of at most 2000 characters; 'true' for all flights.",
  ],
  ['club_rules_requirement_chk', 'requirement', 'Write an expression of at most 2000 characters.'],
  [
    'club_rules_message_chk',
    'message',
    'Say in at most 500 characters what a member reads when the rule is not met.',
  ],
  [
    'club_rules_condition_chk',
    'condition',
    'Write the condition in at most 300 characters, or leave it out.',
  ],
  ['club_rules_document_chk', 'document', 'Name the club paper that says so.'],
  ['club_rules_state_chk', undefined, 'A version is a draft, active or ended.'],
  [
    'club_rules_dates_chk',
    undefined,
    'A draft has no dates; a version in force has a first day; one that ended has both, in order.',
  ],
  ['club_rule_dry_runs_changed_chk', undefined, 'No more answers can change than were looked at.'],
];
registerChecks(impossible);

const gone = 'The member is not there any more. Read again and repeat.';
registerReferences([
  ['club_rules_created_fk', undefined, gone],
  ['club_rules_activated_fk', undefined, gone],
  ['club_rules_ended_fk', undefined, gone],
  ['club_rule_dry_runs_member_fk', undefined, gone],
  ['club_rule_dry_runs_rule_fk', undefined, 'The rule is not there any more. Read the rules again.'],
]);

registerConstraint(
  {
    constraint: 'club_rules_version_uq',
    code: 'club-rule-version-taken',
    status: 409,
    title: 'Version already there',
    detail: 'Somebody just added this version of the rule. Read the rule again.',
  },
  {
    constraint: 'club_rules_draft_uq',
    code: 'club-rule-draft-there',
    status: 409,
    title: 'There is a draft already',
    detail: 'The rule has a draft of its next version. Edit that one, or remove it first.',
  },
  {
    constraint: 'club_rules_one_weight_excl',
    code: 'club-rule-weight-fixed',
    status: 409,
    title: 'The weight stays',
    detail:
      'Decisions name a rule by its code, and overrides hang on its weight, so all versions have the same. End this rule and write another one.',
    field: 'weight',
  },
  {
    constraint: 'club_rules_in_force_excl',
    code: 'club-rule-overlap',
    status: 409,
    title: 'Another version is in force then',
    detail: 'Two versions of a rule are never in force on the same day. Choose another first day.',
    field: 'from',
  },
  {
    constraint: 'club_rules_kept',
    code: 'club-rule-kept',
    status: 409,
    title: 'The version stays as it is',
    detail: 'Decisions rest on a version that was put in force. Make the next version instead.',
  },
);
