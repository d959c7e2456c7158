/** What an aircraft can be flown for: its own rules asked of a flight of each kind, whoever flies. */
import type { EntityManager } from 'typeorm';
import { judge } from '../../rules/index.js';
import { KIND_TITLES, type KindOfFlight } from './kinds-of-flight.js';
import { trialSheets, type TrialSheet } from './trial-sheets.js';

export const CAPABLE = ['yes', 'no', 'unknown'] as const;

/** Whether a flight of the kind may be made with the aircraft as it stands; `says` tells what keeps it from a yes. */
export interface Capability {
  verdict: (typeof CAPABLE)[number];
  says: string[];
}

/** A kind of flight before and after a change; nulls where no flight of the kind can be tried. */
export interface CapabilityChange {
  kind: KindOfFlight;
  title: string;
  before: Capability | null;
  after: Capability | null;
}

function capabilityOf(trial: TrialSheet): Capability | null {
  if ('because' in trial) return null;
  const findings = judge(trial.sheet, trial.policy).findings.filter(({ binds }) => binds === 'aircraft');
  const short = findings.filter(({ status, weight }) => status === 'short' && weight !== 'advice');
  const open = findings.filter(
    ({ status, weight }) => (status === 'unknown' || status === 'error') && weight !== 'advice',
  );
  const says = [...short, ...open].map(({ title, says: what }) => `${title}: ${what}`);
  return { verdict: short.length > 0 ? 'no' : open.length > 0 ? 'unknown' : 'yes', says };
}

/** Runs a change and says what each kind of flight was before it, and is after it. All in the caller's transaction. */
export async function withCapabilities<T>(
  em: EntityManager,
  of: { aircraftId: string; memberId: string; now: string },
  change: () => Promise<T>,
): Promise<{ result: T; kinds: CapabilityChange[] }> {
  const before = await trialSheets(em, of);
  const result = await change();
  const after = await trialSheets(em, of);
  const kinds = before.map((one, index) => ({
    ...{ kind: one.kind, title: KIND_TITLES[one.kind] },
    ...{ before: capabilityOf(one), after: capabilityOf(after[index]!) },
  }));
  return { result, kinds };
}
