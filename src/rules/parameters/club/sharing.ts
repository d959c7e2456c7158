import { clubParameter } from './club-parameter.js';

/** How aircraft are shared: fair use, hours of instructors, who is offered a slot that comes free, which aircraft is best. */
export const CLUB_SHARING = [
  clubParameter({
    id: 'club.fair-use.open-bookings',
    title: 'Bookings a member may have open at once; 0 sets no limit',
    unit: 'count',
    start: 0,
    section: '4.4',
  }),
  clubParameter({
    id: 'club.fair-use.hours-ahead',
    title: 'Hours a member may have booked ahead; 0 sets no limit',
    unit: 'hours',
    start: 0,
    section: '4.4',
  }),
  clubParameter({
    id: 'club.fair-use.weekend-bookings',
    title: 'Bookings on a Saturday or Sunday a member may have open at once; 0 sets no limit',
    unit: 'count',
    start: 0,
    section: '4.4',
  }),
  clubParameter({
    id: 'club.instructor-hours.refuse-outside',
    title: 'Lessons outside the hours an instructor keeps are refused, not only to be agreed on',
    unit: 'flag',
    start: false,
    section: '4.5',
  }),
  clubParameter({
    id: 'club.standby.offer-hours',
    title: 'Hours a slot that came free is offered to one member before the next is asked',
    unit: 'hours',
    start: 4,
    section: '4.6',
  }),
  clubParameter({
    id: 'club.standby.least-notice-hours',
    title: 'Hours before departure after which a slot is offered no more',
    unit: 'hours',
    start: 1,
    section: '4.6',
  }),
  clubParameter({
    id: 'club.standby.hold-slot',
    title: 'A slot that is offered is kept for whom it is offered to',
    unit: 'flag',
    start: true,
    section: '4.6',
  }),
  clubParameter({
    id: 'club.standby.fewest-hours-first',
    title: 'Standby goes by the fewest hours booked ahead, and not by who asked first',
    unit: 'flag',
    start: false,
    section: '4.6',
  }),
  clubParameter({
    id: 'club.fit.condition',
    title: 'Points of misfit for each condition still to be settled',
    unit: 'points',
    start: 30,
    section: '4.7',
  }),
  clubParameter({
    id: 'club.fit.empty-seat',
    title: 'Points of misfit for each seat that stays empty',
    unit: 'points',
    start: 10,
    section: '4.7',
  }),
  clubParameter({
    id: 'club.fit.scarce-feature',
    title: 'Points of misfit for each thing few aircraft have and the flight does not need',
    unit: 'points',
    start: 25,
    section: '4.7',
  }),
  clubParameter({
    id: 'club.fit.odd-hour',
    title: 'Points of misfit for each hour left over beside the booking, too short to book',
    unit: 'points',
    start: 10,
    section: '4.7',
  }),
];
