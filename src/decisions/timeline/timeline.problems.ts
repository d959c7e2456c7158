import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'span-too-large',
    status: 422,
    title: 'More than is answered at once',
    detail: 'Ask for a shorter span, or name fewer members or aircraft.',
  },
  {
    code: 'timeline-running',
    status: 429,
    title: 'One at a time',
    detail: 'A timeline of the whole club is being written already. Wait until it has ended, or end it.',
  },
);
