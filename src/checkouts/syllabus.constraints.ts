/** What people are told when the database refuses something about what checkouts ask for. Imported for its effect. */
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { registerConstraint, registerWords } from '../platform/database/constraint-problems.js';

registerChecks([
  ['checkout_requirements_kind_chk', 'kind', 'Name one of model, equipment, condition, annual-check.'],
  ['checkout_requirements_group_chk', 'equipmentGroup', 'Name one of the equipment groups.'],
  ['checkout_requirements_condition_chk', 'condition', 'Name one of the conditions.'],
  ['checkout_requirements_called_chk', 'alsoCalled', 'Only an equipment group has other names, 20 at most.'],
  ['checkout_requirements_shape_chk', 'kind', 'It names what its kind is for, and nothing else.'],
  [
    'checkout_requirements_subject_kept',
    'kind',
    'What a checkout is for does not change. Retire it and lay another down.',
  ],
  ['checkout_versions_number_chk', undefined, 'Versions are counted from 1.'],
  ['checkout_versions_title_chk', 'title', 'Give a title of up to 200 characters.'],
  ['checkout_versions_good_chk', 'goodDays', 'Give days, 1 to 3,660, or leave them out.'],
  ['checkout_versions_published_chk', undefined, 'Who published a version is on record with the time.'],
  [
    'checkout_versions_quiz_chk',
    'quiz',
    'A quiz draws 1 to 100 questions and has a pass mark of 1 to 100 %.',
  ],
  ['checkout_items_position_chk', 'items', 'A checkout has 100 items at most.'],
  ['checkout_items_title_chk', 'items', 'Give each item a title of up to 200 characters.'],
  ['checkout_items_standard_chk', 'items', 'Say in up to 1,000 characters what to standard means.'],
  ['checkout_items_manoeuvre_chk', 'items', 'Name one of the manoeuvres of the certification standards.'],
  [
    'checkout_prerequisites_circle_chk',
    'prerequisiteIds',
    'These checkouts would wait for each other: one of them asks, by itself or through others, for this one first.',
  ],
  ['checkout_marks_outcome_chk', 'outcome', 'Name one of signed, not-yet.'],
  ['checkout_marks_note_chk', 'note', 'Say it in 1,000 characters.'],
  ['checkout_marks_because_chk', 'because', 'Say why it is corrected, in 5 to 500 characters.'],
  [
    'checkout_marks_own_chk',
    undefined,
    'Nobody signs their own checkout. Fly with another instructor of the club.',
  ],
  ['checkout_marks_itself_chk', undefined, 'A record does not correct itself.'],
  ['checkout_marks_correction_chk', 'because', 'A correction names what it corrects and says why.'],
  ['checkout_marks_why_chk', 'note', 'Say what is missing, in 5 characters or more.'],
  [
    'checkout_marks_replaced_chk',
    undefined,
    'What was withdrawn is not corrected further, and a correction is for the same aircraft.',
  ],
  [
    'checkout_marks_in_force_chk',
    'itemId',
    'Items are signed under the version in force. Read what is asked for again.',
  ],
  [
    'checkout_marks_difference_chk',
    'differenceId',
    'A change of equipment is shown by items of its equipment group.',
  ],
  ['checkout_marks_append_only', undefined, 'A signed item is never changed. Correct it by a new record.'],
]);
registerChecks([
  ['checkouts_group_chk', 'equipmentGroup', 'Name one of the equipment groups.'],
  ['checkouts_condition_chk', 'condition', 'Name one of the conditions.'],
  [
    'checkouts_difference_chk',
    undefined,
    'Only a differences checkout is of a change, and only where the club has laid down how it is shown.',
  ],
  [
    'checkouts_version_chk',
    undefined,
    'The club has laid down what this checkout asks for. Sign it under that.',
  ],
  [
    'checkouts_in_force_chk',
    undefined,
    'A checkout is signed under the version in force. Read what is asked for again.',
  ],
  ['checkouts_subject_chk', 'kind', 'That version is for something else.'],
]);
registerWords({ code: 'checkout-not-complete', status: 409, title: 'Something is left to do' }, [
  ['checkouts_items_chk', undefined, 'An item that this checkout asks for is not signed.'],
]);
registerWords({ code: 'version-published', status: 409, title: 'Version is published' }, [
  ['checkout_versions_kept', undefined, 'A published version stays as it is. Write the next one as a draft.'],
]);
registerWords({ code: 'not-authorised-for-checkout', status: 403, title: 'Not yours to sign' }, [
  [
    'checkouts_authorised_chk',
    undefined,
    'The club names the instructors who sign this checkout. Ask one of them.',
  ],
  [
    'checkout_marks_authorised_chk',
    undefined,
    'The club names the instructors who sign this checkout. Ask one of them.',
  ],
]);
registerWords({ code: 'already-there', status: 409, title: 'There already' }, [
  [
    'checkout_requirements_subject_uq',
    'kind',
    'The club has laid this checkout down already. Write the next version of that one.',
  ],
  ['checkout_versions_number_uq', undefined, 'Somebody wrote a version at the same time. Read it again.'],
  ['checkout_versions_draft_uq', undefined, 'Somebody wrote a draft at the same time. Read it again.'],
  ['checkout_versions_owner_uq', undefined, 'A version stays with its checkout.'],
  ['checkout_items_position_uq', 'items', 'Two items have the same place.'],
  ['checkout_items_title_uq', 'items', 'Two items have the same title. Tell them apart.'],
  ['checkout_instructors_pkey', 'instructorIds', 'An instructor is named once.'],
  ['checkout_prerequisites_pkey', 'prerequisiteIds', 'A checkout that must stand first is named once.'],
  ['checkout_transfers_pkey', 'alsoModelIds', 'A model is named once.'],
  ['checkout_marks_owner_uq', undefined, 'A signed item stays with its member.'],
]);
registerConstraint({
  ...{ constraint: 'checkout_marks_corrects_uq', code: 'item-corrected-already', status: 409 },
  title: 'Corrected already',
  detail: 'This record has been corrected or withdrawn before. Correct the newest one, or sign anew.',
});
registerReferences([
  ['checkouts_version_fk', undefined, 'It is signed under a version the club has laid down, and both stay.'],
  [
    'checkouts_difference_fk',
    undefined,
    'It is for a change of one of the aircraft, which is not deleted while it stands.',
  ],
  [
    'checkout_requirements_model_fk',
    'modelId',
    "It names one of the club's models; a model with a checkout laid down is not deleted.",
  ],
  ['checkout_instructors_requirement_fk', undefined, 'Who may sign is kept with a checkout of the club.'],
  [
    'checkout_instructors_member_fk',
    'instructorIds',
    'It is signed by members of the club, who are not deleted.',
  ],
  [
    'checkout_versions_requirement_fk',
    undefined,
    'A version belongs to a checkout of the club, and a checkout with versions is not deleted.',
  ],
  [
    'checkout_versions_publisher_fk',
    undefined,
    'It is published by a member of the club, who is not deleted.',
  ],
  ['checkout_items_version_fk', undefined, 'An item belongs to a version.'],
  ['checkout_prerequisites_version_fk', undefined, 'What must stand first is asked for by a version.'],
  [
    'checkout_prerequisites_requirement_fk',
    'prerequisiteIds',
    'What must stand first is a checkout of the club, which is not deleted while another asks for it.',
  ],
  ['checkout_transfers_version_fk', undefined, 'Like models are named by a version.'],
  [
    'checkout_transfers_model_fk',
    'alsoModelIds',
    "Like models are the club's; a model that is named is not deleted.",
  ],
  [
    'checkout_marks_member_fk',
    undefined,
    'A signed item belongs to a member of the club, and a member with signed items is not deleted.',
  ],
  ['checkout_marks_item_fk', 'itemId', 'It is an item of one of the checkouts of the club.'],
  [
    'checkout_marks_difference_fk',
    'differenceId',
    'It is for a change of one of the aircraft, which is not deleted.',
  ],
  ['checkout_marks_signer_fk', undefined, 'It is signed by a member of the club, who is not deleted.'],
  ['checkout_marks_corrects_fk', undefined, 'A correction is of the same item of the same member.'],
]);
