import type { LocalDate } from '../../rules/index.js';
import { MODELS, type ModelKey } from '../fleet/models.js';
import type { When } from '../when.js';
import type { PaperFile } from './paper-file.js';
import type { Person } from './person.js';
import type { Lesson } from './sign-offs.js';
import { teacherFor } from './teachers.js';

/** Complex, high performance and tailwheel: given the day before the first checkout that needs them. */
export function additionalTraining(file: PaperFile, people: readonly Person[]): void {
  const { person } = file;
  for (const kind of ['complex', 'high-performance', 'tailwheel'] as const) {
    const needing = person.story.models
      .map(({ model }) => model)
      .filter((model) => MODELS[model].endorsements.includes(kind));
    const first = needing
      .map((model): [LocalDate, ModelKey] => [person.checkedOut.get(model)!, model])
      .sort()[0];
    if (!first) continue;
    const [on, model] = first;
    file.rows.endorsements.push({
      ...file.paper(kind, on),
      kind,
      endorsed_on: on,
      make_model: null,
      airfields: [],
      expires_on: null,
      given_by: teacherFor(people, person, model, on, kind).id,
    });
  }
}

/** A recreational pilot's endorsement for flights within 50 nautical miles of home. */
export function nearHome(file: PaperFile, people: readonly Person[], when: When): void {
  const { person } = file;
  if (!person.story.nearHome) return;
  const on = when.daysAgo(640);
  file.rows.endorsements.push({
    ...file.paper('recreational-50nm', on),
    kind: 'recreational-50nm',
    endorsed_on: on,
    make_model: null,
    airfields: [],
    expires_on: null,
    given_by: teacherFor(people, person, 'sprig', on, 'near-home').id,
  });
}

/** A student's solo endorsement, and the lesson before it. */
export function solo(file: PaperFile, people: readonly Person[], lessons: Lesson[]): void {
  const { person } = file;
  if (!person.solo) return;
  const teacher = teacherFor(people, person, 'sprig', person.solo.from, 'solo');
  file.rows.endorsements.push({
    ...file.paper('solo', person.solo.from),
    kind: 'solo',
    endorsed_on: person.solo.from,
    make_model: MODELS.sprig.makeModel,
    airfields: [],
    expires_on: person.solo.through,
    given_by: teacher.id,
  });
  lessons.push({
    person,
    teacher,
    on: person.solo.from,
    models: ['sprig'],
    remarks: 'Pre-solo check; first solo endorsed',
  });
}
