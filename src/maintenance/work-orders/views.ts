import { type EntityManager, In } from 'typeorm';
import { instant } from '../../decisions/gather/sql.js';
import { show } from '../../platform/http/views.js';
import { LineView, type WorkOrderView } from './work-order.dto.js';
import type { WorkOrder } from './work-order.entity.js';
import { WorkLine } from './work-line.entity.js';

interface Span {
  id: string;
  registration: string;
  from: string | null;
  to: string | null;
}

/** Visits with their lines and their time in the calendar, with two statements for all of them. */
export async function workOrderViews(
  em: EntityManager,
  clubId: string,
  orders: readonly WorkOrder[],
): Promise<WorkOrderView[]> {
  const ids = orders.map(({ id }) => id);
  if (ids.length === 0) return [];
  const lines = await em.find(WorkLine, { where: { clubId, orderId: In(ids) }, order: { id: 'ASC' } });
  const spans: Span[] = await em.query(
    `SELECT w.id, a.registration, ${instant('lower(b.during)')} AS "from", ${instant('upper(b.during)')} AS "to"
       FROM work_orders w JOIN aircraft a ON a.club_id = w.club_id AND a.id = w.aircraft_id
       LEFT JOIN bookings b ON b.club_id = w.club_id AND b.id = w.booking_id AND b.status <> 'cancelled'
      WHERE w.club_id = bellcrank_club() AND w.id = ANY ($1::uuid[])`,
    [ids],
  );
  return orders.map((order) => {
    const { registration, from, to } = spans.find(({ id }) => id === order.id)!;
    const { id, aircraftId, title, shop, state, begunAt, cancelledBecause } = order;
    const { signedAt, signedOn, statement, signedBy, equipmentChangeId, weighingId } = order;
    const { checkFlightBecause, checkFlownAt, checkFlownBy, checkEntry, rowVersion, recordedAt } = order;
    return {
      ...{ id, aircraftId, registration, title, shop, state, from, to, begunAt, cancelledBecause },
      lines: lines.filter(({ orderId }) => orderId === id).map(lineView),
      ...{ signedAt, signedOn, statement, signedBy, equipmentChangeId, weighingId },
      ...{ checkFlightBecause, checkFlownAt, checkFlownBy, checkEntry, rowVersion, recordedAt },
    };
  });
}

const lineView = (line: WorkLine): LineView =>
  show(LineView, line, { aboutId: line.itemId ?? line.squawkId ?? line.wishId });
