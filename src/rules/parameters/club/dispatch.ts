import { clubParameter } from './club-parameter.js';

/** When aircraft are handed out, and who is told when one is not back. */
export const CLUB_DISPATCH = [
  clubParameter({
    id: 'club.dispatch.earliest-minutes',
    title: 'Minutes ahead of the booked departure from which an aircraft is handed out',
    unit: 'minutes',
    start: 120,
    section: '4.4',
  }),
  // Thirty minutes: so long after the estimated arrival a search begins for whoever has not closed a VFR flight plan.
  clubParameter({
    id: 'club.overdue.crew-minutes',
    title: 'Minutes after the time an aircraft is due back at which its crew is told',
    unit: 'minutes',
    start: 30,
    section: '4.5',
  }),
  clubParameter({
    id: 'club.overdue.officers-minutes',
    title: 'Minutes after the time an aircraft is due back at which the safety officers are told',
    unit: 'minutes',
    start: 60,
    section: '4.5',
  }),
];
