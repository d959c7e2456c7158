import type { Parameter } from '../parameter.js';
import { clubParameter } from './club-parameter.js';

/** What flying is charged in, and when what is charged is overdue. */
export const CLUB_CHARGES: readonly Parameter[] = [
  clubParameter({
    id: 'club.charges.currency',
    title: 'Currency of the accounts, by its ISO 4217 code',
    unit: 'choice',
    start: 'USD',
    section: '2.6',
  }),
  clubParameter({
    id: 'club.charges.due-days',
    title: 'Days after a charge in which it is to be paid',
    unit: 'days',
    start: 30,
    section: '2.6',
  }),
  clubParameter({
    id: 'club.charges.arrears-limit',
    title: 'Overdue amount up to which an account is not in arrears',
    unit: 'money',
    start: 0,
    section: '2.6',
  }),
  clubParameter({
    id: 'club.charges.day-away-hours',
    title: 'Hours charged at least for each day of a flight that stays away overnight; 0: none',
    unit: 'hours',
    start: 0,
    section: '2.6',
  }),
];
