/** Instants as people read them: the date and the clock of a zone. */
import { localClock, localDateOf, toSeconds, type EpochSeconds, type Instant } from '../calendar/instants.js';
import type { LocalDate } from '../calendar/dates.js';

const seconds = (at: Instant | EpochSeconds): EpochSeconds => (typeof at === 'number' ? at : toSeconds(at));

/** '2027-03-05'. */
export const dateOf = (at: Instant | EpochSeconds, zone: string): LocalDate => localDateOf(seconds(at), zone);

/** '18:51'. */
export const clockOf = (at: Instant | EpochSeconds, zone: string): string => localClock(seconds(at), zone);

/** '2027-03-05 18:51'. */
export const dateAndClock = (at: Instant | EpochSeconds, zone: string): string =>
  `${dateOf(at, zone)} ${clockOf(at, zone)}`;
