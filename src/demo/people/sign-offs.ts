import type { LocalDate } from '../../rules/index.js';
import type { ModelKey } from '../fleet/models.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { CheckoutRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import type { Person } from './person.js';
import { isStudent } from './story.js';
import { flyableFrom, teacherFor } from './teachers.js';

/** A dual flight behind a signature: it must be in both logs on that day, in one of those models. */
export interface Lesson {
  person: Person;
  teacher: Person;
  on: LocalDate;
  models: ModelKey[];
  remarks: string;
}

/** Every member's club sign-offs, and the lessons of those signed within the 18 months. */
export function signOffs(
  people: readonly Person[],
  when: When,
  almanacId: string,
): { checkouts: CheckoutRow[]; lessons: Lesson[] } {
  const checkouts: CheckoutRow[] = [];
  const lessons: Lesson[] = [];
  const sign = (
    person: Person,
    of: {
      kind: CheckoutRow['kind'];
      on: LocalDate;
      models: ModelKey[];
      modelId?: string;
      aircraftId?: string;
      remarks: string;
    },
  ): void => {
    const shown = people.filter((one) => one.differencesOn !== null && one.differencesOn < of.on);
    const teacher = teacherFor(
      // A changed panel is shown by those who were shown it; the first of them by any other instructor.
      of.kind === 'differences' && shown.length > 0 ? shown : people,
      person,
      of.models[0]!,
      of.on,
      `${of.kind}/${of.modelId ?? ''}/${when.ago(of.on)}`,
    );
    checkouts.push({
      club_id: DEMO_CLUB_ID,
      id: demoId(person.id, of.kind, of.modelId ?? '', when.ago(of.on)),
      member_id: person.id,
      kind: of.kind,
      model_id: of.modelId ?? null,
      aircraft_id: of.aircraftId ?? null,
      signed_on: of.on,
      expires_on: null,
      signed_by: teacher.id,
      remarks: of.remarks,
      recorded_at: at(of.on, clock(22, 50)),
    });
    if (of.on >= when.firstDay) {
      lessons.push({ person, teacher, on: of.on, models: of.models, remarks: of.remarks });
    }
  };
  for (const person of people) {
    const { story } = person;
    if (isStudent(story)) {
      // Checked out and checked on the day of the solo endorsement; the lesson is told with it.
      if (person.solo) soloSignOffs(people, person, when).forEach((row) => checkouts.push(row));
      continue;
    }
    const models = story.models.map(({ model }) => model);
    for (const { model } of story.models) {
      sign(person, {
        kind: 'model',
        on: person.checkedOut.get(model)!,
        models: [model],
        modelId: demoId('model', model),
        remarks: 'Checkout in the model',
      });
    }
    // The check of this year and the one before it, some days short of a year apart.
    for (const daysAgo of [story.checkDaysAgo ?? 200, (story.checkDaysAgo ?? 200) + 352]) {
      const day = when.daysAgo(daysAgo);
      const held = models.filter((model) => person.checkedOut.get(model)! < day);
      if (held.length === 0 || day < person.joinedOn) continue;
      sign(person, { kind: 'annual-check', ...flyableFrom(held, day, when), remarks: 'Club check' });
    }
    if (person.differencesOn) {
      sign(person, {
        kind: 'differences',
        on: person.differencesOn,
        models: ['almanac'],
        modelId: demoId('model', 'almanac'),
        aircraftId: almanacId,
        remarks: 'Shown the electronic panel and its backup battery',
      });
    }
  }
  return { checkouts, lessons };
}

function soloSignOffs(people: readonly Person[], person: Person, when: When): CheckoutRow[] {
  const on = person.solo!.from;
  const teacher = teacherFor(people, person, 'sprig', on, 'solo');
  return (['model', 'annual-check'] as const).map((kind) => ({
    club_id: DEMO_CLUB_ID,
    id: demoId(person.id, kind, 'solo', when.ago(on)),
    member_id: person.id,
    kind,
    model_id: kind === 'model' ? demoId('model', 'sprig') : null,
    aircraft_id: null,
    signed_on: on,
    expires_on: null,
    signed_by: teacher.id,
    remarks: 'Before the first solo',
    recorded_at: at(on, clock(22, 50)),
  }));
}
