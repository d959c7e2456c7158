/** What people are told when the database refuses something about quizzes. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';
import { registerConstraint, registerWords } from '../../platform/database/constraint-problems.js';

registerChecks([
  ['quiz_questions_topic_chk', 'topic', 'Name one of limits, systems, emergency-memory.'],
  ['quiz_questions_kind_chk', 'kind', 'Name one of single, multiple, number.'],
  ['quiz_questions_text_chk', 'text', 'Ask in up to 1,000 characters.'],
  ['quiz_questions_unit_chk', 'unit', 'Name the unit in up to 40 characters, or leave it out.'],
  ['quiz_questions_reference_chk', 'reference', 'Say in up to 200 characters where it is written.'],
  ['quiz_questions_state_chk', 'state', 'Name one of draft, published, retired.'],
  [
    'quiz_questions_answer_chk',
    'kind',
    'A number has a right value and a tolerance; choices are two to eight, with the right ones among them.',
  ],
  ['quiz_drawn_position_chk', undefined, 'A quiz asks 100 questions at most.'],
  ['quiz_results_answers_chk', 'answers', 'Give a list of answers.'],
  ['quiz_results_pass_chk', undefined, 'The pass mark lies from 1 to 100 %.'],
  ['quiz_results_count_chk', undefined, 'No more is right than was asked.'],
  ['quiz_results_passed_chk', undefined, 'Passed is what the pass mark says.'],
  ['quiz_attempts_append_only', undefined, 'An attempt stays as it was begun.'],
  ['quiz_drawn_append_only', undefined, 'What was drawn stays so.'],
  ['quiz_results_append_only', undefined, 'A result stays as it was scored.'],
]);
registerWords({ code: 'question-published', status: 409, title: 'Question is published' }, [
  ['quiz_questions_kept', undefined, 'A published question stays as it is. Retire it, and write another.'],
]);
registerWords({ code: 'quiz-open', status: 409, title: 'Another attempt is open' }, [
  [
    'quiz_attempts_open_chk',
    undefined,
    'An attempt of this quiz is not handed in yet. Hand that one in first.',
  ],
]);
registerConstraint({
  ...{
    constraint: 'quiz_results_pkey',
    code: 'quiz-handed-in-already',
    status: 409,
    title: 'Handed in already',
  },
  detail: 'This quiz was handed in and scored before. Read its result.',
});
registerWords({ code: 'already-there', status: 409, title: 'There already' }, [
  ['quiz_questions_owner_uq', undefined, 'A question stays in its bank.'],
  ['quiz_attempts_owner_uq', undefined, 'An attempt stays with its checkout.'],
  ['quiz_drawn_position_uq', undefined, 'Two questions have the same place.'],
  ['quiz_drawn_pkey', undefined, 'A question is drawn once.'],
]);
registerReferences([
  [
    'quiz_questions_requirement_fk',
    undefined,
    'A question belongs to a checkout of the club, and a checkout with questions is not deleted.',
  ],
  [
    'quiz_attempts_member_fk',
    undefined,
    'An attempt belongs to a member of the club, and a member with attempts is not deleted.',
  ],
  ['quiz_attempts_version_fk', undefined, 'An attempt is for a version of its checkout, and both stay.'],
  ['quiz_drawn_attempt_fk', undefined, 'Questions are drawn for an attempt at the same checkout.'],
  ['quiz_drawn_question_fk', undefined, 'A question is drawn of the bank of the same checkout, and stays.'],
  ['quiz_results_attempt_fk', undefined, 'A result is of an attempt of the club.'],
]);
