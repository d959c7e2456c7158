import { clubParameter } from './club-parameter.js';

/** How long, and how far ahead, an aircraft may be booked. */
export const CLUB_BOOKING = [
  clubParameter({
    id: 'club.booking-length.local-hours',
    title: 'Longest booking for a flight that lands nowhere else',
    unit: 'hours',
    start: 10,
    section: '4.1',
  }),
  clubParameter({
    id: 'club.booking-length.trip-days',
    title: 'Longest booking for a trip with a landing elsewhere',
    unit: 'days',
    start: 14,
    section: '4.1',
  }),
  clubParameter({
    id: 'club.booking-length.instruction-hours',
    title: 'Longest booking for instruction or a checkout',
    unit: 'hours',
    start: 10,
    section: '4.1',
  }),
  clubParameter({
    id: 'club.booking-lead.min-hours',
    title: 'Hours ahead of departure by which a booking must be made; 0 asks for none',
    unit: 'hours',
    start: 0,
    section: '4.2',
  }),
  clubParameter({
    id: 'club.booking-lead.max-days',
    title: 'Days ahead that may be booked',
    unit: 'days',
    start: 60,
    section: '4.2',
  }),
  clubParameter({
    id: 'club.cancellation.lead-hours',
    title: 'Hours before departure from which a flight given back counts as late; 0: never',
    unit: 'hours',
    start: 24,
    section: '4.3',
  }),
  clubParameter({
    id: 'club.cancellation.late-reason',
    title: 'A flight given back late needs a reason',
    unit: 'flag',
    start: true,
    section: '4.3',
  }),
  clubParameter({
    id: 'club.holds.hours',
    title: 'Hours for which an instructor may hold a slot for a checkout',
    unit: 'hours',
    start: 48,
    section: '4.4',
  }),
  clubParameter({
    id: 'club.holds.at-once',
    title: 'Slots an instructor may hold at once',
    unit: 'count',
    start: 5,
    section: '4.4',
  }),
];
