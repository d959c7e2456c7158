/**
 * Planning a season of shop visits: what has to be done, what is wished for, what the shops can take, and what it costs to take an
 * aircraft out of the club's hands. Plain data; weeks are indexes into `weeks`, their Mondays.
 */
import type { LocalDate } from '../../rules/index.js';

/** Work that has to be done. */
export interface Need {
  id: string;
  aircraftId: string;
  title: string;
  /** Days in the shop. More than a week's run on into the next weeks. */
  shopDays: number;
  /** Last week in which it may begin: the week it falls due in. Null: due only after the span, and may be left. */
  latest: number | null;
  /**
   * It is overdue, or falls due before the shop can take it: it is done within the span, each week of waiting costs, and `latest` only says
   * that it must be.
   */
  overdue: boolean;
  /** First week in which the parts are there. */
  partsFrom: number;
  /** It falls due again so many weeks after another need of the aircraft was done; `latest` is null then. */
  follows: { needId: string; withinWeeks: number } | null;
  /** What doing it within the span is worth where it may be left: the visit that is saved afterwards. */
  worth: number;
}

/** An upgrade that is wished for. It rides along with work that has to be done. */
export interface Wish {
  id: string;
  aircraftId: string;
  title: string;
  shopDays: number;
  /** Hours of flying it is worth to the club. */
  worth: number;
  partsFrom: number;
  /** Needs it may ride along with; null: any of its aircraft. */
  ridesWith: string[] | null;
}

/** Aircraft of which only so many may be down at once. */
export interface Group {
  id: string;
  title: string;
  aircraftIds: string[];
  mostDown: number;
}

/** An aircraft that has to be in the shop in a week: booked already, or wanted so. */
export interface Pin {
  aircraftId: string;
  week: number;
}

/** What the shop can take, week by week. */
export interface Shop {
  /** Aircraft at once; 0: closed. */
  bays: number[];
  /** Days of work over all aircraft. */
  shopDays: number[];
  /** Days a week on one aircraft. */
  daysPerWeek: number;
  /** Weeks a visit lasts at most. */
  mostWeeks: number;
  /** First week it can take anything that is not pinned. */
  firstWeek: number;
}

/** What weighs how much; one unit is one hour of flying taken from a member who has booked it. */
export interface Weights {
  bookedHour: number;
  /** An hour that would likely be flown and is not booked. */
  expectedHour: number;
  /** A week of an inspection's life thrown away by doing it early. */
  weekOfLife: number;
  /** A week in which something overdue waits. */
  weekOverdue: number;
  /** A shop visit: ferrying, opening and closing. */
  visit: number;
  /** An hour's worth of upgrade. */
  wish: number;
}

export interface Problem {
  weeks: LocalDate[];
  aircraft: { id: string; name: string }[];
  needs: Need[];
  wishes: Wish[];
  /** Hours by aircraft and week. `expectedHours`: beyond the booked ones. */
  bookedHours: Record<string, number[]>;
  expectedHours: Record<string, number[]>;
  shop: Shop;
  groups: Group[];
  pins: Pin[];
  weights: Weights;
}

/** When each piece of work begins; what is not named is not done. */
export interface Plan {
  needs: Record<string, number>;
  wishes: Record<string, number>;
}

export const NO_PLAN: Plan = { needs: {}, wishes: {} };

/** Days of a piece of work in its first, second, ... week. */
export function daysByWeek(shopDays: number, daysPerWeek: number): number[] {
  const weeks: number[] = [];
  for (let left = shopDays; left > 1e-9; left -= daysPerWeek) weeks.push(Math.min(left, daysPerWeek));
  return weeks;
}

/** Weeks in which a piece of work may begin: parts there, shop open to it, done within the span, not later than due. */
export function startsOf(problem: Problem, work: Need | Wish): number[] {
  const { shop, weeks, pins } = problem;
  const length = daysByWeek(work.shopDays, shop.daysPerWeek).length;
  const latest = 'latest' in work && work.latest !== null && !work.overdue ? work.latest : weeks.length - 1;
  const pinned = (week: number) =>
    pins.some((pin) => pin.aircraftId === work.aircraftId && pin.week === week);
  return Array.from({ length: weeks.length }, (_none, week) => week).filter(
    (week) =>
      week >= work.partsFrom &&
      week <= latest &&
      week + length <= weeks.length &&
      (week >= shop.firstWeek || pinned(week)),
  );
}

/** Must it be done within the span, whatever else is done? */
export const isMandatory = (need: Need): boolean => need.latest !== null;
