import type { LocalDate } from '../../rules/index.js';
import { DEFERRED_DAYS_AGO, FLEET, inService, type Aircraft } from '../fleet/aircraft.js';
import type { ModelKey } from '../fleet/models.js';
import type { Draw } from '../draw.js';
import type { Person } from '../people/person.js';
import { mayTeach } from '../people/teachers.js';
import { isStudent } from '../people/story.js';
import { clock, type When } from '../when.js';
import { daylight } from './daylight.js';
import { legsFor, type FlightKind } from './legs.js';
import { endMinute, type Leg, type Outing } from './outing.js';
import { Roster } from './roster.js';

/** A flight to find a place for. */
export interface Wanted {
  date: LocalDate;
  person: Person;
  /** The first of them with an aircraft free. */
  models: readonly ModelKey[];
  kind: FlightKind;
  /** Instructors who would do, the first free one is taken; empty for a flight without one. */
  teachers: readonly Person[];
  landings?: number;
  approaches?: number;
  remarks?: string;
}

/** Minutes kept free before and after a flight. */
const BEFORE = 10;
const AFTER = 20;

/** Puts flights on the calendar of the past so that nobody and nothing is in two places. */
export class Scheduler {
  readonly outings: Outing[] = [];
  readonly roster = new Roster();
  private readonly landed = new Map<string, LocalDate>();

  constructor(private readonly when: When) {}

  /** Places a flight, or answers null when nothing is free for it that day. */
  place(wanted: Wanted, draw: Draw): Outing | null {
    for (const model of wanted.models) {
      const legs = legsFor(draw, wanted.kind, model, wanted);
      const teachers = wanted.teachers.filter((one) => mayTeach(one, model, wanted.date));
      if (wanted.teachers.length > 0 && teachers.length === 0) continue;
      const starts = draw.shuffle(this.starts(wanted, endMinute(legs)));
      for (const aircraft of draw.shuffle(this.aircraftFor(model, wanted))) {
        for (const start of starts) {
          const from = start - BEFORE;
          const to = start + endMinute(legs) + AFTER;
          if (!this.roster.isFree(aircraft.id, wanted.date, from, to)) continue;
          if (!this.roster.isFree(wanted.person.id, wanted.date, from, to)) continue;
          const teacher = teachers.find((one) => this.roster.isFree(one.id, wanted.date, from, to)) ?? null;
          if (wanted.teachers.length > 0 && teacher === null) continue;
          return this.add(wanted, aircraft, teacher, legs, start, [from, to]);
        }
      }
    }
    return null;
  }

  /** Days since the member last landed the model; null when never within the 18 months. */
  daysSinceLanding(person: Person, model: ModelKey, date: LocalDate): number | null {
    const last = this.landed.get(`${person.id}|${model}`);
    return last === undefined ? null : this.when.ago(last) - this.when.ago(date);
  }

  private aircraftFor(model: ModelKey, wanted: Wanted): Aircraft[] {
    const ago = this.when.ago(wanted.date);
    return FLEET.filter(
      (one) =>
        one.model === model &&
        inService(one, ago) &&
        !(wanted.kind === 'night' && one.key === 'sprig-2' && ago <= DEFERRED_DAYS_AGO),
    );
  }

  private starts(wanted: Wanted, length: number): number[] {
    const { sunrise, sunset, dark } = daylight(wanted.date);
    const [first, last] =
      wanted.kind === 'night'
        ? [dark + 8, clock(23, 15) - length]
        : [Math.max(clock(7), sunrise + 15), Math.min(clock(19, 30), sunset - 15 - length)];
    const starts: number[] = [];
    for (let start = Math.ceil(first / 5) * 5; start <= last; start += 5) starts.push(start);
    return starts;
  }

  private add(
    wanted: Wanted,
    aircraft: Aircraft,
    teacher: Person | null,
    legs: Leg[],
    start: number,
    [from, to]: [number, number],
  ): Outing {
    const { date, person } = wanted;
    const outing: Outing = {
      date,
      aircraft,
      pilot: person,
      role: teacher ? 'dual-received' : isStudent(person.story) ? 'solo' : 'pilot-in-command',
      teacher,
      legs: legs.map((leg) => ({ ...leg, startMinute: leg.startMinute + start })),
      remarks: wanted.remarks ?? '',
    };
    this.outings.push(outing);
    for (const id of [aircraft.id, person.id, ...(teacher ? [teacher.id] : [])])
      this.roster.take(id, date, from, to);
    const key = `${person.id}|${aircraft.model}`;
    const before = this.landed.get(key);
    if (before === undefined || before < date) this.landed.set(key, date);
    return outing;
  }
}
