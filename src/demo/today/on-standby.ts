import type { EntityManager } from 'typeorm';
import { insertStandby } from '../../bookings/standby/standby.sql.js';
import { addDays } from '../../rules/index.js';
import { aircraftBy } from '../fleet/aircraft.js';
import { demoId } from '../ids.js';
import type { Person } from '../people/person.js';
import { at, clock, type When } from '../when.js';

/** The aircraft that is waited for, and when. */
export const WAITED_FOR = { who: 'luis', aircraft: 'almanac', daysAhead: 3, from: 14, to: 16 } as const;

/** Somebody waits for time that is free: the service offers it as soon as it looks, as it offers all that comes free. */
export async function onStandby(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const { who, aircraft, daysAhead, from, to } = WAITED_FOR;
  const memberId = people.find(({ story }) => story.key === who)!.id;
  const day = addDays(when.today, daysAhead);
  const [departs, arrives] = [at(day, clock(from)), at(day, clock(to))];
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
    ...{
      id: demoId('standby', who),
      memberId,
      aircraftId: aircraftBy(aircraft).id,
      departs,
      arrives,
      request,
    },
    ...{ note: 'Any two hours after lunch', now: when.asOf },
  });
}

/** The time stays free for the offer. */
export function waitedForFree(
  people: readonly Person[],
  when: When,
): { ids: string[]; from: string; to: string } {
  const { who, aircraft, daysAhead, from, to } = WAITED_FOR;
  const day = addDays(when.today, daysAhead);
  const person = people.find(({ story }) => story.key === who)!;
  return { ids: [aircraftBy(aircraft).id, person.id], from: at(day, clock(from)), to: at(day, clock(to)) };
}
