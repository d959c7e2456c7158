/** What the demo club's checkouts ask for, and how far some of its members are. */
import { scoreAll } from '../../checkouts/quiz/score.js';
import type { Letter } from '../../checkouts/quiz/question.entity.js';
import { MODELS } from '../fleet/models.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import type { DemoRows, MarkRow, QuestionRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { QUESTIONS } from './questions.js';
import { SYLLABI, type Syllabus } from './syllabi.js';

type CheckoutRows = Pick<
  DemoRows,
  | 'checkout_requirements'
  | 'checkout_versions'
  | 'checkout_items'
  | 'checkout_prerequisites'
  | 'checkout_transfers'
  | 'checkout_instructors'
  | 'checkout_marks'
  | 'quiz_questions'
  | 'quiz_attempts'
  | 'quiz_drawn'
  | 'quiz_results'
>;

const club = { club_id: DEMO_CLUB_ID };
const requirementId = (key: string): string => demoId('checkout-requirement', key);
const versionId = (key: string): string => demoId('checkout-version', key, 1);
const itemId = (key: string, title: string): string => demoId('checkout-item', key, 1, title);

/** How far somebody is: so many days ago, which items, by whom. The last may be one that is not there yet. */
interface Working {
  who: string;
  syllabus: string;
  teacher: string;
  done: readonly [daysAgo: number, titles: readonly string[]][];
  notYet?: readonly [daysAgo: number, title: string, note: string];
}

const WORKING: readonly Working[] = [
  {
    ...{ who: 'tobias', syllabus: 'sprig', teacher: 'iris' },
    done: [
      [33, ['Walk round', 'Slow flight']],
      [19, ['Stall, power off', 'Speeds from memory']],
      [8, ['Steep turns', 'Go-around']],
    ],
    notYet: [8, 'Landings', 'Flares high; the last of five was good'],
  },
  {
    ...{ who: 'ines', syllabus: 'night', teacher: 'iris' },
    done: [[12, ['Lights']]],
  },
  {
    ...{ who: 'hana', syllabus: 'lindle', teacher: 'lena' },
    done: [[15, ['Walk round', 'Speeds from memory', 'Slow flight', 'Steep turns', 'Gear check on final']]],
    notYet: [15, 'Gear by hand', 'Stopped pumping before the lights came on'],
  },
  {
    ...{ who: 'luis', syllabus: 'short-field', teacher: 'iris' },
    done: [
      [21, ['Distances worked out', 'Short-field take-off']],
      [5, ['Short-field landings']],
    ],
  },
];

export function checkoutRows(people: readonly Person[], when: When): CheckoutRows {
  const published = at(when.daysAgo(60), clock(18));
  const by = (key: string): Person => byKey(people, key);
  const publishedBy = people.find(({ story }) => story.roles?.includes('safety-officer'))!.id;
  const questions = questionRows(published);
  return {
    checkout_requirements: SYLLABI.map((one) => ({
      ...{
        ...club,
        id: requirementId(one.key),
        kind: kindOf(one),
        model_id: one.model ? MODELS[one.model].id : null,
      },
      ...{
        equipment_group: one.group ?? null,
        condition: one.condition ?? null,
        also_called: one.alsoCalled ?? [],
      },
      recorded_at: published,
    })),
    checkout_versions: SYLLABI.map((one) => ({
      ...{
        ...club,
        id: versionId(one.key),
        requirement_id: requirementId(one.key),
        number: 1,
        title: one.title,
      },
      ...{ good_days: one.goodDays, quiz_questions: one.quiz?.questions ?? null },
      ...{
        quiz_pass_percent: one.quiz?.passPercent ?? null,
        published_at: published,
        published_by: publishedBy,
      },
      recorded_at: published,
    })),
    checkout_items: SYLLABI.flatMap((one) =>
      one.items.map(({ title, standard, manoeuvre, extra }, index) => ({
        ...{ ...club, id: itemId(one.key, title), version_id: versionId(one.key), position: index + 1 },
        ...{ title, standard, manoeuvre: manoeuvre ?? null, required: extra !== true },
      })),
    ),
    checkout_prerequisites: SYLLABI.flatMap(({ key, first = [] }) =>
      first.map((one) => ({ ...club, version_id: versionId(key), requirement_id: requirementId(one) })),
    ),
    checkout_transfers: SYLLABI.flatMap(({ key, alsoModels = [] }) =>
      alsoModels.map((one) => ({ ...club, version_id: versionId(key), model_id: MODELS[one].id })),
    ),
    checkout_instructors: SYLLABI.flatMap(({ key, instructors = [] }) =>
      instructors.map((one) => ({ ...club, requirement_id: requirementId(key), member_id: by(one).id })),
    ),
    checkout_marks: WORKING.flatMap((one) => markRows(one, by(one.who), by(one.teacher), when)),
    quiz_questions: questions,
    ...quizRows(questions, by('tobias'), when),
  };
}

