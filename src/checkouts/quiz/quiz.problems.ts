import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'question-published',
    status: 409,
    title: 'Question is published',
    detail: 'A published question stays as it is. Retire it, and write another.',
  },
  {
    code: 'quiz-not-asked',
    status: 409,
    title: 'No quiz',
    detail: 'The version in force of this checkout asks for no quiz.',
  },
  {
    code: 'quiz-passed-already',
    status: 409,
    title: 'Passed already',
    detail: 'The quiz is passed. Nothing is left to do for it.',
  },
  {
    code: 'quiz-wait',
    status: 409,
    title: 'Not yet',
    detail: 'The club lets some time pass between a quiz that was not passed and the next.',
  },
  {
    code: 'quiz-handed-in-already',
    status: 409,
    title: 'Handed in already',
    detail: 'This quiz was handed in and scored before. Read its result.',
  },
);
