/** What the clients of a race heard of standby, written down for the checker. */
import { toSeconds } from '../../../src/rules/index.js';
import type { Answered, Joined, KeptEntry, Shown, StandbyHistory } from './standby-checker.js';

/** An entry as the service shows it. */
export interface EntryShown {
  id: string;
  state: string;
  rowVersion: number;
  offer: { id: string; state: string; aircraftId: string; holds: boolean; expiresAt: string } | null;
}

/** Entries are forgotten from the front: who waits for long is looked at less often. */
const LOOKED_AT = 300;

export class StandbyNotes {
  private readonly joined: Joined[] = [];
  private readonly shown: Shown[] = [];
  private readonly answered: Answered[] = [];
  private readonly waiting: Joined[] = [];
  /** Entries that something was offered for, as their members are told by mail. */
  private told: string[] = [];
  /** Seconds at which offers end that have not ended yet, and the events at which the others had. */
  private readonly ends = new Map<string, number>();
  private readonly over = new Map<string, number>();

  join(entry: Joined): void {
    this.joined.push(entry);
    this.waiting.push(entry);
  }

  /** Tells of every entry that something is offered for now. */
  tell(entryIds: string[]): void {
    this.told = entryIds;
  }

  /** Somebody who waits, as far as is known: mostly somebody who was told of an offer. */
  someWaiting(draw: (below: number) => number): Joined | undefined {
    const told = this.told[draw(Math.max(1, this.told.length))];
    const offered = draw(4) > 0 ? this.waiting.find(({ entryId }) => entryId === told) : undefined;
    if (offered) return offered;
    const { length } = this.waiting;
    return length === 0 ? undefined : this.waiting[Math.max(0, length - 1 - draw(LOOKED_AT))];
  }

  /** An entry as it was just shown. */
  note({ id, state, offer }: EntryShown, seenAt: number, nowS: number): void {
    if (state !== 'waiting') {
      const at = this.waiting.findIndex(({ entryId }) => entryId === id);
      if (at >= 0) this.waiting.splice(at, 1);
    }
    if (offer?.state !== 'open') return;
    const { id: offerId, aircraftId, holds, expiresAt } = offer;
    this.shown.push({ offerId, entryId: id, aircraftId, holds, seenAt });
    if (!this.over.has(offerId)) this.ends.set(offerId, toSeconds(expiresAt));
    this.clockAt(nowS, seenAt);
  }

  answer(one: Answered): void {
    this.answered.push(one);
  }

  /** The clock stands at these seconds from this event on. */
  clockAt(nowS: number, event: number): void {
    for (const [offerId, endS] of this.ends)
      if (endS <= nowS) {
        this.over.set(offerId, event);
        this.ends.delete(offerId);
      }
  }

  history(kept: readonly KeptEntry[]): StandbyHistory {
    const { joined, shown, answered, over } = this;
    return { joined, shown, answered, kept, overAt: (offerId) => over.get(offerId) ?? Infinity };
  }
}
