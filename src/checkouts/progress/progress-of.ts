/** How far a member is with one checkout. Plain data in and out: no database, no clock. */
import { addDays, type LocalDate } from '../../rules/calendar/dates.js';
import { plusSeconds, type Instant } from '../../rules/calendar/instants.js';
import type { InForce, Item } from '../requirements/read-requirements.js';
import { sameSubject, type Subject } from '../subjects.js';

/** An item as an instructor saw it, of those that stand. `spent`: a sign-off rests on it already. */
export interface Mark {
  id: string;
  memberId: string;
  requirementId: string;
  differenceId: string | null;
  /** What the item said when it was signed; an item of another version that says the same is the same. */
  item: Pick<Item, 'title' | 'standard' | 'manoeuvre'>;
  outcome: 'signed' | 'not-yet';
  on: LocalDate;
  signedBy: { id: string; name: string };
  note: string;
  spent: boolean;
}

/** A sign-off that was not taken back. */
export interface SignOff extends Subject {
  id: string;
  memberId: string;
  aircraftId: string | null;
  on: LocalDate;
  expiresOn: LocalDate | null;
  signedBy: { id: string; name: string };
}

/** A quiz begun, and what came of it. */
export interface Attempt {
  id: string;
  memberId: string;
  requirementId: string;
  /** Null while it is not handed in. */
  result: { percent: number; handedInAt: Instant; on: LocalDate } | null;
  spent: boolean;
}

/** A change of an aircraft's equipment that a member has to be shown. */
export interface OpenDifference {
  id: string;
  memberId: string;
  aircraftId: string;
  registration: string;
  title: string;
  since: LocalDate;
  equipmentGroup: string;
}

/** What is known of one member. */
export interface Known {
  marks: readonly Mark[];
  signOffs: readonly SignOff[];
  attempts: readonly Attempt[];
}

/** When it is asked, and by what policy. */
export interface Asked {
  today: LocalDate;
  now: Instant;
  quizWaitHours: number;
  endingDays: number;
  likeModels: boolean;
}

export type ItemState = 'open' | 'signed' | 'not-yet';
export type ProgressState = 'not-begun' | 'in-progress' | 'ready' | 'standing' | 'ending' | 'ended';

/** A sign-off that counts, and whether it is one for a like model. */
export interface Standing {
  signOff: SignOff;
  likeModel: boolean;
}

export interface QuizProgress {
  state: 'passed' | 'open' | 'wait' | 'to-do';
  bestPercent: number | null;
  openAttemptId: string | null;
  notBefore: Instant | null;
  passedOn: LocalDate | null;
}

/** How far it is. */
export interface Progress {
  state: ProgressState;
  standing: Standing | null;
  items: { item: Item; state: ItemState; mark: Mark | null }[];
  itemsLeft: number;
  quiz: QuizProgress | null;
  prerequisites: { requirementId: string; title: string; standing: boolean }[];
  /** Everything asked for is there, for a sign-off of today. */
  ready: boolean;
}

/** The sign-off of a subject that lasts longest; a like model's counts where the club lets it. Null: none. */
export function standingFor(
  subject: Subject,
  { signOffs }: Pick<Known, 'signOffs'>,
  inForce: readonly InForce[],
  { today, likeModels }: Pick<Asked, 'today' | 'likeModels'>,
  alsoEnded = false,
): Standing | null {
  const like = new Set(
    inForce
      .filter(({ version }) => likeModels && version.alsoModels.some(({ id }) => id === subject.modelId))
      .map(({ modelId }) => modelId),
  );
  const counting = signOffs
    .filter(({ on, expiresOn }) => on <= today && (alsoEnded || expiresOn === null || expiresOn >= today))
    .flatMap((signOff): Standing[] => {
      if (sameSubject(signOff, subject)) return [{ signOff, likeModel: false }];
      const isLike = subject.kind === 'model' && signOff.kind === 'model' && like.has(signOff.modelId);
      return isLike ? [{ signOff, likeModel: true }] : [];
    });
  const order = ({ signOff, likeModel }: Standing): string =>
    `${signOff.expiresOn ?? '9999-12-31'} ${likeModel ? 0 : 1} ${signOff.on} ${signOff.id}`;
  return counting.sort((a, b) => (order(a) < order(b) ? 1 : -1))[0] ?? null;
}

const sameItem = (a: Mark['item'], b: Mark['item']): boolean =>
  a.title === b.title && a.standard === b.standard && a.manoeuvre === b.manoeuvre;

