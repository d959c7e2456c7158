/** Six weeks of flights members would like to book. Nothing overlaps; whether a wish becomes a booking is the engine's say. */
import {
  addDays,
  plusSeconds,
  toInstant,
  toSeconds,
  type Instant,
  type LocalDate,
} from '../../rules/index.js';
import { Draw } from '../draw.js';
import { aircraftBy, FLEET, type Aircraft } from '../fleet/aircraft.js';
import { MODELS, type ModelKey } from '../fleet/models.js';
import type { FlightAsk } from '../flight-ask.js';
import { demoId } from '../ids.js';
import { mayTake, type Person } from '../people/person.js';
import { isStudent } from '../people/story.js';
import { mayTeach } from '../people/teachers.js';
import type { FlightWish } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { daylight } from './daylight.js';
import { legsFor } from './legs.js';
import { endMinute, type Leg, type Outing } from './outing.js';
import { busyness } from './season.js';

/** Days ahead that are filled. */
export const DAYS_AHEAD = 42;
/** Flights wished for on a middling day in September. */
const MEAN = 6;
/** Time on the ground before and after the planned flight, minutes. */
const GROUND = 30;

/** Hours left over at the end of the weeks ahead, for whoever tries the demo; in tenths. */
const SPARE = 180;

/** Time somebody or something is taken up. */
export interface Taken {
  ids: readonly string[];
  from: Instant;
  to: Instant;
}

export function flightWishes(
  seed: string,
  people: readonly Person[],
  outings: readonly Outing[],
  taken: readonly Taken[],
  when: When,
): FlightWish[] {
  const planner = new Planner(people, lastLandings(outings), taken, when);
  for (let ahead = 1; ahead <= DAYS_AHEAD; ahead += 1) {
    const draw = new Draw(`${seed}/ahead/${ahead}`);
    const date = addDays(when.today, ahead);
    for (let left = busyness(date, MEAN, draw) + 1; left > 0; left -= 1) planner.wish(date, draw);
  }
  return planner.wishes.sort((a, b) => (`${a.ask.departs}${a.id}` < `${b.ask.departs}${b.id}` ? -1 : 1));
}

/** Newest date of a landing by member and model. */
function lastLandings(outings: readonly Outing[]): Map<string, LocalDate> {
  const last = new Map<string, LocalDate>();
  for (const { pilot, aircraft, date } of outings) last.set(`${pilot.id}|${aircraft.model}`, date);
  return last;
}

class Planner {
  readonly wishes: FlightWish[] = [];
  private readonly taken: Taken[];
  private readonly planned = new Map<string, number>();

  constructor(
    private readonly people: readonly Person[],
    private readonly landed: ReadonlyMap<string, LocalDate>,
    taken: readonly Taken[],
    private readonly when: When,
  ) {
    this.taken = [...taken];
  }

  wish(date: LocalDate, draw: Draw): void {
    const willing = this.people.filter((one) => !one.story.standing && !one.story.quietDays);
    const person = draw.weighted(willing, (one) => one.story.rate);
    if (!person || this.wishes.some((one) => one.memberId === person.id && one.ask.departs.startsWith(date)))
      return;
    const model = isStudent(person.story)
      ? 'sprig'
      : draw.weighted(
          person.story.models.map((one) => one.model).filter((one) => this.opens(person, one)),
          (one) => 4 - person.story.models.findIndex(({ model }) => model === one),
        );
    if (!model) return;
    const dual = this.needsTeacher(person, model, date) || draw.chance(0.12);
    const teachers = dual
      ? draw.shuffle(this.people.filter((one) => one !== person && mayTeach(one, model, date)))
      : [];
    if (dual && teachers.length === 0) return;
    const legs = legsFor(
      draw,
      dual ? 'lesson' : person.story.trips && draw.chance(0.35) ? 'trip' : 'local',
      model,
    );
    this.place(person, model, teachers, dual, legs, date, draw);
  }

  private opens(person: Person, model: ModelKey): boolean {
    return mayTake(person, model, this.when.today) && (model !== 'almanac' || person.differencesOn !== null);
  }

