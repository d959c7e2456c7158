import type { EntityManager } from 'typeorm';
import { findRecord } from '../../platform/database/records.js';
import { newId } from '../../platform/ids.js';
import { LedgerEntry } from './ledger-entry.entity.js';

/** What a ledger entry is called. */
export const ENTRIES = { entity: LedgerEntry, noun: 'entry' };

/** What every entry says. */
export type NewEntry = Pick<
  LedgerEntry,
  | 'clubId'
  | 'memberId'
  | 'kind'
  | 'postedOn'
  | 'ofDay'
  | 'amountMinor'
  | 'currency'
  | 'minorPerUnit'
  | 'recordedBy'
> &
  Partial<LedgerEntry>;

/** Writes an entry. There is no way to change one. */
export async function postEntry(em: EntityManager, entry: NewEntry): Promise<LedgerEntry> {
  const id = newId();
  const { lines = [], flown = null, ...rest } = entry;
  await em.insert(LedgerEntry, { dueFrom: entry.postedOn, words: '', ...rest, id, flown, lines } as never);
  return findRecord(em, ENTRIES, { clubId: entry.clubId, id });
}

/** Takes an entry off again: the same amount the other way, on the same account. */
export function reverseEntry(
  em: EntityManager,
  entry: LedgerEntry,
  by: { postedOn: string; words: string; recordedBy: string },
): Promise<LedgerEntry> {
  const { clubId, memberId, ofDay, amountMinor, currency, minorPerUnit, id } = entry;
  return postEntry(em, {
    ...{ clubId, memberId, ofDay, currency, minorPerUnit, ...by },
    ...{ kind: 'reversal', amountMinor: 0 - amountMinor, reverses: id },
  });
}

/** The charge of a flight that stands, under lock; null while it is not charged. */
export async function standingCharge(
  em: EntityManager,
  clubId: string,
  bookingId: string,
): Promise<{ standing: LedgerEntry | null; first: LedgerEntry | null; count: number }> {
  const charges = await em.find(LedgerEntry, { where: { clubId, bookingId }, order: { chargeNo: 'ASC' } });
  const last = charges.at(-1);
  const reversed = last && (await em.existsBy(LedgerEntry, { clubId, reverses: last.id }));
  return {
    standing: last && !reversed ? last : null,
    first: charges[0] ?? null,
    count: charges.length,
  };
}
