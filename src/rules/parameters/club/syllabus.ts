import { clubParameter } from './club-parameter.js';

/** How checkouts are worked through. No answer about a flight hangs on these. */
export const CLUB_SYLLABUS = [
  clubParameter({
    id: 'club.checkouts.quiz-wait-hours',
    title: 'Hours between a quiz that was not passed and the next; 0 asks for none',
    unit: 'hours',
    start: 24,
    section: '3.7',
  }),
  clubParameter({
    id: 'club.checkouts.ending-days',
    title: 'Days before its end from which a checkout is shown as ending',
    unit: 'days',
    start: 60,
    section: '3.7',
  }),
];
