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
];
