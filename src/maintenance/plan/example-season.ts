/** A season as a club of twenty aircraft may have it: invented, the same for every seed. For specs and the bench. */
import { addDays } from '../../rules/index.js';
import type { Need, Problem, Weights, Wish } from './problem.js';

/** A linear congruential draw (Numerical Recipes, from memory), so that a season is the same everywhere. */
function draws(seed: number) {
  let state = seed >>> 0;
  const next = (): number => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  return {
    next,
    whole: (least: number, most: number): number => least + Math.floor(next() * (most - least + 1)),
  };
}

const WEIGHTS: Weights = {
  bookedHour: 1,
  expectedHour: 0.5,
  weekOfLife: 0.4,
  weekOverdue: 10,
  visit: 3,
  wish: 1,
};

/**
 * A problem of the planner: an annual for each aircraft due within the span, hourly inspections that come round again, some upgrades
 * wished for, four bays, two closed weeks, trainers of which no more than three may be down.
 */
export function exampleSeason(of: { aircraft: number; weeks: number; seed: number }): Problem {
  const { aircraft, weeks, seed } = of;
  const { next, whole } = draws(seed);
  const mondays = Array.from({ length: weeks }, (_none, week) => addDays('2027-01-04', week * 7));
  const fleet = Array.from({ length: aircraft }, (_none, at) => ({ id: `a${at}`, name: `NX${100 + at}` }));
  const needs: Need[] = [];
  const wishes: Wish[] = [];
  const bookedHours: Record<string, number[]> = {};
  const expectedHours: Record<string, number[]> = {};
  for (const { id } of fleet) {
    const base = 3 + next() * 6;
    bookedHours[id] = mondays.map(
      (_monday, week) => Math.round((week < 6 ? base * next() : base * 0.1 * next()) * 10) / 10,
    );
    expectedHours[id] = mondays.map(
      (_monday, week) => Math.round(base * (0.5 + (week / weeks) * 0.8) * 10) / 10,
    );
    const annual = whole(3, weeks - 1);
    needs.push({
      id: `${id} annual`,
      aircraftId: id,
      title: 'Annual inspection',
      shopDays: whole(4, 7),
      latest: annual,
      overdue: false,
      partsFrom: 0,
      follows: null,
      worth: 0,
    });
    const hundred = whole(2, 14);
    needs.push({
      id: `${id} hundred`,
      aircraftId: id,
      title: '100-hour inspection',
      shopDays: 2,
      latest: hundred,
      overdue: false,
      partsFrom: 0,
      follows: null,
      worth: 0,
    });
    needs.push({
      id: `${id} hundred again`,
      aircraftId: id,
      title: '100-hour inspection',
      shopDays: 2,
      latest: null,
      overdue: false,
      partsFrom: 0,
      follows: { needId: `${id} hundred`, withinWeeks: whole(10, 16) },
      worth: 1,
    });
    if (next() < 0.4)
      needs.push({
        id: `${id} directive`,
        aircraftId: id,
        title: 'Directive',
        shopDays: 1,
        latest: whole(2, weeks - 1),
        overdue: false,
        partsFrom: whole(0, 2),
        follows: null,
        worth: 0,
      });
    if (next() < 0.5)
      wishes.push({
        id: `${id} upgrade`,
        aircraftId: id,
        title: 'New navigator',
        shopDays: whole(2, 4),
        worth: whole(5, 20),
        partsFrom: whole(0, 10),
        ridesWith: [`${id} annual`],
      });
  }
  const closed = new Set([8, 17]);
  return {
    weeks: mondays,
    aircraft: fleet,
    ...{ needs, wishes, bookedHours, expectedHours },
    shop: {
      bays: mondays.map((_monday, week) => (closed.has(week) ? 0 : 4)),
      shopDays: mondays.map((_monday, week) => (closed.has(week) ? 0 : 18)),
      ...{ daysPerWeek: 5, mostWeeks: 6, firstWeek: 1 },
    },
    groups: [
      { id: 'trainers', title: 'trainers', aircraftIds: fleet.slice(0, 8).map(({ id }) => id), mostDown: 3 },
    ],
    pins: [],
    weights: WEIGHTS,
  };
}
