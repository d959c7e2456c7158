/** The planner's problem, out of the club's forecast, wishes, bookings of the shop and policy. */
import { addDays, type LocalDate } from '../../rules/index.js';
import type { AircraftForecast, ForecastView } from '../forecast/forecast.dto.js';
import type { Pin, Problem, Wish } from '../plan/problem.js';
import type { UpgradeWish } from '../wishes/wish.entity.js';
import { needsOf, weekOf } from './needs-of.js';

/** Reads a number of the club's policy. */
export type PolicyNumber = (id: string) => number;

/** What else is known of the aircraft. */
export interface UseOf {
  aircraftId: string;
  instructs: boolean;
  hires: boolean;
}

/** A span of days an aircraft is booked into the shop. */
export interface ShopSpan {
  aircraftId: string;
  from: LocalDate;
  to: LocalDate;
}

/** Makes the problem. */
export function problemOf(of: {
  forecast: ForecastView;
  wishes: readonly UpgradeWish[];
  uses: readonly UseOf[];
  pins: readonly Pin[];
  closed: ReadonlySet<number>;
  policy: PolicyNumber;
  hundredHours: number;
}): Problem {
  const { forecast, policy, closed } = of;
  const mondays = forecast.aircraft[0]?.weeks.map(({ monday }) => monday) ?? [];
  const times = {
    annual: policy('club.shop.days-annual'),
    hundredHour: policy('club.shop.days-hundred-hour'),
    other: policy('club.shop.days-other'),
  };
  const firstWeek = policy('club.shop.lead-weeks');
  const useOf = (aircraftId: string) => of.uses.find((use) => use.aircraftId === aircraftId);
  const needs = forecast.aircraft.flatMap((one) => {
    const use = useOf(one.aircraftId);
    const hire = use !== undefined && (use.instructs || use.hires);
    return needsOf(one, { mondays, times, hire, hundredHours: of.hundredHours, firstWeek });
  });
  const trainers = of.uses.filter(({ instructs }) => instructs).map(({ aircraftId }) => aircraftId);
  const per = <T>(make: (one: AircraftForecast) => T): Record<string, T> =>
    Object.fromEntries(forecast.aircraft.map((one) => [one.aircraftId, make(one)]));
  const byWeek = (open: number) => mondays.map((_monday, week) => (closed.has(week) ? 0 : open));
  return {
    weeks: mondays,
    aircraft: forecast.aircraft.map(({ aircraftId, registration }) => ({
      id: aircraftId,
      name: registration,
    })),
    needs,
    wishes: of.wishes.map((wish) => wishOf(wish, forecast, mondays)),
    bookedHours: per(({ weeks }) => weeks.map(({ bookedH }) => bookedH)),
    expectedHours: per(({ weeks }) => weeks.map(({ trendH, bookedH }) => Math.max(0, trendH - bookedH))),
    shop: {
      bays: byWeek(policy('club.shop.bays')),
      shopDays: byWeek(policy('club.shop.days-in-all')),
      daysPerWeek: policy('club.shop.days-per-week'),
      mostWeeks: policy('club.shop.longest-weeks'),
      firstWeek,
    },
    groups: [
      {
        id: 'instruction',
        title: 'aircraft for instruction',
        aircraftIds: trainers,
        mostDown: Math.max(0, trainers.length - policy('club.shop.trainers-kept')),
      },
    ].filter(({ aircraftIds }) => aircraftIds.length > 1),
    pins: [...of.pins],
    weights: {
      bookedHour: policy('club.season.booked-hour'),
      expectedHour: policy('club.season.expected-hour'),
      weekOfLife: policy('club.season.week-of-life'),
      weekOverdue: policy('club.season.week-overdue'),
      visit: policy('club.season.visit'),
      wish: policy('club.season.wish-hour'),
    },
  };
}

function wishOf(wish: UpgradeWish, forecast: ForecastView, mondays: readonly LocalDate[]): Wish {
  const items = forecast.aircraft.find(({ aircraftId }) => aircraftId === wish.aircraftId)?.items ?? [];
  const { partsOn } = wish;
  return {
    ...{
      id: wish.id,
      aircraftId: wish.aircraftId,
      title: wish.title,
      shopDays: wish.shopDays,
      worth: wish.worthHours,
    },
    // Parts that come within a week serve from the next.
    partsFrom: partsOn === null || partsOn <= mondays[0]! ? 0 : weeksUntil(partsOn, mondays),
    ridesWith: wish.withAnnual ? items.filter(({ kind }) => kind === 'annual').map(({ id }) => id) : null,
  };
}

function weeksUntil(day: LocalDate, mondays: readonly LocalDate[]): number {
  const week = mondays.findIndex((monday) => monday >= day);
  return week === -1 ? mondays.length : week;
}

/** Weeks a span of days takes up. */
export function pinsOf({ aircraftId, from, to }: ShopSpan, mondays: readonly LocalDate[]): Pin[] {
  const end = addDays(mondays.at(-1) ?? from, 6);
  if (mondays.length === 0 || to < mondays[0]! || from > end) return [];
  const [first, last] = [weekOf(from, mondays), weekOf(to > end ? end : to, mondays)];
  return Array.from({ length: last - first + 1 }, (_none, at) => ({ aircraftId, week: first + at }));
}
