/**
 * Checks what clients were answered about standby against what may have happened. An entry that was acknowledged waits until it is
 * booked, withdrawn or over; an offer is answered once, in its time; and what is kept for one member is booked by nobody else.
 * Times are counts of events, as in history-checker.ts; flights are told in seconds.
 */
import type { Done, State } from './history-checker.js';

/** An entry that was acknowledged. */
export interface Joined {
  entryId: string;
  memberId: string;
  /** null: any that will do. */
  aircraftId: string | null;
  from: number;
  to: number;
}

/** An open offer as its member was shown it. */
export interface Shown {
  offerId: string;
  entryId: string;
  aircraftId: string;
  holds: boolean;
  /** When the client had read it. */
  seenAt: number;
}

/** An answer to an offer, or an entry taken back, that was answered with success. */
export interface Answered {
  kind: 'take' | 'decline' | 'withdraw';
  entryId: string;
  /** null for an entry that is withdrawn. */
  offerId: string | null;
  /** What was booked. */
  bookingId: string | null;
  calledAt: number;
  answeredAt: number;
}

/** What is in the database in the end. */
export interface KeptEntry {
  entryId: string;
  state: string;
  offers: { offerId: string; state: string; bookingId: string | null; aircraftId: string }[];
}

/** A whole history of standby. */
export interface StandbyHistory {
  joined: readonly Joined[];
  shown: readonly Shown[];
  answered: readonly Answered[];
  kept: readonly KeptEntry[];
  /** The event at which the clock had passed the end of an offer; infinite for one whose end did not come. */
  overAt: (offerId: string) => number;
}

/** Every fault found, in words; none for a history that may have happened. */
export function standbyFaultsOf(history: StandbyHistory, done: readonly Done[]): string[] {
  return [
    ...entryFaults(history),
    ...answerFaults(history),
    ...bookedFaults(history, done),
    ...keptForFaults(history, done),
  ];
}

const offersOf = ({ kept }: StandbyHistory) =>
  kept.flatMap(({ entryId, offers }) => offers.map((offer) => ({ ...offer, entryId })));

/** Nobody who waits is lost, and each entry stands as it was answered. */
function entryFaults(history: StandbyHistory): string[] {
  const { joined, answered, kept } = history;
  const faults: string[] = [];
  const known = new Set(joined.map(({ entryId }) => entryId));
  for (const { entryId } of kept)
    if (!known.has(entryId)) faults.push(`entry ${entryId}: there, and never acknowledged`);
  for (const { entryId } of joined) {
    const there = kept.find((one) => one.entryId === entryId);
    if (!there) {
      faults.push(`entry ${entryId}: acknowledged and lost`);
      continue;
    }
    const told = answered.filter((one) => one.entryId === entryId).map(({ kind }) => kind);
    const ended = [told.includes('take') ? ['booked'] : [], told.includes('withdraw') ? ['withdrawn'] : []];
    const may = ended.flat();
    if (may.length > 1) faults.push(`entry ${entryId}: taken and withdrawn`);
    if (!(may.length > 0 ? may : ['waiting', 'over']).includes(there.state))
      faults.push(`entry ${entryId}: stands as ${there.state}, was answered ${told.join(', ') || 'nothing'}`);
    if (there.offers.filter(({ state }) => state === 'accepted').length > 1)
      faults.push(`entry ${entryId}: two of its offers are accepted`);
  }
  return faults;
}

/** An offer is answered once, before its time is over, and stands as it was answered. */
function answerFaults(history: StandbyHistory): string[] {
  const faults: string[] = [];
  const offers = new Map(offersOf(history).map((offer) => [offer.offerId, offer]));
  const first = new Map<string, Answered>();
  for (const one of history.answered) {
    const { offerId, kind, bookingId } = one;
    if (offerId === null) continue;
    const before = first.get(offerId);
    if (before && (before.kind !== kind || before.bookingId !== bookingId))
      faults.push(
        `offer ${offerId}: answered ${before.kind} ${before.bookingId}, and ${kind} ${bookingId} too`,
      );
    first.set(offerId, before ?? one);
    const there = offers.get(offerId);
    const state = kind === 'take' ? 'accepted' : 'declined';
    if (there?.state !== state || there.bookingId !== bookingId)
      faults.push(
        `offer ${offerId}: stands as ${there?.state} ${there?.bookingId}, was answered ${kind} ${bookingId}`,
      );
  }
  for (const [offerId, { kind, bookingId, calledAt }] of first) {
    const all = history.answered.filter((one) => one.offerId === offerId);
    // Taken again later it is told again: one of them was in time.
    if (Math.min(...all.map((one) => one.calledAt), calledAt) > history.overAt(offerId))
      faults.push(`offer ${offerId}: answered ${kind} ${bookingId} after its time`);
  }
  for (const { offerId, state } of offers.values())
    if (state === 'accepted' && !first.has(offerId))
      faults.push(`offer ${offerId}: accepted, and nobody was told`);
  return faults;
}

