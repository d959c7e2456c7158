import { ANSWER_WORD } from '../rules/explain/words.js';
import { COVERED } from '../rules/explain/index.js';
import { hiddenAmong } from '../decisions/privacy.js';
import { instant } from '../decisions/gather/sql.js';
import type { EntityManager } from 'typeorm';
import { postNotice, type Recipient } from '../notices/outbox/post-notice.js';
import { sha256 } from '../platform/sha256.js';
import { toSeconds, type Answer, type Instant } from '../rules/index.js';
import { causeWords } from './cause-words.js';
import type { Because } from './gather-standing.js';

/** An answer that became another one. */
export interface ToldChange {
  bookingId: string;
  before: Answer;
  after: Answer;
  because: readonly Because[];
  causedBy: readonly string[];
}

interface Flight {
  bookingId: string;
  registration: string;
  departs: Instant;
  arrives: Instant;
  people: { id: string; name: string }[];
}

/** From the best answer to the worst. */
const RANK: readonly Answer[] = ['yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no'];
/** A flight that leaves so soon is told of in quiet hours too: common practice, no source. */
const SOON_S = 24 * 3600;

/**
 * Tells everybody aboard of flights that are answered otherwise: one notice each for all that one event did, however
 * many bookings it touched. Of somebody else's record nobody is told more than that it is short.
 */
export async function tellOfChanges(
  em: EntityManager,
  changes: readonly ToldChange[],
  now: Instant,
): Promise<void> {
  if (changes.length === 0) return;
  const flights: Flight[] = await em.query(
    `SELECT b.id AS "bookingId", a.registration, ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives,
        (SELECT jsonb_agg(jsonb_build_object('id', x.id, 'name', x.name) ORDER BY x.id) FROM members x
          WHERE x.club_id = b.club_id AND (x.id = b.member_id OR EXISTS (SELECT 1 FROM booking_people p
            WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = x.id))) AS people
       FROM bookings b JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
      WHERE b.club_id = bellcrank_club() AND b.id = ANY ($1::uuid[]) ORDER BY lower(b.during), b.id`,
    [changes.map(({ bookingId }) => bookingId)],
  );
  const byBooking = new Map(changes.map((change) => [change.bookingId, change]));
  const to = new Map<string, Recipient & { items: Recipient['items'][number][] }>();
  for (const flight of flights) {
    const change = byBooking.get(flight.bookingId)!;
    const worse = RANK.indexOf(change.after) > RANK.indexOf(change.before);
    const soon = toSeconds(flight.departs) - toSeconds(now) < SOON_S;
    for (const { id: memberId } of flight.people) {
      const known = to.get(memberId) ?? { memberId, items: [], urgent: false };
      known.items.push(itemFor(memberId, flight, change));
      to.set(memberId, { ...known, urgent: known.urgent || (worse && soon) });
    }
  }
  const causes = [...new Set(changes.flatMap(({ causedBy }) => causedBy))].sort();
  const cause = `facts:${causes.length === 0 ? 'time' : sha256(causes.join('\n'))}`;
  await postNotice(em, { kind: 'flight-answer', cause, at: now, to: [...to.values()] });
}

function itemFor(memberId: string, flight: Flight, change: ToldChange): Recipient['items'][number] {
  // Mail lies about: even an officer reads of somebody else's papers on the page only.
  const viewer = { memberId, clubId: '', accountId: '', roles: [] };
  const nameOf = (id: string): string | undefined => flight.people.find((one) => one.id === id)?.name;
  const causes = causeWords(change.causedBy);
  return {
    key: flight.bookingId,
    title: `${flight.registration}, ${flight.departs} to ${flight.arrives}`,
    says: [
      `It was answered “${ANSWER_WORD[change.before]}”, and is answered “${ANSWER_WORD[change.after]}” now.`,
      ...change.because.map(({ title, says, people }) => {
        const hidden = hiddenAmong(viewer, people, { nameOf, taughtIds: [] });
        return `${title}: ${hidden === null ? says : COVERED.short(hidden)}`;
      }),
      ...(causes.length === 0 ? [] : [`It follows a change of ${causes.join(', ')}.`]),
    ],
    link: '/',
    before: change.before,
    after: change.after,
  };
}
