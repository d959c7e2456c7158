import { addDays, type LocalDate } from '../../rules/index.js';
import { Draw } from '../draw.js';
import { FLEET, inService } from '../fleet/aircraft.js';
import { MODELS, type ModelKey } from '../fleet/models.js';
import type { When } from '../when.js';
import type { Person } from './person.js';

/** May this instructor teach in the model on that date? */
export function mayTeach(teacher: Person, model: ModelKey, on: LocalDate): boolean {
  const { instructor } = teacher.story;
  if (!instructor || instructor.experienceMonthsAgo > 24 || teacher.joinedOn > on) return false;
  const needed = MODELS[model].multiEngine ? 'airplane-multiengine' : 'airplane-single-engine';
  if (!instructor.ratings.includes(needed)) return false;
  const since = teacher.checkedOut.get(model);
  return since !== undefined && since <= on;
}

/**
 * An instructor for a sign-off in the model, never the member's own; the same for the same member and occasion. Years
 * back, before today's instructors were checked out themselves, any of them stands for whoever signed then.
 */
export function teacherFor(
  people: readonly Person[],
  member: Person,
  model: ModelKey,
  on: LocalDate,
  occasion: string,
): Person {
  const others = people.filter((one) => one !== member);
  const able = others.filter((one) => mayTeach(one, model, on));
  const draw = new Draw(`${member.id}/${occasion}`);
  return draw.pick(able.length > 0 ? able : others.filter((one) => one.story.instructor));
}

/**
 * The first day from `on` on which an aircraft of one of the models was there to be flown, and the models with one, the
 * others left out. Before the 18 months every model was.
 */
export function flyableFrom(
  models: readonly ModelKey[],
  on: LocalDate,
  when: When,
): { on: LocalDate; models: ModelKey[] } {
  for (let day = on; day < when.today; day = addDays(day, 1)) {
    const there = models.filter((model) =>
      FLEET.some((one) => one.model === model && inService(one, when.ago(day))),
    );
    if (there.length > 0) return { on: day, models: there };
  }
  throw new Error(`none of ${models.join(', ')} could be flown from ${on}`);
}
