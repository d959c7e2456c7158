/** The lock of released rules: what it holds, what is wrong with the rules of today by it, and how it is written anew. */
import { canonicalJson, type LawBook } from '../../../src/rules/index.js';
import type { Behaviour, Form } from './behaviour.js';

/** One form as locked. */
export interface LockedForm {
  /** The release that first had it; null while none had. */
  released: string | null;
  header: string;
  cases: Behaviour;
}

/** The file. */
export interface Lock {
  schema: 'bellcrank.rules-lock/1';
  /** The law's numbers that the cases were run with. */
  law: LawBook;
  engine: Record<string, LockedForm>;
  rules: Record<string, Record<string, LockedForm>>;
}

/** Schema of decisions: the version of the engine. */
export const ENGINE = 'bellcrank.decision/1';

const LOCK_IT = 'Run `npm run rules:lock`, and read the difference of src/rules/versions/versions.lock.json.';
const RAISE =
  'Decisions were made with it, and must come out the same when they are replayed. Put the old form back into a file of its own ' +
  '(<rule>.v<n>.ts), raise the version in the new one, list the old one under `superseded` and say under `changed` what it does otherwise.';

/** What is wrong, each in a sentence with what to do. */
export function problemsOf(lock: Lock, forms: readonly Form[], engine: Behaviour): string[] {
  const problems = forms.flatMap((form) => {
    const locked = lock.rules[form.rule]?.[form.versions];
    return locked ? differences(form, locked) : [`${nameOf(form)} is not locked. ${LOCK_IT}`];
  });
  const there = new Set(forms.map(nameOf));
  for (const [rule, versions] of Object.entries(lock.rules))
    for (const [key, { released }] of Object.entries(versions)) {
      const name = nameOf({ rule, versions: key });
      if (there.has(name)) continue;
      problems.push(
        released === null
          ? `${name} is locked, and gone. ${LOCK_IT}`
          : `${name} was released with ${released}, and is gone. Decisions were made with it: keep it under \`superseded\`, or, when the rule itself is gone, in src/rules/versions/retired.ts.`,
      );
    }
  return [...problems, ...engineProblems(lock.engine[ENGINE], engine)];
}

/** What a lock is made of. */
export interface Making {
  engine: Behaviour;
  law: LawBook;
  /** Number of the release that locks them; null while none does. */
  releasing: string | null;
  /** The forms run with the numbers of the lock before, where those are others. */
  before?: readonly Form[];
}

/** The lock for the rules of today. What was released stays as it is. @throws Error when some of it behaves otherwise */
export function relocked(lock: Lock | null, forms: readonly Form[], of: Making): Lock {
  const broken = lock
    ? problemsOf(lock, of.before ?? forms, of.engine).filter((problem) => problem.includes('released with'))
    : [];
  if (broken.length > 0) throw new Error(broken.join('\n'));
  const rules: Lock['rules'] = {};
  for (const { rule, versions, header, behaviour } of [...forms].sort((a, b) =>
    nameOf(a) < nameOf(b) ? -1 : 1,
  )) {
    const released = lock?.rules[rule]?.[versions]?.released ?? of.releasing;
    (rules[rule] ??= {})[versions] = { released, header, cases: sorted(behaviour) };
  }
  const released = lock?.engine[ENGINE]?.released ?? of.releasing;
  const engine = { [ENGINE]: { released, header: '', cases: of.engine } };
  return { schema: 'bellcrank.rules-lock/1', law: of.law, engine, rules };
}

const nameOf = ({ rule, versions }: Pick<Form, 'rule' | 'versions'>): string => `${rule} version ${versions}`;

function differences(form: Form, locked: LockedForm): string[] {
  const name = nameOf(form);
  const what = locked.released === null ? LOCK_IT : `It was released with ${locked.released}. ${RAISE}`;
  if (form.header !== locked.header)
    return [`${name} reads "${form.header}" and is locked with "${locked.header}". ${what}`];
  const tried = Object.keys(locked.cases).filter((given) => given in form.behaviour);
  const other = tried.filter((given) => form.behaviour[given] !== locked.cases[given]);
  if (other.length > 0)
    return [
      `${name} comes out otherwise than it is locked in ${other.length} of ${tried.length} cases, such as "${form.names.get(other[0]!)}". ${what}`,
    ];
  const all = Object.keys(locked.cases).length;
  if (tried.length * 2 < all)
    return [
      `Of the ${all} cases that ${name} is locked with, ${tried.length} can still be tried: its table, or the base sheet under it, is another. ` +
        `Make that change alone, without one to the rule. ${LOCK_IT}`,
    ];
  if (locked.released === null && canonicalJson(form.behaviour) !== canonicalJson(locked.cases))
    return [`The table of ${name} has other cases than it is locked with. ${LOCK_IT}`];
  return [];
}

function engineProblems(locked: LockedForm | undefined, engine: Behaviour): string[] {
  if (!locked) return [`The engine is not locked. ${LOCK_IT}`];
  const other = Object.keys(locked.cases).filter((name) => locked.cases[name] !== engine[name]);
  if (other.length === 0) return [];
  const what =
    locked.released === null
      ? LOCK_IT
      : `${ENGINE} was released with ${locked.released}: replays of stored decisions would differ. Undo it; if it must be, raise the schema of decisions and tell it in the notes of change.`;
  return [`The engine puts together other decisions than it is locked with (${other.join('; ')}). ${what}`];
}

const sorted = (of: Behaviour): Behaviour =>
  Object.fromEntries(Object.entries(of).sort(([a], [b]) => (a < b ? -1 : 1)));
