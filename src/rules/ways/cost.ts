/** What a way costs: hours, money, days and inconvenience by the club's policy, and one number to put ways in order. */
import type { Effect } from '../engine/remedy.js';
import type { ActEntry } from './acts.js';
import type { Prices } from './prices.js';

/** A cost broken down. Money in the club's currency; points are inconvenience. */
export interface Cost {
  /** Hours of the member's time, in the air and on the ground. */
  hours: number;
  /** What the member pays. */
  money: number;
  /** What the club pays. */
  clubMoney: number;
  /** Days from now until it is done. */
  days: number;
  points: number;
  /** All of it in money, as the club values an hour, a day and a point. */
  total: number;
}

/** A cost before days are counted and all is summed. */
export type Bill = Pick<Cost, 'hours' | 'money' | 'clubMoney' | 'points'>;

export const NOTHING: Bill = { hours: 0, money: 0, clubMoney: 0, points: 0 };

export const plus = (a: Bill, b: Bill): Bill => ({
  hours: a.hours + b.hours,
  money: a.money + b.money,
  clubMoney: a.clubMoney + b.clubMoney,
  points: a.points + b.points,
});

export const minus = (a: Bill, b: Bill): Bill => ({
  hours: a.hours - b.hours,
  money: a.money - b.money,
  clubMoney: a.clubMoney - b.clubMoney,
  points: a.points - b.points,
});

/** To a hundredth, so that sums in another order are the same number. */
const cents = (value: number): number => Math.round(value * 100) / 100;

/** The bill with its days, valued. */
export function costOf(bill: Bill, days: number, prices: Prices): Cost {
  const value = (name: string): number => prices.number(`club.cost.value-of-${name}`);
  return {
    hours: cents(bill.hours),
    money: cents(bill.money),
    clubMoney: cents(bill.clubMoney),
    days,
    points: cents(bill.points),
    total: cents(
      bill.money +
        bill.clubMoney +
        bill.hours * value('hour') +
        days * value('day') +
        bill.points * value('point'),
    ),
  };
}

/** A bill in money alone. */
export const totalOf = (prices: Prices, bill: Bill): number => costOf(bill, 0, prices).total;

/** Hours in the air of a task; landings and hours logged are as many as it records. */
export function airHours(entry: ActEntry, effects: readonly Effect[], prices: Prices): number {
  if (entry.air === null) return 0;
  if (entry.air === 'logged')
    return loggedIn(effects, 'totalTenths').reduce((sum, tenths) => sum + tenths, 0) / 10;
  const each = prices.number(`club.cost.hours.${entry.air}`);
  return entry.air === 'landing' ? each * Math.max(1, ...loggedIn(effects, 'landings')) : each;
}

/** A number that the log entries of an act record. */
const loggedIn = (effects: readonly Effect[], field: 'landings' | 'totalTenths'): number[] =>
  effects.flatMap((effect) =>
    effect.op === 'append' && field in effect.value
      ? [Number((effect.value as Record<string, unknown>)[field])]
      : [],
  );

/** What an act costs on the ground: fees, time, asking others. */
export function groundBill(entry: ActEntry, prices: Prices): Bill {
  const hours = entry.ground === null ? 0 : prices.number(`club.cost.hours.${entry.ground}`);
  const fee = entry.fee === null ? 0 : prices.number(`club.cost.${entry.fee}`);
  const teaching = entry.instructed ? hours * prices.number('club.cost.instructor-hour') : 0;
  return {
    hours,
    money: teaching + (entry.payer === 'member' ? fee : 0),
    clubMoney: entry.payer === 'club' ? fee : 0,
    points: entry.points === null ? 0 : prices.number(`club.cost.points.${entry.points}`),
  };
}

/** What hours in the air cost. */
export function airBill(hours: number, withInstructor: boolean, prices: Prices): Bill {
  const rate =
    prices.number('club.cost.aircraft-hour') +
    (withInstructor ? prices.number('club.cost.instructor-hour') : 0);
  return { hours, money: hours * rate, clubMoney: 0, points: 0 };
}
