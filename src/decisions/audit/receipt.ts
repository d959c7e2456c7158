/**
 * A receipt: one link of a club's chain, written down where the service cannot reach it (printed, mailed to the committee).
 * A chain that was cut short or written anew no longer holds it.
 */
import type { Head } from './seal.js';

/** What a receipt says. */
export interface Receipt {
  club: string;
  seq: number;
  link: string;
  sealedAt: string;
}

const FORM =
  /^bellcrank-receipt\/1 ([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}) ([1-9]\d{0,14}) ([0-9a-f]{64}) (\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ)$/;

/** The form of a receipt, for checks of requests. */
export const RECEIPT_PATTERN = FORM;

/** One line of text. */
export const receiptOf = (club: string, { seq, link, sealedAt }: Head): string =>
  `bellcrank-receipt/1 ${club} ${seq} ${link} ${sealedAt}`;

/** Reads the line again; null when it is none of ours. */
export function readReceipt(text: string): Receipt | null {
  const found = FORM.exec(text.trim());
  if (!found) return null;
  const [, club, seq, link, sealedAt] = found as unknown as [string, string, string, string, string];
  return { club, seq: Number(seq), link, sealedAt };
}
