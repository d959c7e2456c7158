/** What has to be done to an aircraft within a span, out of its forecast. */
import { addDays, daysBetween, type LocalDate } from '../../rules/index.js';
import type { AircraftForecast, ForecastItem } from '../forecast/forecast.dto.js';
import type { Need } from '../plan/problem.js';

/** Days in the shop, by kind. */
export interface ShopTimes {
  annual: number;
  hundredHour: number;
  other: number;
}

/** Kinds that need no shop: the pilot does them. */
const BY_THE_PILOT = new Set(['vor-check']);

/**
 * Needs of an aircraft: items that bind and fall due within the span, by the earliest day the bounds allow; and, for what comes round
 * by hours, once more after it.
 *
 * What falls due before the shop can take anything waits for it, at a cost: until then the aircraft does not fly on it.
 *
 * @param hire whether hour-based inspections for hire and instruction bind
 */
export function needsOf(
  aircraft: AircraftForecast,
  of: {
    mondays: readonly LocalDate[];
    times: ShopTimes;
    hire: boolean;
    hundredHours: number;
    firstWeek: number;
  },
): Need[] {
  const { mondays, times } = of;
  const end = addDays(mondays.at(-1)!, 6);
  const needs: Need[] = [];
  for (const item of aircraft.items) {
    if (item.scope === 'advice' || item.state === 'settled' || BY_THE_PILOT.has(item.kind)) continue;
    if (item.kind === 'hours-100' && !of.hire) continue;
    const due = dueOn(item, mondays[0]!);
    if (due === null || due > end) continue;
    const shopDays =
      item.kind === 'annual' ? times.annual : item.kind === 'hours-100' ? times.hundredHour : times.other;
    const base = {
      ...{ aircraftId: aircraft.aircraftId, title: item.title, shopDays, partsFrom: 0, worth: 0 },
      overdue: false,
    };
    const week = weekOf(due, mondays);
    const overdue = week < of.firstWeek;
    needs.push({ ...base, id: item.id, overdue, latest: Math.max(of.firstWeek, week), follows: null });
    if (item.kind !== 'hours-100') continue;
    const perWeek = hoursPerWeek(aircraft);
    const withinWeeks = perWeek > 0 ? Math.floor(of.hundredHours / perWeek) : mondays.length;
    if (withinWeeks > 0 && withinWeeks < mondays.length)
      needs.push({
        ...base,
        id: `${item.id} again`,
        title: `${item.title}, again`,
        latest: null,
        follows: { needId: item.id, withinWeeks },
      });
  }
  return needs;
}

/** The item a need is of, the first time or again. */
export const itemOf = (needId: string): string => needId.split(' ')[0]!;

/** The day it has to be done by: what is overdue or never done, at once. */
function dueOn(item: ForecastItem, today: LocalDate): LocalDate | null {
  if (item.state === 'overdue' || item.state === 'never-done') return today;
  return item.earliestOn ?? item.likelyOn;
}

/** The week a day lies in; the first for days before it. */
export function weekOf(day: LocalDate, mondays: readonly LocalDate[]): number {
  return Math.max(0, Math.min(mondays.length - 1, Math.floor(daysBetween(mondays[0]!, day) / 7)));
}

const hoursPerWeek = ({ weeks }: AircraftForecast): number =>
  weeks.reduce((sum, { trendH, bookedH }) => sum + Math.max(trendH, bookedH), 0) / Math.max(1, weeks.length);
