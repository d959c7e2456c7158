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
  {
    code: 'receipt-refused',
    status: 422,
    title: 'Not a receipt of this club',
    detail: 'Give the whole line as the service gave it, for the club that it was given to.',
  },
  {
    code: 'decision-damaged',
    status: 409,
    title: 'The stored record is not whole',
    detail: 'Have a safety officer verify the chain of decisions.',
  },
);
