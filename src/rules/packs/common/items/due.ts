/**
 * When an airworthiness item falls due, from its newest compliance. Pure, so that the maintenance forecast and the
 * rules read the same dates and hours.
 */
import {
  addDays,
  addPlainMonths,
  daysBetween,
  throughCalendarMonths,
  type LocalDate,
} from '../../../calendar/dates.js';
import type { ItemDetail, ItemFact } from '../../../facts/aircraft.js';
import { ELT_BATTERY_LIFE_PARTS } from '../../../parameters/us/inspections.js';

/** An interval; what is given counts, whichever comes first. */
export interface Interval {
  calendarMonths?: number | null;
  plainMonths?: number | null;
  days?: number | null;
  tenths?: number | null;
}

/** When an item is due again. */
export interface Due {
  /** Last date on which it is still good; null when no date limits it. */
  throughOn: LocalDate | null;
  /** Reading of the inspection meter, in tenths, up to which it is still good; null when no hours limit it. */
  throughTenths: number | null;
  /** Nothing is due any more: a one-time item that was done. */
  settled: boolean;
  /** It counts by hours, but the hours of the last compliance are not on record. */
  hoursUnknown: boolean;
}

/** Nothing is due. */
export const SETTLED: Due = { throughOn: null, throughTenths: null, settled: true, hoursUnknown: false };

/**
 * Due date and hours of an item: whichever comes first of its intervals and fixed limits.
 *
 * - "calendar months" run to the end of the month; "months" to the same day number, clamped to the month end where that
 *   day is missing (usual reading, from memory)
 * - a compliance done late counts from where it was due, so that the overrun is owed back (14 CFR 91.409(b)); one done
 *   early counts from where it was done
 * - a fixed limit counts until a compliance on or after it
 *
 * @param law intervals of the law, which stand over the item's own
 */
export function dueOf(item: ItemFact, law?: Interval): Due {
  if (item.kind === 'elt-battery') {
    const parts = ELT_BATTERY_LIFE_PARTS.values.at(-1)?.value;
    const throughOn = item.detail && typeof parts === 'number' ? batteryThrough(item.detail, parts) : null;
    return { ...SETTLED, settled: false, throughOn };
  }
  const done = item.lastDoneOn;
  if (done !== null && !item.recurring) return SETTLED;
  const interval = law ?? {
    calendarMonths: item.calendarMonths,
    plainMonths: item.plainMonths,
    days: item.days,
    tenths: item.intervalTenths,
  };
  const dates: LocalDate[] = [];
  const tenths: number[] = [];
  let hoursUnknown = false;
  if (done !== null) {
    if (interval.calendarMonths) dates.push(throughCalendarMonths(done, interval.calendarMonths));
    if (interval.plainMonths) dates.push(addPlainMonths(done, interval.plainMonths, 'clamp-to-month-end'));
    if (interval.days) dates.push(addDays(done, interval.days));
    const base = countsFrom(item);
    if (interval.tenths) {
      if (base === null) hoursUnknown = true;
      else tenths.push(base + interval.tenths);
    }
  }
  if (item.fixedDueOn !== null && (done === null || done < item.fixedDueOn)) dates.push(item.fixedDueOn);
  if (
    item.fixedDueTenths !== null &&
    (item.lastDoneTenths === null || item.lastDoneTenths < item.fixedDueTenths)
  )
    tenths.push(item.fixedDueTenths);
  return {
    throughOn: dates.sort()[0] ?? null,
    throughTenths: tenths.length > 0 ? Math.min(...tenths) : null,
    settled: false,
    hoursUnknown,
  };
}

/** Hours from which the next interval runs: where a late compliance was due, else where it was done. */
function countsFrom(item: ItemFact): number | null {
  if (item.lastDoneTenths === null) return null;
  return item.lastDueTenths === null
    ? item.lastDoneTenths
    : Math.min(item.lastDoneTenths, item.lastDueTenths);
}

/** The 100-hour limit, and the compliance it runs from. */
export interface HundredHourDue {
  throughTenths: number;
  from: ItemFact;
}

/**
 * Where the next inspection for hire is due: so many tenths after the last annual or 100-hour inspection, whichever
 * gives more. An annual counts as a 100-hour inspection; a 100-hour inspection is no annual (14 CFR 91.409(b)).
 * Null when neither is on record with its hours.
 */
export function hundredHourDue(items: readonly ItemFact[], intervalTenths: number): HundredHourDue | null {
  let best: HundredHourDue | null = null;
  for (const item of items) {
    if ((item.kind !== 'annual' && item.kind !== 'hours-100') || item.lastDoneOn === null) continue;
    const base = countsFrom(item);
    if (base === null) continue;
    const through = base + intervalTenths;
    if (
      best === null ||
      through > best.throughTenths ||
      (through === best.throughTenths && item.id < best.from.id)
    )
      best = { throughTenths: through, from: item };
  }
  return best;
}

/**
 * Last date an ELT battery is good: the placarded one; without it, the day on which one of `parts` equal parts of the
 * useful life is spent (that day included: our reading). Null when neither can be told.
 */
export function batteryThrough(detail: ItemDetail, parts: number): LocalDate | null {
  if (detail.eltBatteryReplaceOn) return detail.eltBatteryReplaceOn;
  if (!detail.eltBatteryNewOn || !detail.eltBatteryUsefulLifeEndsOn) return null;
  const life = daysBetween(detail.eltBatteryNewOn, detail.eltBatteryUsefulLifeEndsOn);
  return addDays(detail.eltBatteryNewOn, Math.floor(life / parts));
}
