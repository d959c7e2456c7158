/** How one airworthiness item stands for a flight: directives and the club's own items. */
import { addDays, addPlainMonths, throughCalendarMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted, FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { ItemFact } from '../../../facts/aircraft.js';
import { touchesNight } from '../../../sky/nights.js';
import { dueOf } from './due.js';
import { signedFields } from './signed-fields.js';
import { hours, projectionConditions, projectMeter, type Projection } from './meter.js';

/** Facts the items are judged by. */
export const ITEM_READS = [
  'aircraft.items',
  'aircraft.meters',
  'aircraft.reservations',
  'aircraft.permits',
] as const;
type Reads = FactView<(typeof ITEM_READS)[number]>;

/** One item against the flight. */
export interface ItemState {
  item: ItemFact;
  good: boolean;
  /** 'oil change: good through 2027-03-31', 'oil change: due at 1100.0 h, the meter will read 1101.2 h'. */
  words: string;
  conditions: string[];
}

/**
 * Judges items whichever comes first of their limits. Hours are asked for only when an item has an hours limit.
 *
 * @param mayOverrun whether the item's own tolerance may be used on the way to the shop
 */
export function itemStates(
  f: Reads,
  items: readonly ItemFact[],
  moment: Moment,
  mayOverrun: boolean,
): { states: ItemState[]; counted: Counted[] } {
  let projection: Projection | null = null;
  const project = (): Projection => (projection ??= projectMeter(f, moment));
  const states = [...items]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((item) => itemState(item, moment, project, mayOverrun));
  return { states, counted: countedOf(states, projection) };
}

function countedOf(states: readonly ItemState[], projection: Projection | null): Counted[] {
  return [
    ...states.map(({ item, words }) => ({ id: item.id, on: item.lastDoneOn, what: words })),
    ...(projection?.counted ?? []),
  ];
}

function itemState(of: ItemFact, moment: Moment, project: () => Projection, mayOverrun: boolean): ItemState {
  const happened = of.lastDoneOn === null || moment.startsOnOrAfter(of.lastDoneOn);
  const item = happened ? of : { ...of, lastDoneOn: null, lastDoneTenths: null, lastDueTenths: null };
  const due = dueOf(item);
  const state = (good: boolean, says: string, conditions: string[] = []): ItemState => ({
    item: of,
    good,
    words: `${of.title}: ${says}`,
    conditions,
  });
  if (due.settled) return state(true, `done on ${item.lastDoneOn}`);
  if (due.hoursUnknown)
    need<number>(null, 'aircraft.items', `the hours at which "${of.title}" was last done are not on record`);
  if (due.throughOn === null && due.throughTenths === null) {
    if (item.lastDoneOn === null) return state(false, 'never done');
    need<number>(null, 'aircraft.items', `when "${of.title}" is due again is not on record`);
  }
  if (due.throughOn !== null && !moment.endsOnOrBefore(due.throughOn))
    return state(false, `was due on ${due.throughOn}`);
  const until = due.throughOn === null ? [] : [due.throughOn];
  if (due.throughTenths === null) return state(true, `good through ${until.join()}`);
  const projection = project();
  const limit = due.throughTenths + (mayOverrun ? item.toleranceTenths : 0);
  const at = `${hours(due.throughTenths)} h`;
  if (projection.atEnd > limit)
    return state(false, `due at ${at}, the meter will read ${hours(projection.atEnd)} h`);
  const good = `good through ${[...until, at].join(' or ')}`;
  return state(true, good, projectionConditions(projection, limit));
}

/** Does the item's scope take in this flight? Night is asked last, and means sunset to sunrise: the widest of the three. */
export function itemBinds(f: Reads, item: ItemFact, moment: Moment): boolean {
  const { flight, crew } = f;
  switch (item.scope) {
    case 'ifr':
      return flight.flightRules === 'IFR';
    case 'hire-or-instruction':
      return flight.forHire || crew.instruction;
    case 'transponder-use':
      return flight.usesTransponder !== false;
    case 'night':
      return touchesNight(moment, flight.route, 'lights');
    default:
      return true;
  }
}

/** Has all items done that are not good, in one visit to the shop. Offered only where that lasts to the flight's end. */
export function doItems(of: {
  act: string;
  title: string;
  f: Reads;
  states: readonly ItemState[];
  moment: Moment;
}): Remedy[] {
  const { act, title, f, states, moment } = of;
  const today = moment.knowledgeDate();
  if (!moment.startsOnOrAfter(today)) return [];
  const bad = states.filter((state) => !state.good).map((state) => state.item);
  const counted = bad.some((item) => item.intervalTenths !== null);
  const projection = counted ? projectMeter(f, moment) : null;
  const lasts = bad.every((item) => {
    if (!item.recurring) return true;
    const used = projection ? projection.atEnd - projection.now : 0;
    return (
      (item.intervalTenths ?? Infinity) >= used &&
      limitsOf(item, today).every((on) => moment.endsOnOrBefore(on))
    );
  });
  if (!lasts) return [];
  const effects: Remedy['effects'] = bad.map((item) => {
    const fields = signedFields(act, today, projection?.now ?? null);
    // An item with nothing but a date gets its next one from the compliance; it lies after the flight.
    const onlyDate = item.recurring && item.intervalTenths === null && limitsOf(item, today).length === 0;
    return {
      op: 'amend',
      fact: 'aircraft.items',
      id: item.id,
      fields: onlyDate ? { ...fields, fixedDueOn: laterDay(moment.arrivalDate(), today) } : fields,
    };
  });
  return [{ act, title, by: 'mechanic', effects }];
}

const laterDay = (a: LocalDate, b: LocalDate): LocalDate => (a > b ? a : addDays(b, 1));

function limitsOf(item: ItemFact, doneOn: LocalDate): LocalDate[] {
  return [
    ...(item.calendarMonths ? [throughCalendarMonths(doneOn, item.calendarMonths)] : []),
    ...(item.plainMonths ? [addPlainMonths(doneOn, item.plainMonths, 'clamp-to-month-end')] : []),
    ...(item.days ? [addDays(doneOn, item.days)] : []),
  ];
}
