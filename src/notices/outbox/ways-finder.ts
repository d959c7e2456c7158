import { Injectable, Logger } from '@nestjs/common';
import { StandingService } from '../../standing/standing.service.js';
import { asMember } from '../as-member.js';
import type { NoticeItem } from './items.js';

/** Answers that need no way. */
const FINE = ['yes', 'yes-with-conditions'];
/** Flights of one notice that ways are looked for; the page has them for the others. */
const MOST_FLIGHTS = 10;

/** What was found for an item as it stood then. */
export type FoundWays = Pick<NoticeItem, 'after' | 'ways' | 'says'>;

/** Finds what would make flights that are told of a yes, as the person told may read it. */
@Injectable()
export class WaysFinder {
  private readonly logger = new Logger(WaysFinder.name);

  constructor(private readonly standing: StandingService) {}

  /** Ways by the key of the item, which is the booking; where there is none, why. */
  async of(
    who: { clubId: string; memberId: string },
    kind: string,
    items: readonly NoticeItem[],
  ): Promise<Map<string, FoundWays>> {
    const found = new Map<string, FoundWays>();
    if (kind !== 'flight-answer') return found;
    const wanted = items.filter(({ after }) => after !== undefined && !FINE.includes(after));
    for (const { key, says, after } of wanted.slice(0, MOST_FLIGHTS)) {
      try {
        const ways = await this.standing.waysOf(asMember(who), key);
        // That there is no way is no way.
        const none = ways.none === null ? [] : [ways.none.says];
        found.set(key, { after, ways: waysInWords(ways), says: [...says, ...none] });
      } catch (error) {
        // The flight has begun, or was cancelled, or cannot be read any more: the page says so.
        this.logger.debug(`No ways for a flight that is told of (${(error as Error).message}).`);
      }
    }
    return found;
  }
}

type Ways = Awaited<ReturnType<StandingService['waysOf']>>;

/** At most three ways, a sentence each, and one for a later day. */
function waysInWords({ plans, later, currency }: Ways): string[] {
  const lines = plans.map(({ steps, cost }) => {
    const acts = steps.map(({ title }) => title).join('; ');
    return cost.money > 0 ? `${acts} (about ${Math.round(cost.money)} ${currency})` : acts;
  });
  if (later !== null) lines.push(later.says);
  return lines;
}
