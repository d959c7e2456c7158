/**
 * Progressive inspection programmes (14 CFR 91.409(d)). An aircraft under one needs neither annual nor 100-hour inspection
 * (91.409(c)(3)); once it is given up, its last complete inspection counts as both. Pure, read by rules and by the due list.
 */
import type { Parameters } from '../../../../engine/parameters.js';
import type { ItemFact } from '../../../../facts/aircraft.js';

/** Months in which a programme inspects the whole aircraft (14 CFR 91.409(d)). */
export const PROGRAMME_MONTHS = 'us.inspection.progressive.calendar-months';

/** Hours over that a schedule may allow on the way to the inspection (14 CFR 91.409(d)(2)(ii)). */
export const PROGRAMME_MARGIN = 'us.inspection.progressive.overrun-hours';

export const isOfProgramme = (item: ItemFact): boolean => item.kind === 'progressive';

/** Inspects the whole aircraft, within so many calendar months. */
export const isComplete = (item: ItemFact, months: number): boolean =>
  isOfProgramme(item) && item.calendarMonths !== null && item.calendarMonths <= months;

/** The programme's inspections with what the schedule allows over them, no more than the law does. */
export function withinMargin(programme: readonly ItemFact[], p: Parameters): ItemFact[] {
  const most = Math.round(p.number(PROGRAMME_MARGIN) * 10);
  return programme.map((item) => ({ ...item, toleranceTenths: Math.min(item.toleranceTenths, most) }));
}

/**
 * Annual and 100-hour inspections as they count after a programme was given up: its last complete inspection stands for those that
 * are older.
 *
 * @param items those asked for
 * @param ended items of the aircraft that are asked for no more
 */
export function afterProgramme(
  items: readonly ItemFact[],
  ended: readonly ItemFact[],
  months: number,
): readonly ItemFact[] {
  const done = ({ lastDoneOn }: ItemFact): string => lastDoneOn ?? '';
  const order = (item: ItemFact): string => `${done(item)} ${item.id}`;
  const complete = ended
    .filter((item) => isComplete(item, months))
    .reduce<ItemFact | null>(
      (last, item) => (last === null || order(item) > order(last) ? item : last),
      null,
    );
  if (complete === null) return items;
  const { lastDoneOn, lastDoneTenths } = complete;
  return items.map((item) =>
    (item.kind === 'annual' || item.kind === 'hours-100') && done(item) < done(complete)
      ? { ...item, lastDoneOn, lastDoneTenths, lastDueTenths: null }
      : item,
  );
}
