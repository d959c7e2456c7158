import type { EntityManager } from 'typeorm';
import { insertStandby } from '../../bookings/standby/standby.sql.js';
import { addDays } from '../../rules/index.js';
import { aircraftBy } from '../fleet/aircraft.js';
import { demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import { at, clock, type When } from '../when.js';

/** The aircraft that is waited for, and when. */
const WAITED_FOR = { who: 'luis', aircraft: 'almanac', daysAhead: 3, from: 14, to: 16 } as const;

/** The slot that is waited for, and by whom. */
function waited(people: readonly Person[], when: When) {
  const { who, aircraft, daysAhead, from, to } = WAITED_FOR;
  const day = addDays(when.today, daysAhead);
  return {
    ...{ memberId: byKey(people, who).id, aircraftId: aircraftBy(aircraft).id },
    ...{ departs: at(day, clock(from)), arrives: at(day, clock(to)) },
  };
}

/** Somebody waits for time that is free: the service offers it as soon as it looks, as it offers all that comes free. */
export async function onStandby(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const { memberId, aircraftId, departs, arrives } = waited(people, when);
  const request = {
    ...{ departs, arrives, purpose: 'solo', personsOnBoard: 1, plannedHours: 1.5, flightRules: 'VFR' },
    ...{
      usesTransponder: true,
      usesVor: false,
      airspace: ['E', 'G'],
      maxAltitudeFtMsl: 8500,
      maxSpeedKias: 140,
    },
  };
  await insertStandby(em, {
    ...{ id: demoId('standby', WAITED_FOR.who), memberId, aircraftId, departs, arrives, request },
    ...{ note: 'Any two hours after lunch', now: when.asOf },
  });
}

/** The time stays free for the offer. */
export function waitedForFree(
  people: readonly Person[],
  when: When,
): { ids: string[]; from: string; to: string } {
  const { memberId, aircraftId, departs, arrives } = waited(people, when);
  return { ids: [aircraftId, memberId], from: departs, to: arrives };
}
