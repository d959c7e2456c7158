import type { EntityManager } from 'typeorm';
import { postNotice } from '../../notices/outbox/post-notice.js';
import type { BookingRow } from '../booking.entity.js';

/** Tells whoever has the aircraft next that it will not be there when they depart. */
export async function tellNext(
  em: EntityManager,
  of: { out: BookingRow; next: readonly BookingRow[]; dueBackAt: string; at: string },
): Promise<void> {
  const { out, dueBackAt, at } = of;
  for (const { id, departs, memberId, people } of of.next) {
    const members = new Set([memberId, ...people.map((one) => one.memberId)]);
    const item = {
      ...{ key: id, title: `${out.registration} is late for ${departs}`, link: '/' },
      says: [
        `It is out with ${out.memberName} and expected back ${dueBackAt}. Your booking from ${departs} stands; depart later, or take another aircraft.`,
      ],
    };
    await postNotice(em, {
      ...{ kind: 'aircraft-late', cause: `late:${id}`, at },
      to: [...members].map((one) => ({ memberId: one, urgent: true, items: [item] })),
    });
  }
}
