import type { LocalDate } from '../../rules/index.js';
import { FLEET, type Aircraft } from '../fleet/aircraft.js';
import { MODELS } from '../fleet/models.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { MeterReadingRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { endMinute, type Outing } from './outing.js';

/** What the meters of one aircraft showed when a flight was over. */
interface Shown {
  date: LocalDate;
  endMinute: number;
  hobbsTenths: number;
  tachTenths: number;
}

/** The meters of the fleet over the 18 months: each flight moves them by what it flew. */
export class Meters {
  private readonly shown = new Map<string, Shown[]>();
  /** The newest hour-based inspection of each aircraft, and those before it: newest first. */
  private readonly inspected = new Map<string, { date: LocalDate; tachTenths: number }[]>();

  constructor(
    outings: readonly Outing[],
    private readonly when: When,
  ) {
    for (const aircraft of FLEET) {
      const own = outings.filter((one) => one.aircraft === aircraft);
      const steps = tachSteps(aircraft, own);
      const inspections = inspectionIndexes(aircraft, own, steps);
      if (aircraft.sinceInspection.exactly) tune(steps, inspections[0] ?? 0, aircraft.sinceInspection.tenths);
      const shown = run(aircraft, own, steps, when);
      this.shown.set(aircraft.key, shown);
      this.inspected.set(
        aircraft.key,
        // Index n: after the n-th flight; shown[0] is the reading before the first.
        inspections.map((index) => ({ date: shown[index]!.date, tachTenths: shown[index]!.tachTenths })),
      );
    }
  }

  /** Tachometer at the end of a date. */
  tachOn(aircraft: Aircraft, date: LocalDate): number {
    const shown = this.shown.get(aircraft.key)!.filter((one) => one.date <= date);
    return shown.at(-1)?.tachTenths ?? aircraft.tachTenths;
  }

  get firstDay(): LocalDate {
    return this.when.firstDay;
  }

  tachNow(aircraft: Aircraft): number {
    return this.tachOn(aircraft, this.when.today);
  }

  /** The last date on which at least so many tenths, by now, were still to be flown. */
  dateBefore(aircraft: Aircraft, tenths: number): LocalDate {
    const limit = this.tachNow(aircraft) - tenths;
    const shown = this.shown.get(aircraft.key)!.filter((one) => one.tachTenths <= limit);
    return shown.at(-1)?.date ?? this.when.firstDay;
  }

  inspections(aircraft: Aircraft): readonly { date: LocalDate; tachTenths: number }[] {
    return this.inspected.get(aircraft.key)!;
  }

  rows(seed: string): MeterReadingRow[] {
    return FLEET.flatMap((aircraft) =>
      this.shown.get(aircraft.key)!.flatMap((one, index) => {
        const readAt = at(one.date, one.endMinute + 2);
        return (['hobbs', 'tachometer'] as const).map((kind): MeterReadingRow => ({
          club_id: DEMO_CLUB_ID,
          id: demoId(seed, 'meter', aircraft.key, kind, index),
          aircraft_id: aircraft.id,
          kind,
          shown_tenths: kind === 'hobbs' ? one.hobbsTenths : one.tachTenths,
          read_at: readAt,
          source: index === 0 ? 'coordinator' : 'dispatch',
          note: index === 0 ? 'Reading at the start of the records' : null,
          recorded_at: readAt,
        }));
      }),
    );
  }
}

const tenthsOf = (outing: Outing): number => outing.legs.reduce((sum, leg) => sum + leg.tenths, 0);

/** How far each outing moved the tachometer, the remainder carried over so that the ratio holds. */
function tachSteps(aircraft: Aircraft, outings: readonly Outing[]): number[] {
  let exact = 0;
  let whole = 0;
  return outings.map((outing) => {
    exact += tenthsOf(outing) * MODELS[aircraft.model].tachRatio;
    const step = Math.floor(exact) - whole;
    whole += step;
    return step;
  });
}

const INTERVAL = 1000;

/**
 * After which flights an hour-based inspection was made, newest first: on the evening of a day, so that about the wanted
 * hours have been flown since the newest, and fewer than a hundred between any two.
 */
function inspectionIndexes(
  aircraft: Aircraft,
  outings: readonly Outing[],
  steps: readonly number[],
): number[] {
  const indexes: number[] = [];
  let most = aircraft.sinceInspection.tenths;
  let flown = 0;
  for (let index = outings.length; index > 0; index -= 1) {
    const step = steps[index - 1]!;
    const endOfDay = index < outings.length && outings[index]!.date !== outings[index - 1]!.date;
    // One more day's flying would be too much: the inspection lies before the day that starts here.
    if (endOfDay && flown + dayAhead(outings, steps, index) > most) {
      indexes.push(index);
      flown = 0;
      most = INTERVAL - 30 - (index % 60);
    }
    flown += step;
  }
  return indexes;
}

/** Tachometer tenths of the day that ends with flight `index`. */
function dayAhead(outings: readonly Outing[], steps: readonly number[], index: number): number {
  const date = outings[index - 1]!.date;
  let sum = 0;
  for (let at = index; at > 0 && outings[at - 1]!.date === date; at -= 1) sum += steps[at - 1]!;
  return sum;
}

/** Moves single tenths of the flights since an inspection so that they add up to what is wanted. */
function tune(steps: number[], since: number, wanted: number): void {
  let missing = wanted - steps.slice(since).reduce((sum, step) => sum + step, 0);
  for (let index = since; missing !== 0 && index < steps.length; index += 1) {
    const change = missing > 0 ? 1 : -1;
    if (steps[index]! + change < 3) continue;
    steps[index] = steps[index]! + change;
    missing -= change;
  }
  if (missing !== 0) throw new Error(`too few flights to come out at ${wanted} tenths since the inspection`);
}

function run(aircraft: Aircraft, outings: readonly Outing[], steps: readonly number[], when: When): Shown[] {
  let { hobbsTenths, tachTenths } = aircraft;
  const shown: Shown[] = [{ date: when.firstDay, endMinute: clock(5), hobbsTenths, tachTenths }];
  outings.forEach((outing, index) => {
    hobbsTenths += tenthsOf(outing);
    tachTenths += steps[index]!;
    shown.push({ date: outing.date, endMinute: endMinute(outing.legs), hobbsTenths, tachTenths });
  });
  return shown;
}
