/** What people are told when the database refuses a check of a member. Imported for its effect by the module. */
import { registerConstraint } from '../../platform/database/constraint-problems.js';
import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

defineProblems({
  code: 'own-check',
  status: 403,
  title: 'Your own check',
  detail: 'Nobody records or takes back what was seen of themselves. Ask another officer.',
});

registerChecks([
  ['member_checks_kind_chk', 'kind', 'Name one of identity, citizenship, background.'],
  ['member_checks_own_chk', undefined, 'Nobody records what was seen of themselves. Ask another officer.'],
  [
    'member_checks_span_chk',
    'expiresOn',
    'It holds through the day it was seen or a later one. Check both dates.',
  ],
  ['member_checks_append_only', undefined, 'A check is never changed. Take it back and record a new one.'],
  ['member_check_voids_reason_chk', 'reason', 'Say why it is taken back, in 5 to 500 characters.'],
  ['member_check_voids_append_only', undefined, 'What was taken back stays so. Record a new check.'],
]);
registerReferences([
  [
    'member_checks_member_fk',
    undefined,
    'A check is of a member of the club, who is not deleted while it stands.',
  ],
  [
    'member_checks_seer_fk',
    undefined,
    'A member of the club records a check, and is not deleted while it stands.',
  ],
  ['member_check_voids_check_fk', undefined, 'Only a check of the club can be taken back.'],
  ['member_check_voids_by_fk', undefined, 'A member of the club takes a check back.'],
]);
registerConstraint({
  ...{ constraint: 'member_check_voids_pkey', code: 'check-void-already', status: 409 },
  ...{ title: 'Taken back already', detail: 'This check has been taken back before. Record a new one.' },
});
