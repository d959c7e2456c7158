/** A flight of a series at another time of its own day. */
import { Temporal } from 'temporal-polyfill';
import type { Occurrence } from './occurrences.js';

/**
 * Its times with another departure on the club's clock, another length, or both. Skipped and doubled times are read as in the
 * series itself (RFC 5545, section 3.3.5).
 */
export function onItsDay(
  { departs, arrives }: Occurrence,
  to: { departsAt?: string; lastsMinutes?: number; zone: string },
): Occurrence {
  const [from, until] = [Temporal.Instant.from(departs), Temporal.Instant.from(arrives)];
  const day = from.toZonedDateTimeISO(to.zone).toPlainDate();
  const leaves =
    to.departsAt === undefined
      ? from
      : day
          .toPlainDateTime(Temporal.PlainTime.from(to.departsAt))
          .toZonedDateTime(to.zone, { disambiguation: 'compatible' })
          .toInstant();
  const lasts =
    to.lastsMinutes === undefined ? from.until(until) : Temporal.Duration.from({ minutes: to.lastsMinutes });
  const told = (instant: Temporal.Instant): string => instant.toString({ smallestUnit: 'second' });
  return { departs: told(leaves), arrives: told(leaves.add(lasts)) };
}