/** What was taken is the flight that was waited for, in the aircraft that was offered, for who waited. */
function bookedFaults(history: StandbyHistory, done: readonly Done[]): string[] {
  const faults: string[] = [];
  const offers = new Map(offersOf(history).map((offer) => [offer.offerId, offer]));
  for (const { kind, entryId, offerId, bookingId } of history.answered) {
    if (kind !== 'take') continue;
    const entry = history.joined.find((one) => one.entryId === entryId);
    const taken = done
      .filter((one) => one.kind === 'take' && one.bookingId === bookingId)
      .sort((a, b) => a.version - b.version)[0];
    if (!entry || !taken) {
      faults.push(`offer ${offerId}: taken without an entry or a booking that anybody was told of`);
      continue;
    }
    const { aircraftId, people, from, to, status } = taken.state;
    const wanted = entry.aircraftId === null || entry.aircraftId === aircraftId;
    // A taking that was told of a booking changed since says nothing of how it was made.
    if (taken.version > 1) continue;
    const right = people.includes(entry.memberId) && from === entry.from && to === entry.to;
    if (!wanted || !right || status !== 'booked' || aircraftId !== offers.get(offerId!)?.aircraftId)
      faults.push(`offer ${offerId}: taken as ${JSON.stringify(taken.state)}, not as was waited for`);
  }
  return faults;
}

interface KeptFor extends Joined {
  aircraftId: string;
  offerId: string;
  since: number;
  until: number;
}

/** While an offer surely stands, nobody else books its slot and it is offered to nobody else. */
function keptForFaults(history: StandbyHistory, done: readonly Done[]): string[] {
  const faults: string[] = [];
  const kept = keptFor(history, done);
  const byAircraft = new Map<string, KeptFor[]>();
  for (const one of kept) byAircraft.set(one.aircraftId, [...(byAircraft.get(one.aircraftId) ?? []), one]);
  for (const { kind, bookingId, state, calledAt, answeredAt } of done) {
    if (!['book', 'take', 'edit'].includes(kind) || state.status !== 'booked') continue;
    for (const one of byAircraft.get(state.aircraftId) ?? [])
      if (
        !state.people.includes(one.memberId) &&
        shareTime(state, one) &&
        one.since < calledAt &&
        answeredAt < one.until
      )
        faults.push(`offer ${one.offerId}: kept for one member, and ${bookingId} was booked by another`);
  }
  for (const some of byAircraft.values())
    for (const [index, one] of some.entries())
      for (const other of some.slice(index + 1))
        if (shareTime(one, other) && Math.max(one.since, other.since) < Math.min(one.until, other.until))
          faults.push(`offers ${one.offerId} and ${other.offerId}: one slot offered to two at one time`);
  return faults;
}

/** From when to when each offer surely stood: from being seen to the first call of what may have ended it. */
function keptFor({ joined, shown, answered, overAt }: StandbyHistory, done: readonly Done[]): KeptFor[] {
  const entries = new Map(joined.map((one) => [one.entryId, one]));
  const ends = new Map<string, number>();
  for (const { entryId, offerId, calledAt } of answered)
    for (const id of [offerId, entryId])
      if (id !== null) ends.set(id, Math.min(ends.get(id) ?? Infinity, calledAt));
  const first = new Map<string, Shown>();
  for (const one of shown) {
    const before = first.get(one.offerId);
    if (one.holds && (!before || one.seenAt < before.seenAt)) first.set(one.offerId, one);
  }
  return [...first.values()].flatMap(({ offerId, entryId, aircraftId, seenAt: since }) => {
    const entry = entries.get(entryId);
    if (!entry) return [];
    // Whoever books the slot that is kept for them, and does not take the offer, leaves it without meaning.
    const own = done.filter(
      ({ state, answeredAt }) =>
        answeredAt > since &&
        state.aircraftId === aircraftId &&
        state.people.includes(entry.memberId) &&
        shareTime(state, entry),
    );
    const until = Math.min(
      ...[ends.get(offerId) ?? Infinity, ends.get(entryId) ?? Infinity, overAt(offerId)],
      ...own.map(({ calledAt }) => calledAt),
    );
    return since < until ? [{ ...entry, offerId, aircraftId, since, until }] : [];
  });
}

const shareTime = (a: Pick<State, 'from' | 'to'>, b: Pick<State, 'from' | 'to'>): boolean =>
  a.from < b.to && b.from < a.to;
