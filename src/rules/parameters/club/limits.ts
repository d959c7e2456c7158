import { clubParameter } from './club-parameter.js';

/** How members keep limits of their own. No answer about a flight hangs on these. */
export const CLUB_LIMITS = [
  clubParameter({
    id: 'club.limits.looser-after-days',
    // Common practice, no source; the FAA's worksheet says not to lower them for a specific flight.
    title: 'Days after which a member’s own limits may be looser than before; 0 at once',
    unit: 'days',
    start: 1,
    section: '8.3',
  }),
  clubParameter({
    id: 'club.limits.suggested-days',
    title: 'Days of flying that limits are suggested from',
    unit: 'days',
    start: 180,
    section: '8.3',
  }),
];
