import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'not-authorised-for-checkout',
    status: 403,
    title: 'Not yours to sign',
    detail: 'The club names the instructors who sign this checkout. Ask one of them, or an officer.',
  },
  {
    code: 'item-signed-already',
    status: 409,
    title: 'Signed already',
    detail: 'This item is signed. Nothing is left to do for it.',
  },
  {
    code: 'item-corrected-already',
    status: 409,
    title: 'Corrected already',
    detail: 'This record has been corrected or withdrawn before. Correct the newest one, or sign anew.',
  },
  {
    code: 'item-behind-checkout',
    status: 409,
    title: 'A checkout rests on it',
    detail: 'A signed checkout rests on this item. Take the checkout back first.',
  },
  {
    code: 'item-of-old-version',
    status: 409,
    title: 'Of a version no longer in force',
    detail: 'Withdraw it, and sign the item of the version in force.',
  },
);
