import type { EntityManager } from 'typeorm';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { gatherSheets } from '../../decisions/gather/sheets.js';
import { addDays, localDateOf, toSeconds, type FactSheet, type Policy } from '../../rules/index.js';
import { trialFlights, type KindOfFlight } from './kinds-of-flight.js';

/** A flight of one kind with all that is on record, or why there is none. */
export type TrialSheet = { kind: KindOfFlight; departs: string | null } & (
  { sheet: FactSheet; policy: Policy } | { because: string }
);

/** Facts of tomorrow's flights of each kind, as they stand inside the caller's transaction. */
export async function trialSheets(
  em: EntityManager,
  of: { aircraftId: string; memberId: string; now: string },
): Promise<TrialSheet[]> {
  const { aircraftId, memberId, now } = of;
  const club = await gatherClub(em, now);
  const [aircraft] = await gatherAircraft(em, [aircraftId], now, null);
  const home = club.airfields.find(({ id }) => id === aircraft!.homeAirfieldId)!;
  const tomorrow = addDays(localDateOf(toSeconds(now), club.zone), 1);
  const found: TrialSheet[] = [];
  for (const trial of trialFlights(tomorrow, home)) {
    if ('because' in trial) {
      found.push({ kind: trial.kind, departs: null, because: trial.because });
      continue;
    }
    const { request } = trial;
    const { sheets, policy } = await gatherSheets(em, {
      ...{ request, memberId, aircraftIds: [aircraftId], knownAt: now },
    });
    found.push({ kind: trial.kind, departs: request.departs, sheet: sheets[0]!, policy });
  }
  return found;
}
