import { addPlainMonths, localDateOf, startOfDay, toInstant, toSeconds } from '../../rules/index.js';
import { flagOn } from '../policy-flag.js';
import type { ClubFacts } from './club.js';
import type { PeopleQuestion } from './people.js';

/** Months of log a sheet carries, by jurisdiction: the furthest look-back of its pack's rules. */
const LOG_MONTHS = { US: 25, EU: 25, CA: 61 } as const;

/** Whether papers that no officer has verified count (club policy, read at the instant of asking). */
const UNVERIFIED_COUNTS = 'club.papers.unverified-count';

/** How far back people's flying is gathered for a club, and whether papers that nobody has verified count. */
export function whatCounts(
  { zone, jurisdiction, policy }: ClubFacts,
  knownAt: string,
): Pick<PeopleQuestion, 'knownAt' | 'logSince' | 'unverifiedCounts'> {
  const today = localDateOf(toSeconds(knownAt), zone);
  const logFrom = addPlainMonths(today, -LOG_MONTHS[jurisdiction], 'clamp-to-month-end');
  return {
    knownAt,
    logSince: toInstant(startOfDay(logFrom, zone)),
    unverifiedCounts: flagOn(policy, UNVERIFIED_COUNTS, { knownAt, zone }),
  };
}
