import { defineProblems } from '../../platform/problems/problem-catalogue.js';

defineProblems(
  {
    code: 'practice-corrected-already',
    status: 409,
    title: 'Corrected already',
    detail: 'This record has been corrected before. Correct the newest one instead.',
  },
  {
    code: 'track-event-taken-over',
    status: 409,
    title: 'Taken over already',
    detail: 'Something of this track is on record already. Leave it out, or correct the record.',
  },
  {
    code: 'practice-signed',
    status: 403,
    title: 'Signed by an instructor',
    detail: 'Only an instructor puts another record in its place. Ask one who was there.',
  },
  {
    code: 'practice-policy-unusable',
    status: 409,
    title: 'The club’s numbers for practice do not fit together',
    detail: 'An administrator looks at the policy values club.practice.* and sets the one named.',
  },
);
