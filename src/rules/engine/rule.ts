/**
 * A rule: one small named thing with its citation beside it. `defineRule` checks the header; the engine runs the body
 * in force on the day of the flight.
 */
import type { LocalDate } from '../calendar/dates.js';
import type { FlightFacts } from '../facts/flight.js';
import type { FactKey, FactValue } from '../facts/keys.js';
import type { Fact } from '../facts/fact.js';
import type { Crew } from './crew.js';
import type { Moment } from './moment.js';
import type { Parameters } from './parameters.js';
import type { Remedy } from './remedy.js';

/** `law`: nobody may override. `club`: an officer may, with a reason, within policy. `advice`: never blocks. */
export type Weight = 'law' | 'club' | 'advice';

export type Status = 'met' | 'short' | 'unknown' | 'not-applicable' | 'error';

/** Where a rule comes from. */
export interface Citation {
  /** '14 CFR 61.57(a)', 'Club rule: model checkout'. */
  text: string;
  /** Seen in a public copy, recalled, trade practice without a source, or a paper of the club. */
  status: 'seen' | 'from memory' | 'common practice, no source' | 'club paper';
  /** How a doubtful point was decided, and what a club may set instead. */
  reading?: string;
}

/** A way the judgement can come out. `says` is the sentence for people; `{name}` is filled from the values. */
export interface Branch {
  status: Exclude<Status, 'unknown' | 'error'>;
  says: string;
}

/** One counted piece of evidence: `id` is a record in the sheet, `what` says what it gave. */
export interface Counted {
  id: string;
  on: LocalDate | null;
  what: string;
}

/** Remedies, or how to make them once somebody wants to see them. It asks nothing of the moment that the verdict hangs on. */
export type Offered = Remedy[] | (() => Remedy[]);

/** What a rule found. Made by `take`. */
export interface Judgement {
  branch: string;
  values: Record<string, string | number>;
  counted: Counted[];
  /** Given as a function where making them costs anything: most judgements are only asked for their verdict. */
  remedies: Offered;
  /** What must hold, or be checked, before departure for a `met` to stand. */
  conditions: string[];
}

/** What a body may look at. The request and the crew are always at hand; other facts only if declared in `reads`. */
export interface FactView<K extends FactKey = FactKey> {
  readonly flight: Omit<FlightFacts, 'departs' | 'arrives'>;
  readonly crew: Crew;
  /** The value of a declared fact; throws UnknownFact when it is not on record. */
  get<Q extends K>(key: Q): FactValue<Q>;
  /** The declared fact with its unknown state, for rules where absence itself matters. */
  peek<Q extends K>(key: Q): Fact<FactValue<Q>>;
}

/** Chooses a branch. */
export type Take<B extends string> = (
  branch: B,
  values?: Record<string, string | number>,
  more?: { counted?: Counted[]; remedies?: Offered; conditions?: string[] },
) => Judgement;

/** One dated body of a rule: the law as it stood from `from` to `to` (first date it no longer holds; null = still). */
export interface Body<K extends FactKey, B extends string> {
  version: number;
  from: LocalDate | null;
  to: LocalDate | null;
  citation: Citation;
  judge(facts: FactView<K>, moment: Moment, parameters: Parameters, take: Take<B>): Judgement;
}

/** A rule's whole header. */
export interface Rule<K extends FactKey = FactKey, B extends string = string> {
  /** Stable dotted id, never reused; those of the rules reference are kept. */
  id: string;
  title: string;
  weight: Weight;
  /** A club rule that not even an officer sets aside: what cannot be, such as one aircraft in two places. */
  neverOverridden?: true;
  /**
   * Whom it binds. `pilot` rules are about the person in command and are the instructor's on a dual flight;
   * the others stay whoever flies.
   */
  binds: 'pilot' | 'member' | 'instructor' | 'aircraft' | 'flight' | 'club';
  /**
   * `departure`: the law lets it be settled just before departure (weather, loading), so an unknown becomes a condition
   * instead of a refusal. Default `booking`: unknown refuses.
   */
  settledAt?: 'booking' | 'departure';
  /** About making a booking: a booking that stands is not asked again. */
  onlyWhenBooking?: true;
  /** For rules settled at departure: the condition told when the facts are not known. */
  whenUnknown?: string;
  reads: readonly K[];
  parameters: readonly string[];
  branches: Record<B, Branch>;
  /** Dated bodies, oldest first, not overlapping. Outside them the rule is not applicable. */
  bodies: readonly Body<K, B>[];
  /** The rule as earlier releases had it, newest first; new decisions never use them, replays do (src/rules/versions). */
  superseded?: readonly Rule[];
  /** One sentence: what this form does otherwise than the newest superseded one, and why. Needed where there is one. */
  changed?: string;
}

/** Declares a rule; throws on a header that contradicts itself (run at import, so a bad rule cannot start). */
export function defineRule<const K extends FactKey, const B extends string>(rule: Rule<K, B>): Rule<K, B> {
  if (!/^[a-z]+(\.[a-z0-9_-]+)+$/.test(rule.id))
    throw new Error(`rule id ${rule.id} is not dotted lower case`);
  if (rule.bodies.length === 0) throw new Error(`rule ${rule.id} has no body`);
  let end: LocalDate | null = '0000-00-00';
  for (const body of rule.bodies) {
    if (end === null || (body.from ?? '0000-00-00') < end)
      throw new Error(`rule ${rule.id}: bodies overlap at ${body.from}`);
    end = body.to;
  }
  if (rule.settledAt === 'departure' && !rule.whenUnknown)
    throw new Error(`rule ${rule.id} must say its condition`);
  checkSuperseded(rule as unknown as Rule);
  return rule;
}

/** May an officer set the rule aside? */
export const isOverridable = (rule: Pick<Rule, 'weight' | 'neverOverridden'>): boolean =>
  rule.weight === 'club' && !rule.neverOverridden;

/** This form of the rule and all earlier ones, newest first. */
export function formsOf(rule: Rule): readonly Rule[] {
  return [rule, ...(rule.superseded ?? []).flatMap(formsOf)];
}

/** Earlier forms bear the rule's id, and no two forms the same versions: a replay finds its form by them. */
function checkSuperseded(rule: Rule): void {
  const [, ...earlier] = formsOf(rule);
  if (earlier.length > 0 && !rule.changed?.trim())
    throw new Error(`rule ${rule.id} supersedes an earlier form and must say what changed`);
  const taken = new Set<string>();
  for (const form of [rule, ...earlier]) {
    const versions = form.bodies.map((body) => body.version).join(', ');
    if (form.id !== rule.id) throw new Error(`rule ${rule.id} cannot supersede ${form.id}`);
    if (taken.has(versions))
      throw new Error(`rule ${rule.id}: two forms have the versions ${versions}; raise the newer one's`);
    taken.add(versions);
  }
}

/** Forgets what each rule reads in particular, so that rules can stand in one list. */
export function ruleList(...rules: readonly object[]): readonly Rule[] {
  return rules as readonly Rule[];
}
