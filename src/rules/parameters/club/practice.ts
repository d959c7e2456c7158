/** How practice is weighed: what is rusty, what the next practice flight holds. No answer about a flight hangs on these. */
import type { Parameter } from '../parameter.js';
import { clubParameter } from './club-parameter.js';

type Row = readonly [name: string, unit: Parameter['unit'], start: number, title: string];

const ROWS: readonly Row[] = [
  [
    'first-half-life-days',
    'days',
    30,
    'Practice: days in which half is lost after one performance to standard',
  ],
  ['growth', 'factor', 1.5, 'Practice: by what each further spaced performance multiplies these days'],
  ['longest-half-life-days', 'days', 180, 'Practice: most days in which half is lost'],
  ['spacing-days', 'days', 5, 'Practice: performances closer together count as one'],
  ['counted-days', 'days', 730, 'Practice: older performances do not slow the loss any more'],
  ['outside-share', 'factor', 0.5, 'Practice: what a performance outside the standard leaves of these days'],
  ['rust-from', 'factor', 0.35, 'Practice: rust from which it is practised for its own sake'],
  ['dual-from', 'factor', 0.85, 'Practice: rust from which it is not practised alone'],
  ['weight-rust', 'points', 1, 'Practice: what rust weighs'],
  ['weight-booking', 'points', 2, 'Practice: what a booking that needs it weighs'],
  ['weight-checkout', 'points', 3, 'Practice: what a checkout that lacks it weighs'],
  [
    'booking-half-days',
    'days',
    14,
    'Practice: a booking so many days ahead weighs half as much as one today',
  ],
  ['repetition-share', 'factor', 0.5, 'Practice: what each repetition is worth of the one before'],
  ['crosswind-kt', 'kt', 8, 'Practice: crosswind from which it counts as one'],
  ['gust-kt', 'kt', 8, 'Practice: gusts over the wind from which they count'],
  ['short-runway-ft', 'ft', 2500, 'Practice: a runway of at most this length is short'],
  ['transit-minutes', 'minutes', 20, 'Practice: minutes to the practice area and back'],
];

export const CLUB_PRACTICE: readonly Parameter[] = [
  ...ROWS.map(([name, unit, start, title]): Parameter =>
    clubParameter({ id: `club.practice.${name}`, title, unit, start, section: '8.2' }),
  ),
  clubParameter({
    ...{ id: 'club.practice.own-word', unit: 'flag', start: false, section: '8.2' },
    title: 'Practice: a member’s own word that it was to standard counts where it was not measured',
  }),
];
