import type { EntityManager } from 'typeorm';
import { postNotice } from '../../notices/outbox/post-notice.js';
import { toSeconds } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';

/** A flight that leaves so soon is told of in quiet hours too: common practice, no source. */
const SOON_S = 24 * 3600;

/** Tells a member that a booking is offered to them. */
export async function tellOffered(
  em: EntityManager,
  { id, registration, departs, arrives, memberName }: BookingRow,
  memberId: string,
  now: string,
): Promise<void> {
  const item = {
    ...{ key: id, title: `${registration}, ${departs} to ${arrives}`, link: '/' },
    says: [
      `${memberName} offers you the booking. Take it, and the flight is judged for you; until then it stays theirs.`,
    ],
  };
  await postNotice(em, {
    ...{ kind: 'hand-over', cause: `hand-over:${id}`, at: now },
    to: [{ memberId, urgent: toSeconds(departs) - toSeconds(now) < SOON_S, items: [item] }],
  });
}
