/** The 18 months of flights: first those a story or a signature needs, then, day by day, what a club flies. */
import { addDays, type LocalDate } from '../../rules/index.js';
import { Draw } from '../draw.js';
import { CONVERSION } from '../fleet/aircraft.js';
import { MODELS, type ModelKey } from '../fleet/models.js';
import { mayTake, type Person } from '../people/person.js';
import type { Lesson } from '../people/sign-offs.js';
import { isStudent, mustsOf } from '../people/story.js';
import type { When } from '../when.js';
import type { FlightKind } from './legs.js';
import type { Outing } from './outing.js';
import { Scheduler } from './scheduler.js';
import { busyness } from './season.js';

/** Flights wanted on a middling day in September. */
const MEAN = 5.2;
/** Days without a landing in the model after which the next flight in it is with an instructor (club policy 3.2). */
const RUSTY_DAYS = 60;

/** How many days earlier than told a flight may be placed. */
const DAYS_EARLIER = Array.from({ length: 17 }, (_none, days) => days);

/** All outings, in the order flown. */
export function history(
  seed: string,
  people: readonly Person[],
  lessons: readonly Lesson[],
  when: When,
): Outing[] {
  const scheduler = new Scheduler(when);
  placeLessons(scheduler, seed, lessons, when);
  placeMusts(scheduler, seed, people, when);
  const members = new Members(scheduler, people, when);
  for (let date = when.firstDay; date < when.today; date = addDays(date, 1)) {
    const draw = new Draw(`${seed}/day/${when.ago(date)}`);
    for (let left = busyness(date, MEAN, draw); left > 0; left -= 1) members.fly(date, draw);
  }
  const order = (one: Outing): string =>
    `${one.date} ${String(one.legs[0]!.startMinute).padStart(4, '0')} ${one.aircraft.key}`;
  return scheduler.outings.sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

function placeLessons(scheduler: Scheduler, seed: string, lessons: readonly Lesson[], when: When): void {
  for (const { person, teacher, on, models, remarks } of lessons) {
    const draw = new Draw(`${seed}/lesson/${person.story.key}/${when.ago(on)}`);
    const placed = scheduler.place(
      { date: on, person, models, kind: 'lesson', teachers: [teacher], remarks },
      draw,
    );
    if (!placed) throw new Error(`no room for "${remarks}" of ${person.story.name} on ${on}`);
  }
}

function placeMusts(scheduler: Scheduler, seed: string, people: readonly Person[], when: When): void {
  for (const person of people) {
    const firstIfr = person.story.models.find(({ model }) => MODELS[model].ifr)?.model;
    for (const must of mustsOf(person.story, when.span, firstIfr)) {
      const draw = new Draw(`${seed}/must/${person.story.key}/${must.daysAgo}`);
      const teachers = people.filter((one) => one.story.key === must.with);
      const { landings, approaches } = must;
      const wanted = { person, models: [must.model], kind: must.what, teachers, landings, approaches };
      // When the day is full, or the aircraft away, on the last day before that will do.
      const placed = DAYS_EARLIER.some((earlier) =>
        scheduler.place({ ...wanted, date: when.daysAgo(must.daysAgo + earlier) }, draw),
      );
      if (!placed) throw new Error(`no room for the ${must.what} of ${person.story.name}`);
    }
  }
}

/** Picks who flies, what and how, the way each member's story goes. */
class Members {
  constructor(
    private readonly scheduler: Scheduler,
    private readonly people: readonly Person[],
    private readonly when: When,
  ) {}

  fly(date: LocalDate, draw: Draw): void {
    const ago = this.when.ago(date);
    const free = this.people.filter(
      (one) =>
        one.joinedOn < date &&
        ago > (one.story.quietDays ?? 0) &&
        this.scheduler.roster.isIdle(one.id, date) &&
        // Nobody flies in arrears or suspended.
        ago > (one.story.standing?.daysAgo ?? 0),
    );
    const person = draw.weighted(free, (one) => one.story.rate);
    if (!person) return;
    if (isStudent(person.story)) this.study(person, date, draw);
    else this.outing(person, date, draw);
  }

  private study(person: Person, date: LocalDate, draw: Draw): void {
    const { solo } = person;
    const alone = solo !== null && date > solo.from && date <= solo.through && draw.chance(0.5);
    const kind = alone ? 'local' : 'lesson';
    const teachers = alone ? [] : draw.shuffle(this.teachers(person));
    this.scheduler.place({ date, person, models: ['sprig'], kind, teachers, landings: draw.int(3, 6) }, draw);
  }

  private outing(person: Person, date: LocalDate, draw: Draw): void {
    const { story } = person;
    const choice = draw.weighted(
      story.models.filter(({ model }) => this.opens(person, model, date)),
      ({ model }) => 4 - story.models.findIndex((one) => one.model === model),
    );
    if (!choice) return;
    const { model } = choice;
    const since = this.scheduler.daysSinceLanding(person, model, date);
    const early = this.when.span - this.when.ago(date) <= RUSTY_DAYS;
    const rusty = since === null ? !early : since > RUSTY_DAYS;
    const dual = !mayTake(person, model, date) || rusty || draw.chance(0.07);
    const teachers = dual ? draw.shuffle(this.teachers(person)) : [];
    const kind = dual ? 'lesson' : kindFor(person, model, draw);
    this.scheduler.place({ date, person, models: [model], kind, teachers }, draw);
  }

  /** The weeks of training before a checkout open a model too; a changed panel closes it until it was shown. */
  private opens(person: Person, model: ModelKey, date: LocalDate): boolean {
    const since = person.checkedOut.get(model);
    if (since === undefined || date < addDays(since, -45)) return false;
    if (model !== 'almanac' || this.when.ago(date) > CONVERSION.beganDaysAgo) return true;
    return person.differencesOn !== null && person.differencesOn <= date;
  }

  private teachers(learner: Person): Person[] {
    return this.people.filter((one) => one !== learner && one.story.instructor);
  }
}

function kindFor(person: Person, model: ModelKey, draw: Draw): FlightKind {
  const { night, trips, approaches } = person.story;
  if (approaches && MODELS[model].ifr && draw.chance(0.3)) return 'approaches';
  if (night && MODELS[model].night && draw.chance(0.15)) return 'night';
  return trips && draw.chance(0.35) ? 'trip' : 'local';
}
