import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'requirement-no-draft',
    status: 409,
    title: 'No draft',
    detail: 'This checkout has no draft. Write one first.',
  },
  {
    code: 'requirement-retired',
    status: 409,
    title: 'Retired',
    detail: 'The club asks for this checkout no more. Take it up again before changing it.',
  },
  {
    code: 'requirement-needed',
    status: 409,
    title: 'Another checkout asks for it first',
    detail: 'Publish a version of the other without it, then retire this one.',
  },
  {
    code: 'quiz-bank-short',
    status: 409,
    title: 'Too few questions',
    detail: 'Publish more questions, or ask fewer.',
  },
);
