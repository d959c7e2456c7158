/** When each airworthiness item of an aircraft falls due, with the intervals of 14 CFR: what the rules of this folder ask, as a list. */
import type { LocalDate } from '../../../../calendar/dates.js';
import type { ItemFact, ItemKind } from '../../../../facts/aircraft.js';
import { INSPECTIONS } from '../../../../parameters/us/inspections.js';
import { dueOf, hundredHourDue, SETTLED, type Due, type Interval } from '../../../common/items/due.js';
import { afterProgramme, isOfProgramme, PROGRAMME_MONTHS } from './programme.js';

/** An item in force on a day, and when it is due. */
export interface ItemDue extends Due {
  item: ItemFact;
  /** It was never done, as far as the records go. */
  neverDone: boolean;
}

/** The number of the law on a day. */
function law(id: string, on: LocalDate): number {
  const dated = INSPECTIONS.find((one) => one.id === id)!.values.filter(
    ({ from }) => from === null || from <= on,
  );
  return dated.at(-1)!.value as number;
}

/** Hours between inspections for hire and instruction (14 CFR 91.409(b)), on a day. */
export const hundredHoursOn = (on: LocalDate): number => law('us.inspection.hundred-hour.hours', on);

/** Hours past its due hour that such an inspection may be flown to (14 CFR 91.409(b)), on a day. */
export const hundredHourOverrunOn = (on: LocalDate): number =>
  law('us.inspection.hundred-hour.overrun-hours', on);

const CALENDAR: Partial<Record<ItemKind, string>> = {
  annual: 'us.inspection.annual.calendar-months',
  'altimeter-static': 'us.inspection.altimeter-static.calendar-months',
  transponder: 'us.inspection.transponder.calendar-months',
  'elt-inspection': 'us.inspection.elt.calendar-months',
};

/** The interval of the law for a kind, on a day; undefined where the item itself says it. */
function intervalOfLaw(kind: ItemKind, on: LocalDate): Interval | undefined {
  const months = CALENDAR[kind];
  if (months !== undefined) return { calendarMonths: law(months, on) };
  return kind === 'vor-check' ? { days: law('us.vor-check.days', on) } : undefined;
}

/**
 * Items in force on a day with their limits, in order of id. One-time items that were done are settled. A 100-hour inspection runs from
 * the last annual or 100-hour inspection (14 CFR 91.409(b)). Under a progressive programme neither is due any more; after one its last
 * complete inspection counts as both (91.409(d)).
 */
export function duesUnder14Cfr(items: readonly ItemFact[], on: LocalDate): ItemDue[] {
  const inForce = inForceOn(items, on);
  const programme = inForce.some(isOfProgramme);
  const ended = items.filter(({ retiredOn = null }) => retiredOn !== null && retiredOn <= on);
  const counted = afterProgramme(inForce, ended, law(PROGRAMME_MONTHS, on));
  return counted.map((item) => {
    if (programme && (item.kind === 'annual' || item.kind === 'hours-100'))
      return { item, neverDone: false, ...SETTLED };
    const neverDone = item.lastDoneOn === null;
    if (item.kind === 'hours-100') {
      const due = hundredHourDue(counted, hundredHoursOn(on) * 10);
      const throughTenths = due?.throughTenths ?? null;
      return { item, neverDone, throughOn: null, throughTenths, settled: false, hoursUnknown: due === null };
    }
    return { item, neverDone, ...dueOf(item, intervalOfLaw(item.kind, on)) };
  });
}

/** The same with the intervals the items themselves name: where no pack holds the law of airworthiness. */
export function duesByItems(items: readonly ItemFact[], on: LocalDate): ItemDue[] {
  return inForceOn(items, on).map((item) => ({ item, neverDone: item.lastDoneOn === null, ...dueOf(item) }));
}

const inForceOn = (items: readonly ItemFact[], on: LocalDate): ItemFact[] =>
  items
    .filter(
      ({ since = null, retiredOn = null }) => (since ?? on) <= on && (retiredOn === null || retiredOn > on),
    )
    .sort((a, b) => (a.id < b.id ? -1 : 1));
