import { defineProblems } from '../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'forbidden',
    status: 403,
    title: 'Not yours to do',
    detail: 'Ask for yourself, or have somebody with the right role do it.',
  },
  {
    code: 'flight-invalid',
    status: 422,
    title: 'The flight cannot be read',
    detail: 'The parts of the flight contradict each other. Change the field named.',
  },
);
