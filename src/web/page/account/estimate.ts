import { signal } from '@preact/signals';
import { ApiProblem, call } from '../api/client.js';
import { moneySays } from './money.js';
import type { Estimates } from './types.js';

/** About what the flight that was asked for would cost, by aircraft; null while nobody knows. */
export const estimates = signal<Estimates | null>(null);

/** Reads them for a flight. Without them the answers stand as they are. */
export async function estimate(of: {
  departs: string;
  arrives: string;
  plannedHours?: number;
  instructorId?: string;
}): Promise<void> {
  estimates.value = null;
  const query = new URLSearchParams({ departs: of.departs, arrives: of.arrives });
  if (of.plannedHours !== undefined) query.set('hours', String(of.plannedHours));
  if (of.instructorId) query.set('instructorId', of.instructorId);
  try {
    estimates.value = await call<Estimates>('GET', `/charges/estimates?${query.toString()}`);
  } catch (error) {
    if (!(error instanceof ApiProblem)) throw error;
  }
}

/** 'about $290'; null where the aircraft has no rate. */
export function estimateSays(aircraftId: string): string | null {
  const found = estimates.value;
  const one = found?.estimates.find((each) => each.aircraftId === aircraftId);
  if (!found?.currency || !found.minorPerUnit || one?.amountMinor === null || one === undefined) return null;
  // Nobody knows the hours to the minute: a whole number says so.
  const whole = Math.round(one.amountMinor / found.minorPerUnit) * found.minorPerUnit;
  const says = moneySays(whole, { currency: found.currency, minorPerUnit: found.minorPerUnit });
  return `about ${says.replace(/[.,]0+(?=\D*$)/, '')}`;
}