  private needsTeacher(person: Person, model: ModelKey, date: LocalDate): boolean {
    if (isStudent(person.story)) return person.solo === null || date > person.solo.through;
    const last = this.landed.get(`${person.id}|${model}`);
    return last === undefined || this.when.ago(last) - this.when.ago(date) > 58;
  }

  private place(
    person: Person,
    model: ModelKey,
    teachers: Person[],
    dual: boolean,
    legs: Leg[],
    date: LocalDate,
    draw: Draw,
  ): void {
    const length = endMinute(legs) + GROUND;
    const { sunrise, sunset } = daylight(date);
    const latest = Math.min(clock(19), sunset - 20) - length;
    const hours = legs.reduce((sum, leg) => sum + leg.tenths, 0);
    for (const aircraft of this.fleetFor(model, dual, draw)) {
      if (!this.hasHours(aircraft, hours, date)) continue;
      for (let attempt = 0; attempt < 12; attempt += 1) {
        const earliest = Math.ceil(Math.max(clock(7), sunrise + 20) / 15);
        const start = draw.int(earliest, Math.max(earliest, Math.floor(latest / 15))) * 15;
        const from = at(date, start);
        const to = plusSeconds(from, Math.ceil(length / 15) * 900);
        if (![aircraft.id, person.id].every((id) => this.isFree(id, from, to))) continue;
        const teacher = teachers.find((one) => this.isFree(one.id, from, to)) ?? null;
        if (dual && !teacher) continue;
        this.add(person, aircraft, teacher, legs, from, to, draw);
        return;
      }
    }
  }

  /** Lessons go to the trainer with hours left; own flying to the other one first. */
  private fleetFor(model: ModelKey, dual: boolean, draw: Draw): Aircraft[] {
    if (model === 'sprig')
      return dual ? [aircraftBy('sprig-2')] : [aircraftBy('sprig-1'), aircraftBy('sprig-2')];
    return draw.shuffle(FLEET.filter((one) => one.model === model && one.key !== 'lindle'));
  }

  /** Spreads what is left until the next inspection by hours over the weeks, so that the first do not use it up. */
  private hasHours(aircraft: Aircraft, tenths: number, date: LocalDate): boolean {
    if (aircraft.sinceInspection.exactly) return true;
    const left = 1000 - aircraft.sinceInspection.tenths - SPARE;
    const share = -this.when.ago(date) / DAYS_AHEAD;
    return (this.planned.get(aircraft.key) ?? 0) + tenths <= left * share;
  }

  private isFree(id: string, from: Instant, to: Instant): boolean {
    return this.taken.every((one) => !one.ids.includes(id) || one.to <= from || one.from >= to);
  }

  private add(
    person: Person,
    aircraft: Aircraft,
    teacher: Person | null,
    legs: Leg[],
    from: Instant,
    to: Instant,
    draw: Draw,
  ): void {
    const tenths = legs.reduce((sum, leg) => sum + leg.tenths, 0);
    this.planned.set(aircraft.key, (this.planned.get(aircraft.key) ?? 0) + tenths);
    const seats = MODELS[aircraft.model].seats;
    const alone = isStudent(person.story) || person.story.level === 'recreational' || draw.chance(0.4);
    const aboard = teacher ? 2 : alone ? 1 : draw.int(2, seats);
    const ask: FlightAsk = {
      memberId: person.id,
      departs: from,
      arrives: to,
      purpose: teacher ? 'dual' : aboard > 1 ? 'passengers' : 'solo',
      personsOnBoard: aboard,
      ...(teacher ? { instructorId: teacher.id } : {}),
      route: [legs[0]!.from.code, ...legs.map((leg) => leg.to.code)],
      plannedHours: tenths / 10,
      airspace: ['E', 'G'],
      maxAltitudeFtMsl: 9500,
      maxSpeedKias: 150,
      usesVor: false,
      usesTransponder: aircraft.key !== 'wicket',
    };
    const id = demoId('wish', aircraft.key, toInstant(toSeconds(from)));
    this.wishes.push({
      id,
      memberId: person.id,
      instructorId: teacher?.id ?? null,
      aircraftId: aircraft.id,
      ask,
    });
    this.taken.push({ ids: [aircraft.id, person.id, ...(teacher ? [teacher.id] : [])], from, to });
  }
}
