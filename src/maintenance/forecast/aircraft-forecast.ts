/** The forecast of one aircraft, out of its facts and what it flew. Pure. */
import {
  addDays,
  daysBetween,
  duesByItems,
  duesUnder14Cfr,
  localDateOf,
  startOfDay,
  toSeconds,
  type AircraftFacts,
  type FactSheet,
  type ItemDue,
  type LocalDate,
  type ReservationFact,
} from '../../rules/index.js';
import type { Bounds } from './backtest.js';
import { courseOf, dueDates, notAfter, type WeekAhead } from './due-dates.js';
import { expectWeeks, type Basis } from './expect.js';
import type { AircraftForecast, ForecastItem } from './forecast.dto.js';
import { mondayOf } from './usage.js';
import { itemSays } from './words.js';

/** What is known of the club's day. */
export interface Today {
  on: LocalDate;
  zone: string;
  jurisdiction: FactSheet['jurisdiction'];
}

/** An aircraft with its past, week by week in tenths of an hour. */
export interface Past {
  facts: AircraftFacts;
  history: readonly number[];
}

/** Forecasts one aircraft; facts that are not known leave their part empty. */
export function aircraftForecast(
  { facts, history }: Past,
  of: { today: Today; weeks: number; bounds: Bounds | null },
): AircraftForecast {
  const { today, bounds } = of;
  const type = facts.type.known ? facts.type.value : null;
  const meters = facts.meters.known ? facts.meters.value : [];
  const meter = meters.find(({ countsForInspections }) => countsForInspections) ?? null;
  const reservations = facts.reservations.known ? facts.reservations.value : [];
  const { weeks, bases } = weeksAhead(history, reservations, of);
  const course = courseOf(weeks, bounds);
  const slot = reservations.find(({ kind }) => kind === 'maintenance') ?? null;
  const slotOn = slot === null ? null : localDateOf(toSeconds(slot.from), today.zone);
  const items = facts.items.known ? facts.items.value : [];
  const dues = today.jurisdiction === 'US' ? duesUnder14Cfr(items, today.on) : duesByItems(items, today.on);
  const forecastItem = (due: ItemDue): ForecastItem => {
    const left = due.throughTenths === null || meter === null ? null : due.throughTenths - meter.tenths;
    const flights = reservations.filter(({ expectedTenths }) => expectedTenths > 0);
    const first = left === null ? null : passing(flights, left);
    // Inside a week the bookings in hand say more than an even course.
    const dates = notAfter(
      dueDates({ throughOn: due.throughOn, leftTenths: left }, course, weeks, today.on),
      first === null ? null : localDateOf(toSeconds(first.departs), today.zone),
    );
    const before = slot === null ? flights : flights.filter(({ to }) => to <= slot.from);
    const bookedTenths = before.reduce((sum, { expectedTenths }) => sum + expectedTenths, 0);
    const state = stateOf(due, left, today.on);
    return {
      ...{ id: due.item.id, kind: due.item.kind, title: due.item.title, scope: due.item.scope, state },
      throughOn: due.throughOn,
      throughH: due.throughTenths === null ? null : due.throughTenths / 10,
      leftDays: due.throughOn === null ? null : daysBetween(today.on, due.throughOn),
      leftH: left === null ? null : left / 10,
      likelyOn: dates.likelyOn,
      earliestOn: bounds === null ? null : dates.earliestOn,
      latestOn: bounds === null ? null : dates.latestOn,
      by: dates.by,
      passing: first,
      says: itemSays({ state, leftTenths: left, throughOn: due.throughOn, bookedTenths, slotOn }),
    };
  };
  return {
    aircraftId: facts.id,
    registration: type?.registration ?? '',
    makeModel: type?.makeModel ?? '',
    meterH: meter === null ? null : meter.tenths / 10,
    readAt: meter?.readAt ?? null,
    slotOn,
    items: dues.map(forecastItem).sort(soonestFirst),
    weeks: weeks.map(({ monday, trendTenths, bookedTenths }, index) => ({
      ...{ monday, trendH: toHours(trendTenths), basis: bases[index]!, bookedH: toHours(bookedTenths) },
      likelySumH: toHours(course.likely[index]!),
      leastSumH: bounds === null ? null : toHours(course.least[index]!),
      mostSumH: bounds === null ? null : toHours(course.most[index]!),
    })),
  };
}

/** The weeks from today's on; of the first, what is left of it. */
function weeksAhead(
  history: readonly number[],
  reservations: readonly ReservationFact[],
  { today, weeks }: { today: Today; weeks: number },
): { weeks: WeekAhead[]; bases: Basis[] } {
  const expected = expectWeeks(history, weeks) ?? [];
  const first = mondayOf(today.on);
  const made = Array.from({ length: weeks }, (_none, index): WeekAhead => {
    const monday = addDays(first, index * 7);
    const from = startOfDay(monday < today.on ? today.on : monday, today.zone);
    const to = startOfDay(addDays(monday, 7), today.zone);
    const whole = to - startOfDay(monday, today.zone);
    const within = ({ from: a, to: b }: ReservationFact) =>
      Math.max(0, Math.min(toSeconds(b), to) - Math.max(toSeconds(a), from));
    const away = reservations
      .filter(({ kind }) => kind === 'maintenance')
      .reduce((sum, one) => sum + within(one), 0);
    const booked = reservations
      .filter(({ from: departs }) => toSeconds(departs) >= from && toSeconds(departs) < to)
      .reduce((sum, { expectedTenths }) => sum + expectedTenths, 0);
    return {
      monday,
      trendTenths: expected[index]?.tenths ?? 0,
      bookedTenths: booked,
      available: Math.max(0, to - from - away) / whole,
    };
  });
  return { weeks: made, bases: made.map((_week, index) => expected[index]?.basis ?? 'recent') };
}

/** How an item stands on a day, with so many tenths left on the inspection meter. */
export function stateOf(due: ItemDue, left: number | null, today: LocalDate): ForecastItem['state'] {
  if (due.settled) return 'settled';
  if ((due.throughOn !== null && due.throughOn < today) || (left !== null && left < 0)) return 'overdue';
  if (due.hoursUnknown) return due.neverDone ? 'never-done' : 'unknown';
  if (due.throughOn === null && due.throughTenths === null) return due.neverDone ? 'never-done' : 'unknown';
  return due.throughTenths !== null && left === null ? 'unknown' : 'running';
}

/** The first booking after which the meter has passed the limit. */
function passing(flights: readonly ReservationFact[], leftTenths: number): ForecastItem['passing'] {
  let sum = 0;
  for (const { id, from, expectedTenths } of flights) {
    sum += expectedTenths;
    if (sum > leftTenths) return { bookingId: id, departs: from };
  }
  return null;
}

const URGENCY: Record<ForecastItem['state'], number> = {
  overdue: 0,
  'never-done': 1,
  unknown: 2,
  running: 3,
  settled: 4,
};
function soonestFirst(a: ForecastItem, b: ForecastItem): number {
  const key = (one: ForecastItem): string =>
    `${URGENCY[one.state]} ${one.likelyOn ?? '9999'} ${one.throughOn ?? '9999'} ${one.title} ${one.id}`;
  return key(a) < key(b) ? -1 : 1;
}

const toHours = (tenths: number): number => Math.round(tenths) / 10;
