import type { ItemDue, ItemFact } from '../../rules/index.js';

type Item = Pick<ItemFact, 'id' | 'kind' | 'title'>;

const hours = (tenths: number): string => `${(tenths / 10).toFixed(1)} h`;

/**
 * What of an overrun the next interval owes back: an inspection by hours done within its tolerance after it was due counts from where
 * it was due. An annual stands for the 100-hour inspection, so it owes back the same. Beyond the tolerance nothing was allowed, so
 * nothing is owed: the overrun is told instead, and the interval runs from where the work was done.
 *
 * @param overrunTenths what the law lets a 100-hour inspection be overrun by, tenths of an hour
 */
export function owedBack(
  item: Item,
  dues: readonly ItemDue[],
  doneTenths: number,
  overrunTenths: number,
): { dueTenths: number | null; caution: string | null } {
  const hourly = item.kind === 'annual' || item.kind === 'hours-100';
  const due = dues.find((one) => (hourly ? one.item.kind === 'hours-100' : one.item.id === item.id));
  if (!due || due.throughTenths === null || doneTenths <= due.throughTenths)
    return { dueTenths: null, caution: null };
  const over = doneTenths - due.throughTenths;
  const tolerance = hourly ? Math.max(overrunTenths, due.item.toleranceTenths) : due.item.toleranceTenths;
  if (over <= tolerance) return { dueTenths: due.throughTenths, caution: null };
  return {
    dueTenths: null,
    caution:
      `“${item.title}” was due at ${hours(due.throughTenths)} and was done ${hours(over)} later, past what may be overrun; ` +
      'the next interval runs from where it was done.',
  };
}
