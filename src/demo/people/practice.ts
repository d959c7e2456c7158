import { judgeManoeuvre, type Measure, type Task } from '../../practice/tolerances/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { PracticeRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import type { Person } from './person.js';

/** What was flown so many days ago. */
interface Flown {
  daysAgo: number;
  manoeuvre: Task;
  measured?: Partial<Record<Measure, [least: number, most: number]>>;
  /** Signed by an instructor, to standard. */
  signed?: boolean;
  night?: boolean;
  crosswindKt?: number;
  note?: string;
}

const TURN: Flown['measured'] = {
  altitudeDevFt: [-70, 40],
  airspeedDevKt: [-5, 7],
  bankDeg: [42, 49],
  rolloutDevDeg: [-6, 4],
};

/** A pilot whose steep turns are fresh, whose stalls fade, and who has not landed in a crosswind for long. */
const FLOWN: readonly Flown[] = [
  { daysAgo: 74, manoeuvre: 'steep_turn', measured: TURN },
  { daysAgo: 33, manoeuvre: 'steep_turn', measured: { ...TURN, altitudeDevFt: [-160, 20] } },
  { daysAgo: 12, manoeuvre: 'steep_turn', measured: TURN, note: 'Left and right, smooth air' },
  { daysAgo: 40, manoeuvre: 'power_off_stall_straight', signed: true },
  { daysAgo: 12, manoeuvre: 'normal_landing', signed: true, note: 'Three, all within the first third' },
  { daysAgo: 150, manoeuvre: 'normal_landing', signed: true, crosswindKt: 9 },
  { daysAgo: 61, manoeuvre: 'normal_landing', signed: true, night: true },
  { daysAgo: 61, manoeuvre: 'go_around', signed: true, night: true },
  { daysAgo: 20, manoeuvre: 'short_field_landing', measured: { touchdownBeyondPointFt: [0, 260] } },
];

/** Whose practice is shown; what they flew is the same invention. */
const SHOWN = ['ada', 'hana'];

/** Practice of two of the cast; an instructor of the club signed what is signed. */
export function practiceRows(people: readonly Person[], when: When): PracticeRow[] {
  const teacher = people.find(({ story }) => story.instructor)!;
  const shown = people.filter(({ story }) => SHOWN.includes(story.key));
  return shown.flatMap((person) => FLOWN.map((one, index) => row(person, teacher, one, index, when)));
}

function row(person: Person, teacher: Person, one: Flown, index: number, when: When): PracticeRow {
  const on = when.daysAgo(one.daysAgo);
  const measured = Object.fromEntries(
    Object.entries(one.measured ?? {}).map(([measure, [least, most]]) => [measure, { least, most }]),
  );
  const verdict = judgeManoeuvre('private', one.manoeuvre, measured, on);
  const signed = one.signed === true;
  return {
    ...{ club_id: DEMO_CLUB_ID, id: demoId(person.id, 'practice', index, one.daysAgo) },
    ...{ member_id: person.id, flown_on: on, manoeuvre: one.manoeuvre, level: 'private' },
    ...{ seen_by: signed ? 'instructor' : 'self', instructor_id: signed ? teacher.id : null },
    recorded_by: signed ? teacher.id : person.id,
    ...{ crosswind_kt: one.crosswindKt ?? null, night: one.night ?? false, measured },
    ...{
      to_standard: signed ? true : null,
      verdict,
      within: verdict.status === 'judged' ? verdict.within : null,
    },
    ...{ note: one.note ?? '', recorded_at: at(on, clock(21, 30)) },
  };
}