const kindOf = ({
  model,
  group,
  condition,
}: Syllabus): 'model' | 'equipment' | 'condition' | 'annual-check' =>
  model ? 'model' : group ? 'equipment' : condition ? 'condition' : 'annual-check';

function markRows(of: Working, person: Person, teacher: Person, when: When): MarkRow[] {
  const row = (daysAgo: number, title: string, outcome: MarkRow['outcome'], note: string): MarkRow => ({
    ...{ ...club, id: demoId(person.id, 'mark', of.syllabus, title, daysAgo), member_id: person.id },
    ...{ item_id: itemId(of.syllabus, title), outcome, marked_on: when.daysAgo(daysAgo) },
    ...{ signed_by: teacher.id, note, recorded_at: at(when.daysAgo(daysAgo), clock(20, 10)) },
  });
  const { notYet } = of;
  return [
    ...of.done.flatMap(([daysAgo, titles]) => titles.map((title) => row(daysAgo, title, 'signed', ''))),
    ...(notYet ? [row(notYet[0], notYet[1], 'not-yet', notYet[2])] : []),
  ];
}

function questionRows(recordedAt: string): QuestionRow[] {
  return Object.entries(QUESTIONS).flatMap(([key, questions]) =>
    questions.map(({ right, choices = [], ...rest }, index) => {
      const number = rest.kind === 'number' ? (right as [number, number, string]) : null;
      return {
        ...{
          ...club,
          id: demoId('quiz-question', key, index),
          requirement_id: requirementId(key),
          ...rest,
          choices,
        },
        ...{ right_letters: number ? [] : (right as string[]), right_value: number?.[0] ?? null },
        ...{
          tolerance: number?.[1] ?? null,
          unit: number?.[2] ?? null,
          state: 'published',
          recorded_at: recordedAt,
        },
      };
    }),
  );
}

/** A learner's first quiz, not passed: three of five. */
function quizRows(
  bank: readonly QuestionRow[],
  person: Person,
  when: When,
): Pick<CheckoutRows, 'quiz_attempts' | 'quiz_drawn' | 'quiz_results'> {
  const of = requirementId('sprig');
  const drawn = bank.filter(({ requirement_id }) => requirement_id === of).slice(1, 6);
  const [day, id] = [when.daysAgo(6), demoId(person.id, 'quiz', 'sprig')];
  const scored = scoreAll(
    drawn.map((one) => ({
      ...{ id: one.id, kind: one.kind, rightLetters: one.right_letters as Letter[] },
      ...{ rightValue: one.right_value, tolerance: one.tolerance },
    })),
    drawn.map((one, index) => ({
      ...{ questionId: one.id, chosen: (index < 3 ? one.right_letters : []) as Letter[] },
      value: one.right_value === null ? null : one.right_value + (index < 3 ? 0 : 10),
    })),
  );
  const right = scored.filter((one) => one.right).length;
  const handedIn = at(day, clock(19, 25));
  return {
    quiz_attempts: [
      {
        ...{ ...club, id, member_id: person.id, requirement_id: of, version_id: versionId('sprig') },
        ...{ started_at: at(day, clock(19)), recorded_at: at(day, clock(19)) },
      },
    ],
    quiz_drawn: drawn.map((one, index) => ({
      ...{ ...club, requirement_id: of, attempt_id: id, question_id: one.id, position: index + 1 },
    })),
    quiz_results: [
      {
        ...{ ...club, attempt_id: id, answers: scored, right_count: right, asked_count: drawn.length },
        ...{
          pass_percent: 80,
          passed: right * 100 >= 80 * drawn.length,
          handed_in_at: handedIn,
          recorded_at: handedIn,
        },
      },
    ],
  };
}
