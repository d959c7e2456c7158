import { throughCalendarMonths, addDays, type LocalDate } from '../../rules/index.js';
import type { ModelKey } from '../fleet/models.js';
import { demoId } from '../ids.js';
import type { When } from '../when.js';
import { INSTRUMENT_PILOTS } from './cast-instrument.js';
import { STUDENTS } from './cast-students.js';
import { PILOTS } from './cast.js';
import { crowd } from './crowd.js';
import { INSTRUCTORS, OFFICERS } from './officers.js';
import type { Story } from './story.js';

/** A member with the dates that the club's flying depends on. */
export interface Person {
  story: Story;
  id: string;
  email: string;
  birthDate: LocalDate;
  joinedOn: LocalDate;
  /** Since when checked out in a model. */
  checkedOut: ReadonlyMap<ModelKey, LocalDate>;
  differencesOn: LocalDate | null;
  /** A student's solo endorsement: first and last day. */
  solo: { from: LocalDate; through: LocalDate } | null;
}

/** Everybody, in the order of the member list: officers, instructors, the cast, the crowd. */
export function everybody(seed: string, when: When): Person[] {
  const stories = [...OFFICERS, ...INSTRUCTORS, ...STUDENTS, ...PILOTS, ...INSTRUMENT_PILOTS, ...crowd(seed)];
  return stories.map((story) => personOf(story, seed, when));
}

function personOf(story: Story, seed: string, when: When): Person {
  const id = demoId(seed, 'member', story.key);
  const soloFrom = story.soloDaysAgo === undefined ? null : when.daysAgo(story.soloDaysAgo);
  return {
    story,
    id,
    email: `${story.name.toLowerCase().replace(/[^a-z]+/g, '.')}@quillmesa.example`,
    // Some months and days past the birthday, the same for the same person.
    birthDate: addDays(when.monthsAgo(story.age * 12 + 1 + (Number.parseInt(id.slice(0, 4), 16) % 10)), -3),
    joinedOn: when.inMonth(story.joinedMonthsAgo, 12),
    checkedOut: new Map(story.models.map(({ model, daysAgo }) => [model, when.daysAgo(daysAgo)])),
    differencesOn: story.differencesDaysAgo === undefined ? null : when.daysAgo(story.differencesDaysAgo),
    solo: soloFrom === null ? null : { from: soloFrom, through: addDays(soloFrom, 90) },
  };
}

/** Who has the part of this key in the demo's story. */
export const byKey = (people: readonly Person[], key: string): Person =>
  people.find(({ story }) => story.key === key)!;

/** May the member take the model alone on that date, as far as checkouts go? */
export function mayTake(person: Person, model: ModelKey, on: LocalDate): boolean {
  const since = person.checkedOut.get(model);
  return since !== undefined && since <= on;
}

/** The day in its month of the newest medical, so that it ends when the story says. */
export function medicalExamOn(person: Person, when: When): LocalDate | null {
  const medical = person.story.medical;
  if (!medical) return null;
  if (medical.monthsAgo !== 'runs-out-soon') return when.inMonth(medical.monthsAgo, 14);
  return throughCalendarMonths(when.today, when.monthsToSoonEnd - 24).slice(0, 8) + '11';
}
