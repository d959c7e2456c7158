import { clubParameter } from './club-parameter.js';

/** How the club deals with what is reported wrong. */
export const CLUB_SQUAWKS = [
  clubParameter({
    id: 'club.squawks.deferral-days',
    title: 'Days a squawk stays deferred where the deferral names no last day; 0 sets none',
    unit: 'days',
    start: 30,
    section: '7.2',
  }),
];
