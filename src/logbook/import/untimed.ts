/** Entries of which only the day is known. Pure. */
import { daysBetween, type LocalDate } from '../../rules/calendar/dates.js';
import { endOfDay, plusSeconds, toInstant } from '../../rules/calendar/instants.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { LogEntry } from '../log-entry.entity.js';
import type { Settled } from '../log.checks.js';

export type Times = Pick<Settled, 'departedAt' | 'arrivedAt' | 'timesKnown' | 'flownOn'>;

const LEAST_SECONDS = 60;
const secondsOf = (totalTenths: number): number => Math.max(LEAST_SECONDS, totalTenths * 360);

/**
 * The times of a flight of which the day is known alone: it counts from the last second in which it may have begun, since earlier
 * would let it count for a flight that in truth came before it.
 */
export function latestTimes(flownOn: LocalDate, totalTenths: number, zone: string): Times {
  const began = endOfDay(flownOn, zone) - 1;
  return {
    ...{ departedAt: toInstant(began), arrivedAt: toInstant(began + secondsOf(totalTenths)) },
    ...{ timesKnown: false, flownOn },
  };
}

/**
 * Times of an entry that had none, after an edit: those given, both or neither; else the latest ones move with the day and the hours.
 * @throws 422 when one of the times is given alone
 */
export function timesAnew(entry: Settled, given: Partial<Settled>, before: LogEntry): Partial<Times> {
  const [off, on] = [given.departedAt !== undefined, given.arrivedAt !== undefined];
  if (off !== on)
    throw new ProblemException('log-does-not-add-up', {
      detail: 'Neither of its times is known. Give both.',
      field: off ? 'arrivedAt' : 'departedAt',
    });
  if (off) return { timesKnown: true };
  const days = daysBetween(before.flownOn, entry.flownOn);
  const departedAt = plusSeconds(before.departedAt, days * 86_400);
  return { departedAt, arrivedAt: plusSeconds(departedAt, secondsOf(entry.totalTenths)) };
}
