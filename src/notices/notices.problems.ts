import { defineProblems } from '../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'notice-must-go',
    status: 422,
    title: 'This notice is not turned off',
    detail: 'The safety of a flight hangs on it. Choose at once or with the day’s mail.',
  },
  {
    code: 'quiet-hours-refused',
    status: 422,
    title: 'Quiet hours need a beginning and another end',
    detail: 'Give both times, and two different ones; or neither for none.',
  },
  {
    code: 'feed-refused',
    status: 422,
    title: 'The feed cannot be made',
    detail: 'A feed of one aircraft names the aircraft; any other does not.',
  },
  {
    code: 'too-many-feeds',
    status: 409,
    title: 'Too many calendar feeds',
    detail: 'You have as many addresses as one person may. Take one back first.',
  },
  {
    code: 'too-many-streams',
    status: 429,
    title: 'Too many open pages',
    detail:
      'You are listening with as many pages as one person may. Close one, or read again from time to time.',
  },
);
