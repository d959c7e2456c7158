/** Inspections that last so many calendar months: annual, altimeter and static, transponder, ELT. */
import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { Counted } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { ItemFact, ItemKind } from '../../../../facts/aircraft.js';
import { signedFields } from '../../../common/items/signed-fields.js';

/** The newest inspection of a kind that was done by the time of the flight. */
export interface CalendarState {
  item: ItemFact;
  /** Null when none was done before the flight. */
  doneOn: LocalDate | null;
  throughOn: LocalDate | null;
  current: boolean;
  counted: Counted[];
}

/** An inspection that was done. */
export type DoneItem = ItemFact & { lastDoneOn: LocalDate };

const isDone =
  (moment: Moment) =>
  (item: ItemFact): item is DoneItem =>
    item.lastDoneOn !== null && moment.startsOnOrAfter(item.lastDoneOn);

/** Inspections done by the time of the flight. */
export const doneBefore = (items: readonly ItemFact[], moment: Moment): DoneItem[] =>
  items.filter(isDone(moment));

const newestFirst = (a: ItemFact, b: ItemFact): number =>
  `${a.lastDoneOn ?? ''} ${a.id}` < `${b.lastDoneOn ?? ''} ${b.id}` ? 1 : -1;

/** How an inspection stands for the whole flight; throws UnknownFact when the aircraft has no such item on record. */
export function calendarState(
  items: readonly ItemFact[],
  kind: ItemKind,
  months: number,
  moment: Moment,
  words: string,
): CalendarState {
  const all = items.filter((item) => item.kind === kind).sort(newestFirst);
  const first = need(all[0], 'aircraft.items', `no ${words} is on record for the aircraft`);
  const done = all.find(isDone(moment));
  if (!done) return { item: first, doneOn: null, throughOn: null, current: false, counted: [] };
  const throughOn = throughCalendarMonths(done.lastDoneOn, months);
  return {
    item: done,
    doneOn: done.lastDoneOn,
    throughOn,
    current: moment.endsOnOrBefore(throughOn),
    counted: [{ id: done.id, on: done.lastDoneOn, what: `${done.title}, good through ${throughOn}` }],
  };
}

/** The sentence part for an inspection that is not current. */
export const lastWords = (state: CalendarState): string =>
  state.doneOn === null
    ? 'none is on record before the flight'
    : `the last one, of ${state.doneOn}, was good through ${state.throughOn}`;

/**
 * The day on which a hypothetical signature helps: the day of the facts if it lasts to the end of the flight, else the
 * day of departure. Null when neither would, or the flight lies before the facts.
 */
export function signingDay(moment: Moment, lasts: (on: LocalDate) => LocalDate): LocalDate | null {
  const today = moment.knowledgeDate();
  if (!moment.startsOnOrAfter(today)) return null;
  const good = (on: LocalDate): boolean => moment.endsOnOrBefore(lasts(on));
  if (good(today)) return today;
  const departure = moment.departureDate();
  return good(departure) ? departure : null;
}

/** Has the inspection done and signed. */
export function signInspection(of: {
  act: string;
  title: string;
  item: ItemFact;
  months: number;
  moment: Moment;
  tenths: number | null;
  fields?: Partial<ItemFact>;
}): Remedy[] {
  const { act, title, item, months, moment, tenths, fields } = of;
  const on = signingDay(moment, (day) => throughCalendarMonths(day, months));
  if (on === null) return [];
  return [
    {
      act,
      title,
      by: 'mechanic',
      effects: [
        {
          op: 'amend',
          fact: 'aircraft.items',
          id: item.id,
          fields: { ...signedFields(act, on, tenths), ...fields },
        },
      ],
    },
  ];
}
