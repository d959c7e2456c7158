import type { Instant } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { BlockRow, ItemRow, SignerRow, SquawkRow, WorkLineRow, WorkOrderRow } from '../rows.js';
import type { When } from '../when.js';

/** Who may sign for work on the demo club's aircraft, as item-book.ts has them sign. */
export function signerRows(when: When, recordedAt: Instant): SignerRow[] {
  const signer = (
    name: string,
    certificate: string,
    holds: SignerRow['holds'],
    throughDays: number | null,
  ): SignerRow => ({
    ...{ club_id: DEMO_CLUB_ID, id: demoId('signer', name), name, certificate, holds },
    ...{
      valid_from: when.daysAgo(1500),
      valid_through: throughDays === null ? null : when.daysAgo(-throughDays),
    },
    recorded_at: recordedAt,
  });
  return [
    signer('R. Holloway', 'inspection authorisation 77-Q', 'inspection-authorization', 120),
    signer('T. Emberly', 'mechanic 4-Q', 'mechanic', null),
    signer('Quill Mesa Avionics', 'repair station Q-18', 'repair-station', null),
  ];
}

/** A work order for each block of the shop, with what is to be done then. */
export function visitRows(
  blocks: readonly BlockRow[],
  of: { items: readonly ItemRow[]; squawks: readonly SquawkRow[] },
): { work_orders: WorkOrderRow[]; work_lines: WorkLineRow[] } {
  const shop = blocks.filter(({ kind }) => kind === 'maintenance');
  const orders = shop.map((block): WorkOrderRow => ({
    ...{ club_id: DEMO_CLUB_ID, id: demoId('visit', block.id), aircraft_id: block.aircraft_id },
    ...{ title: block.note, shop: 'Quill Mesa hangar 3', state: 'planned', booking_id: block.id },
    ...{ made_by: block.member_id, recorded_at: block.recorded_at },
  }));
  const lines = orders.flatMap((order): WorkLineRow[] => {
    const line = { club_id: DEMO_CLUB_ID, order_id: order.id, aircraft_id: order.aircraft_id };
    const none = { item_id: null, squawk_id: null, wish_id: null, recorded_at: order.recorded_at };
    const wanted = wantedBy(order.title);
    const items = of.items
      .filter(
        ({ aircraft_id, kind, retired_on }) =>
          aircraft_id === order.aircraft_id && retired_on === null && wanted.includes(kind),
      )
      .map((item): WorkLineRow => ({
        ...{ ...line, ...none, id: demoId('line', order.id, item.id), kind: 'item' },
        ...{ item_id: item.id, title: item.title },
      }));
    const squawks = of.squawks
      .filter(({ aircraft_id, closed_at }) => aircraft_id === order.aircraft_id && closed_at === null)
      .map((squawk): WorkLineRow => ({
        ...{ ...line, ...none, id: demoId('line', order.id, squawk.id), kind: 'squawk' },
        ...{ squawk_id: squawk.id, title: squawk.title },
      }));
    return [...items, ...squawks];
  });
  return { work_orders: orders, work_lines: lines };
}

/** Kinds of items a visit of some title is for. */
function wantedBy(title: string): string[] {
  if (title.startsWith('Annual')) return ['annual', 'elt-inspection', 'directive'];
  if (title.startsWith('100-hour')) return ['hours-100'];
  return title.startsWith('Emergency') ? ['elt-battery'] : [];
}
