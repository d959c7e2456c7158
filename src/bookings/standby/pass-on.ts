/** Passes slots that came free on to who waits for them, in the order of the club, and only to whom the engine says yes. */
import { Logger } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { storeDecisions, type Decided } from '../../decisions/decision-store.js';
import { gatherSheets } from '../../decisions/gather/sheets.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { flagOn } from '../../decisions/policy-flag.js';
import { postNotice } from '../../notices/outbox/post-notice.js';
import type { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { judge, plusSeconds, toSeconds, type Instant, type Policy } from '../../rules/index.js';
import { bestFirst, sharingNumbers } from '../any-aircraft/best-first.js';
import { conflictsOf, lockAircraft } from '../bookings.sql.js';
import { expireOffers } from './kept-slots.sql.js';
import { lockStandby } from './standby.sql.js';
import {
  clearUp,
  isFree,
  lockEntries,
  readWakes,
  takeWakes,
  waitingWithSlots,
  wakeNext,
  type Waiting,
} from './waiting.sql.js';

/** Entries looked at in one transaction, and how often somebody looks while anybody waits. */
const ENTRIES_AT_ONCE = 200;
const LOOK_EVERY_SECONDS = 600;

/** The club's numbers for standby on the day. */
interface StandbyPolicy {
  policy: Policy;
  offerSeconds: number;
  noticeSeconds: number;
  holds: boolean;
  fewestHoursFirst: boolean;
}

/** What was done in a round. */
export interface PassedOn {
  expired: number;
  offered: number;
}

/**
 * One round for a club: what is over is ended, then each slot is offered in a transaction of its own, so that nobody who books waits
 * for all that is judged. Each step is done under the club's lock and looks anew: done twice, or by two replicas at once, it comes
 * out the same. What called for the round stays on record until all of it is done, so nothing is lost when it breaks off.
 */
export async function passOn(
  db: TenantDb,
  clubId: string,
  { now, note }: { now: Instant; note: (clubId: string) => void },
): Promise<PassedOn> {
  const step = <T>(work: (em: EntityManager) => Promise<T>): Promise<T> =>
    db.run(
      clubId,
      async (em) => {
        await em.query(`SELECT pg_advisory_xact_lock(hashtextextended('standby of ' || $1::text, 0))`, [
          clubId,
        ]);
        return work(em);
      },
      { statementTimeoutMs: 60_000 },
    );
  const { wakes, expired, numbers, waiting } = await step((em) => beginRound(em, now));
  const gone: Slot[] = [];
  for (const entry of waiting) {
    const slot = await step((em) => offerTo(em, { entry, now, numbers, gone }));
    if (slot) gone.push(slot);
  }
  if (gone.length > 0) note(clubId);
  await step(async (em) => {
    await takeWakes(em, wakes);
    await wakeNext(em, { now, everySeconds: LOOK_EVERY_SECONDS });
  });
  return { expired, offered: gone.length };
}

/** Ends what is over, and sees who waits for what is free. */
async function beginRound(em: EntityManager, now: Instant) {
  const wakes = await readWakes(em);
  await lockEntries(em, now);
  await clearUp(em, now);
  const expired = await expireOffers(em, { now, aircraftId: null, exceptMemberId: null });
  const numbers = await standbyPolicy(em, now);
  const waiting = await waitingWithSlots(em, {
    ...{ now, noLaterThan: plusSeconds(now, numbers.noticeSeconds) },
    ...{ fewestHoursFirst: numbers.fewestHoursFirst, limit: ENTRIES_AT_ONCE },
  });
  return { wakes, expired, numbers, waiting };
}

const DAY_S = 24 * 3600;

interface Slot {
  aircraftId: string;
  departs: string;
  arrives: string;
}

const overlap = (a: Slot, b: Slot): boolean =>
  a.aircraftId === b.aircraftId && a.departs < b.arrives && b.departs < a.arrives;

/** Offers the free aircraft that fits best among those the engine says yes to. @returns the slot, or null where there is none */
async function offerTo(
  em: EntityManager,
  of: { entry: Waiting; now: Instant; numbers: StandbyPolicy; gone: readonly Slot[] },
): Promise<Slot | null> {
  const { entry, now, numbers } = of;
  const { memberId, request, departs, arrives } = entry;
  const free = entry.aircraftIds.filter(
    (aircraftId) => !of.gone.some((slot) => overlap(slot, { aircraftId, departs, arrives })),
  );
  if (free.length === 0) return null;
  const yes = await judgedYes(em, { entry, now, free });
  // Judged without a lock; those that may be offered are locked in the order in which all lock them.
  for (const id of yes.map(({ sheet }) => sheet.aircraft.id).sort()) await lockAircraft(em, id);
  await lockStandby(em, entry.id);
  for (const one of yes) {
    const { id: aircraftId } = one.sheet.aircraft;
    const people = [memberId, request.instructorId, request.secondPilotId].filter((id) => id !== undefined);
    const [taken] = await conflictsOf(em, {
      ...{ aircraftId, memberIds: people, departs, arrives, exceptId: null },
    });
    if (taken || !(await isFree(em, { entryId: entry.id, aircraftId, departs, arrives }))) continue;
    const wanted = plusSeconds(now, numbers.offerSeconds);
    const expiresAt = wanted < departs ? wanted : departs;
    await storeDecisions(em, [one], numbers.policy, memberId);
    await makeOffer(em, { entry, aircraftId, decisionId: one.id, holds: numbers.holds, now, expiresAt });
    return { aircraftId, departs, arrives };
  }
  return null;
}

/** The free aircraft in which the member may fly as asked, best fit first. A request that can no longer be read has none. */
async function judgedYes(
  em: EntityManager,
  of: { entry: Waiting; now: Instant; free: readonly string[] },
): Promise<Decided[]> {
  const { entry, now } = of;
  try {
    const { sheets, policy } = await gatherSheets(em, {
      ...{ request: entry.request, memberId: entry.memberId, aircraftIds: null, knownAt: now },
    });
    const judged = sheets
      .filter(({ aircraft }) => of.free.includes(aircraft.id))
      .map((sheet): Decided => ({ id: newId(), sheet, decision: judge(sheet, policy) }));
    return bestFirst(judged, { sheets, policy, now })
      .filter(({ bookable }) => bookable)
      .map(({ aircraftId }) => judged.find(({ sheet }) => sheet.aircraft.id === aircraftId)!);
  } catch (error) {
    if (!(error instanceof ProblemException)) throw error;
    new Logger('Standby').warn(`The flight of entry ${entry.id} can no longer be judged (${error.message}).`);
    return [];
  }
}

/** The one place where an offer comes about, and its member is told. */
async function makeOffer(
  em: EntityManager,
  of: {
    entry: Waiting;
    aircraftId: string;
    decisionId: string;
    holds: boolean;
    now: Instant;
    expiresAt: Instant;
  },
): Promise<void> {
  const { entry, aircraftId, decisionId, holds, now, expiresAt } = of;
  await em.query(
    `INSERT INTO standby_offers (club_id, id, entry_id, member_id, aircraft_id, during, holds, decision_id, made_at, expires_at)
     VALUES (bellcrank_club(), $1, $2, $3, $4, tstzrange($5, $6, '[)'), $7, $8, $9, $10)`,
    [
      ...[newId(), entry.id, entry.memberId, aircraftId, entry.departs, entry.arrives],
      ...[holds, decisionId, now, expiresAt],
    ],
  );
  const [aircraft]: { registration: string }[] = await em.query(
    'SELECT registration FROM aircraft WHERE club_id = bellcrank_club() AND id = $1',
    [aircraftId],
  );
  await postNotice(em, {
    ...{ kind: 'standby-offer', cause: `standby:${entry.id}`, at: now },
    to: [
      {
        memberId: entry.memberId,
        // It is gone before the day's mail.
        urgent: toSeconds(expiresAt) - toSeconds(now) < DAY_S,
        items: [
          {
            key: entry.id,
            title: `${aircraft!.registration}, ${entry.departs} to ${entry.arrives}`,
            says: [
              `It came free and is offered to you until ${expiresAt}. Take it, and the flight is judged again and booked.`,
              holds
                ? 'Until then it is kept for you.'
                : 'Nobody keeps it for you: whoever books first has it.',
            ],
            link: '/standby',
          },
        ],
      },
    ],
  });
}

async function standbyPolicy(em: EntityManager, now: Instant): Promise<StandbyPolicy> {
  const { policy, jurisdiction, zone } = await gatherClub(em, now);
  const numbers = sharingNumbers({ policy, jurisdiction, zone, now });
  return {
    policy,
    offerSeconds: Math.round(numbers.number('club.standby.offer-hours') * 3600),
    noticeSeconds: Math.round(numbers.number('club.standby.least-notice-hours') * 3600),
    holds: flagOn(policy, 'club.standby.hold-slot', { knownAt: now, zone }),
    fewestHoursFirst: flagOn(policy, 'club.standby.fewest-hours-first', { knownAt: now, zone }),
  };
}
