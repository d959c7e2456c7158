import type { EntityManager } from 'typeorm';
import { chargeFlight } from '../../charges/flights/charge-flight.js';
import { postEntry } from '../../charges/ledger/post-entry.js';
import type { TenantDb } from '../../platform/database/tenant.js';
import { toInstant, toSeconds, type Instant } from '../../rules/index.js';
import { bookWish } from '../book.js';
import { DEMO_CLUB_ID } from '../ids.js';
import type { Person } from '../people/person.js';
import type { When } from '../when.js';
import type { FlownFlight } from './flown.js';

/** Whoever is not in arrears by the story has paid what was charged up to so many days ago. */
const PAID_UP_TO_DAYS = 18;

const before = (instant: Instant, hours: number): Instant => toInstant(toSeconds(instant) - hours * 3600);

/** Books the flights that are over as they had been booked, charges each as its return does, and enters what came in since. */
export function keepAccounts(
  db: TenantDb,
  flights: readonly FlownFlight[],
  of: { people: readonly Person[]; when: When },
): Promise<void> {
  return db.run(
    DEMO_CLUB_ID,
    async (em) => {
      for (const flight of flights) await flownAndCharged(em, flight);
      await paid(em, of.people, of.when);
    },
    { retry: false, statementTimeoutMs: 60_000 },
  );
}

/** A flight that today's facts would not allow was never booked. */
async function flownAndCharged(em: EntityManager, { wish, flown, misread }: FlownFlight): Promise<void> {
  if (!(await bookWish(em, wish, before(flown.departedAt, 20)))) return;
  await em.query("UPDATE bookings SET status = 'returned' WHERE club_id = $1 AND id = $2", [
    ...[DEMO_CLUB_ID, wish.id],
  ]);
  const by = { clubId: DEMO_CLUB_ID, memberId: flown.pilotId, now: flown.arrivedAt };
  if (misread)
    await chargeFlight(
      em,
      { ...flown, hobbsTenths: flown.hobbsTenths! + 10, tachTenths: flown.tachTenths! + 10 },
      by,
    );
  await chargeFlight(em, flown, by);
}

async function paid(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const officers = people.filter(({ story }) => (story.roles?.length ?? 0) > 0);
  const rows: { memberId: string; owed: number }[] = await em.query(
    `SELECT member_id AS "memberId", sum(amount_minor)::float8 AS owed FROM ledger_entries
      WHERE club_id = $1 AND posted_on <= $2 GROUP BY member_id HAVING sum(amount_minor) > 0 ORDER BY 1`,
    [DEMO_CLUB_ID, when.daysAgo(PAID_UP_TO_DAYS)],
  );
  const day = when.daysAgo(PAID_UP_TO_DAYS - 5);
  for (const [index, { memberId, owed }] of rows.entries()) {
    const person = people.find(({ id }) => id === memberId)!;
    if (person.story.standing) continue;
    const treasurer = officers.find(
      ({ id, story }) => id !== memberId && story.roles?.includes('administrator'),
    );
    const recordedBy = (treasurer ?? officers.find(({ id }) => id !== memberId))!.id;
    await postEntry(em, {
      ...{ clubId: DEMO_CLUB_ID, memberId, kind: 'receipt', postedOn: day, ofDay: day, recordedBy },
      ...{ amountMinor: -owed, currency: 'USD', minorPerUnit: 100, words: `Receipt ${index + 101}` },
    });
  }
}