/** What is signed as long ago as a sign-off lasts does not count any more. */
const fresh = (on: LocalDate, goodDays: number | null, today: LocalDate): boolean =>
  goodDays === null || addDays(on, goodDays) >= today;

/** How far a member is with a checkout, or with being shown a change under the requirement of its group. */
export function progressOf(
  requirement: InForce,
  known: Known,
  inForce: readonly InForce[],
  asked: Asked,
  differenceId: string | null = null,
): Progress {
  const { version } = requirement;
  const { today } = asked;
  const marks = known.marks
    .filter((one) => one.requirementId === requirement.id && one.differenceId === differenceId && !one.spent)
    .filter(({ on }) => fresh(on, version.goodDays, today))
    .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1));
  const items = version.items.map((item) => {
    const mark = marks.find((one) => sameItem(one.item, item)) ?? null;
    return { item, mark, state: mark?.outcome ?? ('open' as const) };
  });
  const itemsLeft = items.filter(({ item, state }) => item.required && state !== 'signed').length;
  const quiz = quizOf(requirement, known, asked, differenceId);
  const prerequisites = version.prerequisites.map(({ requirementId, title }) => {
    const of = inForce.find(({ id }) => id === requirementId);
    return {
      requirementId,
      title,
      standing: of !== undefined && standingFor(of, known, inForce, asked) !== null,
    };
  });
  const ready =
    itemsLeft === 0 &&
    (quiz === null || quiz.state === 'passed') &&
    prerequisites.every(({ standing }) => standing);
  const standing = differenceId === null ? standingFor(requirement, known, inForce, asked) : null;
  const ended =
    differenceId === null && standing === null ? standingFor(requirement, known, inForce, asked, true) : null;
  const begun = items.some(({ mark }) => mark !== null) || (quiz !== null && quiz.state !== 'to-do');
  return {
    ...{ standing: standing ?? ended, items, itemsLeft, quiz, prerequisites, ready },
    state: standing
      ? isEnding(standing, asked)
        ? 'ending'
        : 'standing'
      : ready
        ? 'ready'
        : begun
          ? 'in-progress'
          : ended
            ? 'ended'
            : 'not-begun',
  };
}

const isEnding = ({ signOff: { expiresOn } }: Standing, { today, endingDays }: Asked): boolean =>
  expiresOn !== null && expiresOn <= addDays(today, endingDays);

function quizOf(
  { id, version }: InForce,
  known: Known,
  { today, now, quizWaitHours }: Asked,
  differenceId: string | null,
): QuizProgress | null {
  if (version.quiz === null) return null;
  const { passPercent } = version.quiz;
  const mine = known.attempts.filter(({ requirementId }) => requirementId === id);
  const counting = mine.flatMap(({ result, spent }) =>
    // Being shown a change needs no second quiz while the first is fresh.
    result && (differenceId !== null || !spent) && fresh(result.on, version.goodDays, today) ? [result] : [],
  );
  const bestPercent = counting.length === 0 ? null : Math.max(...counting.map(({ percent }) => percent));
  const passed = counting
    .filter(({ percent }) => percent >= passPercent)
    .sort((a, b) => (a.handedInAt < b.handedInAt ? 1 : -1))[0];
  const open = mine.find(({ result }) => result === null);
  const last = counting
    .map(({ handedInAt }) => handedInAt)
    .sort()
    .at(-1);
  const notBefore = last === undefined ? null : hoursAfter(last, quizWaitHours);
  const waits = notBefore !== null && notBefore > now;
  return {
    state: passed ? 'passed' : open ? 'open' : waits ? 'wait' : 'to-do',
    bestPercent,
    openAttemptId: open?.id ?? null,
    notBefore: !passed && !open && waits ? notBefore : null,
    passedOn: passed?.on ?? null,
  };
}

const hoursAfter = (instant: Instant, hours: number): Instant =>
  plusSeconds(instant, Math.round(hours * 3600));

/** The words of what is still missing, for a refusal. */
export function leftInWords({ items, quiz, prerequisites }: Progress): string[] {
  return [
    ...prerequisites.filter(({ standing }) => !standing).map(({ title }) => `“${title}” must stand first`),
    ...items
      .filter(({ item, state }) => item.required && state !== 'signed')
      .map(
        ({ item, state }) => `“${item.title}” is ${state === 'open' ? 'not signed' : 'not to standard yet'}`,
      ),
    ...(quiz !== null && quiz.state !== 'passed' ? ['the quiz is not passed'] : []),
  ];
}
