import type { EntityManager } from 'typeorm';
import { insertBooking } from '../bookings/bookings.sql.js';
import { storeDecisions } from '../decisions/decision-store.js';
import { gatherSheets } from '../decisions/gather/sheets.js';
import type { TenantDb } from '../platform/database/tenant.js';
import { judge, type Instant } from '../rules/index.js';
import { DEMO_CLUB_ID, demoId } from './ids.js';
import type { FlightWish } from './rows.js';

/** How the wishes fared. */
export interface Booked {
  booked: number;
  refused: number;
}

/**
 * Books the wishes that the engine allows, in order of departure, each judged with the bookings before it, and stores the
 * decisions they rest on. Wishes with any other answer are dropped, as a member would drop them.
 */
export function bookWishes(db: TenantDb, wishes: readonly FlightWish[], knownAt: Instant): Promise<Booked> {
  return db.run(
    DEMO_CLUB_ID,
    async (em) => {
      let booked = 0;
      for (const wish of wishes) if (await bookWish(em, wish, knownAt)) booked += 1;
      return { booked, refused: wishes.length - booked };
    },
    { retry: false, statementTimeoutMs: 60_000 },
  );
}

/** Books a wish where the engine allows it. */
export async function bookWish(em: EntityManager, wish: FlightWish, knownAt: Instant): Promise<boolean> {
  const { ask: request, memberId, aircraftId } = wish;
  const { sheets, policy } = await gatherSheets(em, {
    request,
    memberId,
    aircraftIds: [aircraftId],
    knownAt,
  });
  const sheet = sheets[0]!;
  const decision = judge(sheet, policy);
  if (decision.answer !== 'yes' && decision.answer !== 'yes-with-conditions') return false;
  const decisionId = demoId('decision', wish.id);
  await storeDecisions(em, [{ id: decisionId, sheet, decision }], policy, memberId);
  const { flight } = sheet;
  await insertBooking(em, {
    id: wish.id,
    kind: 'flight',
    aircraftId,
    memberId,
    departs: flight.departs,
    arrives: flight.arrives,
    expectedTenths: flight.plannedTenths,
    request,
    note: '',
    decisionId,
    people: [
      { memberId, role: 'pilot' },
      ...(flight.instructorId ? [{ memberId: flight.instructorId, role: 'instructor' as const }] : []),
    ],
  });
  return true;
}
