import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'own-erasure',
    status: 409,
    title: 'Your own data',
    detail: 'Ask another administrator to erase your data.',
  },
  {
    code: 'already-erased',
    status: 409,
    title: 'Erased already',
    detail: "This member's data was erased before.",
  },
  {
    code: 'bookings-to-come',
    status: 409,
    title: 'Flights to come',
    detail: 'The member has bookings that are not over. Cancel or return them first.',
  },
);
