import { clubParameter } from './club-parameter.js';

/** When members are told of things. No answer about a flight hangs on these. Lists are written '30, 7, 1'. */
export const CLUB_NOTICES = [
  clubParameter({
    id: 'club.notices.gather-minutes',
    title: 'Minutes in which what one event does is gathered into one notice',
    unit: 'minutes',
    start: 3,
    section: '9.1',
  }),
  clubParameter({
    id: 'club.notices.lapse-lead-days',
    title: 'Days before a lapse on which its member is reminded',
    unit: 'text',
    start: '30, 7, 1',
    section: '9.2',
  }),
  clubParameter({
    id: 'club.notices.maintenance-lead-days',
    title: 'Days before an inspection falls due on which coordinators are warned',
    unit: 'text',
    start: '30, 7',
    section: '9.2',
  }),
  clubParameter({
    id: 'club.notices.maintenance-lead-hours',
    title: 'Meter hours before an inspection falls due at which coordinators are warned',
    unit: 'text',
    start: '10',
    section: '9.2',
  }),
];
