/** How the club plans its shop visits: what the shop can take, and what weighs how much. No answer about a flight hangs on these. */
import type { Parameter } from '../parameter.js';
import { clubParameter } from './club-parameter.js';

type Row = readonly [name: string, unit: Parameter['unit'], start: number, title: string];

const rows = (prefix: string, section: string, list: readonly Row[]): Parameter[] =>
  list.map(([name, unit, start, title]): Parameter =>
    clubParameter({ id: `club.${prefix}.${name}`, title, unit, start, section }),
  );

export const CLUB_SEASON: readonly Parameter[] = [
  ...rows('shop', '7.3', [
    ['bays', 'count', 2, 'Aircraft in the shop at once'],
    ['days-per-week', 'days', 5, 'Days a week the shop works on an aircraft'],
    ['days-in-all', 'days', 10, 'Days of work the shop does in a week, over all aircraft'],
    ['lead-weeks', 'count', 1, 'Weeks ahead a shop visit is booked at the least'],
    ['longest-weeks', 'count', 6, 'Weeks a shop visit lasts at most'],
    ['days-annual', 'days', 4, 'Days in the shop: annual inspection'],
    ['days-hundred-hour', 'days', 2, 'Days in the shop: 100-hour inspection'],
    ['days-other', 'days', 1, 'Days in the shop: any other item'],
    ['trainers-kept', 'count', 1, 'Aircraft for instruction that are kept flying at all times'],
  ]),
  ...rows('season', '7.4', [
    ['booked-hour', 'points', 1, 'Planning: an hour taken from a member who has booked it'],
    ['expected-hour', 'points', 0.5, 'Planning: an hour that would likely be flown and is not booked'],
    ['week-of-life', 'points', 0.4, 'Planning: a week of an inspection’s life thrown away'],
    ['week-overdue', 'points', 10, 'Planning: a week in which something overdue waits'],
    ['visit', 'points', 3, 'Planning: a visit to the shop'],
    ['wish-hour', 'points', 0.5, 'Planning: an hour that an upgrade is worth'],
  ]),
];
