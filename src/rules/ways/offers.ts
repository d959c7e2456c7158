/** What rules offer against what stands in the way. */
import { toInstant, toSeconds, type EpochSeconds } from '../calendar/instants.js';
import { canonicalJson } from '../engine/digest.js';
import { crewAt, timeAt } from '../engine/judge.js';
import type { Crew } from '../engine/crew.js';
import type { Effect, Remedy } from '../engine/remedy.js';
import { runRule, type Outcome } from '../engine/run.js';
import { personInRole, type FactKey, type Role } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import { partsOf } from './acts.js';
import { practiceSlot, sheetAt } from './calendar.js';
import { practising, type InTheWay, type Practice } from './practice.js';
import { departureOf, type Asker, type Offer, type State } from './state.js';
import { remediesOf } from './verdicts.js';
import type { World } from './world.js';

const DAY = 86_400;
/** A flight so far off is also asked about shortly before: what is done today may have run out by then. */
const FAR_OFF = 14 * DAY;
const SHORTLY_BEFORE = 2 * DAY;

/** A rule asked for its remedies as of a time, and on whose behalf. */
export interface Asked {
  remedies: readonly Remedy[];
  crew: Crew;
  sheet: FactSheet;
}

/** Asks a rule anew, as if it were `at`: a remedy is dated by when it is asked for. Null when it stands in no way then. */
export function ask(
  world: World,
  state: State,
  asker: Pick<Asker, 'rule' | 'practice'>,
  at: EpochSeconds,
): Asked | null {
  if (asker.practice) return askOnPractice(world, state, asker.rule, asker.practice, at);
  // How a rule came out stands for everything it looked at, so what it offers as of a time is remembered by it.
  const outcome = state.verdicts.outcomes[asker.rule]!;
  let byTime = world.asked.get(outcome);
  if (!byTime) world.asked.set(outcome, (byTime = new Map()));
  let asked = byTime.get(at);
  if (asked === undefined) {
    const { sheet, verdicts } = state;
    asked =
      toSeconds(sheet.knownAt) === at
        ? askedOf(outcome, verdicts.crew, sheet)
        : askAsOf(world, asker.rule, sheet, departureOf(sheet), at);
    byTime.set(at, asked);
  }
  return asked && { ...asked, sheet: state.sheet };
}

function askOnPractice(
  world: World,
  state: State,
  rule: number,
  practice: Practice,
  at: EpochSeconds,
): Asked | null {
  const slot = practiceSlot(state, practice, at);
  if (slot === null) return null;
  return askAsOf(world, rule, practising(sheetAt(state, at), practice, slot), slot, at);
}

function askAsOf(
  { ruleset }: World,
  rule: number,
  sheet: FactSheet,
  departs: EpochSeconds,
  at: EpochSeconds,
): Asked | null {
  const asOf = { ...sheet, knownAt: toInstant(at) };
  const time = timeAt(asOf, departs);
  const { crew } = crewAt(asOf, ruleset, departs, time);
  return askedOf(runRule(ruleset.rules[rule]!, asOf, ruleset.book, crew, time), crew, sheet);
}

const askedOf = (outcome: Outcome, crew: Crew, sheet: FactSheet): Asked | null =>
  outcome.status === 'short' ? { remedies: remediesOf(outcome), crew, sheet } : null;

/** The effects of an offer as they would be at that time; null when no rule offers it any more. */
export function effectsAt(
  world: World,
  state: State,
  offer: Offer,
  at: EpochSeconds,
): {
  effects: readonly Effect[];
  title: string;
  as: { crew: Crew; flight: FactSheet['flight'] | null };
} | null {
  for (const asker of offer.askers) {
    const asked = ask(world, state, asker, at);
    const remedy = asked?.remedies.filter(({ act }) => act === offer.act)[asker.nth];
    if (asked && remedy) {
      const as = { crew: asked.crew, flight: asker.practice ? asked.sheet.flight : null };
      return { effects: remedy.effects, title: remedy.title, as };
    }
  }
  return null;
}

/** Everything offered against what stands in the way of the flight. */
export function offersAgainst(world: World, state: State): Offer[] {
  const found = new Found(world);
  const late = departureOf(state.sheet) - SHORTLY_BEFORE;
  for (const rule of state.verdicts.blocking) {
    const asker = { rule, practice: null };
    found.add(asker, ask(world, state, asker, world.start), world.start);
    if (late > world.start + FAR_OFF) found.add(asker, ask(world, state, asker, late), late);
  }
  return found.list();
}

/** Everything offered against what stands in the way of a practice flight. Another practice flight is no answer. */
export function offersForPractice(world: World, state: State, blockers: readonly InTheWay[]): Offer[] {
  const found = new Found(world);
  for (const { rule, practice } of blockers) {
    const asker = { rule, practice };
    found.add(asker, ask(world, state, asker, world.start), world.start, onFacts);
  }
  return found.list();
}

const onFacts = (remedy: Remedy): boolean => remedy.effects.every(({ op }) => op !== 'flight');

/** Offers that come to the same are one, with all who can be asked for it. */
class Found {
  private readonly byMeaning = new Map<string, Offer>();

  constructor(private readonly world: World) {}

  add(
    asker: Pick<Asker, 'rule' | 'practice'>,
    asked: Asked | null,
    notBefore: EpochSeconds,
    keep: (remedy: Remedy) => boolean = () => true,
  ): void {
    if (!asked) return;
    const count = new Map<string, number>();
    for (const remedy of asked.remedies) {
      const nth = count.get(remedy.act) ?? 0;
      count.set(remedy.act, nth + 1);
      if (!keep(remedy)) continue;
      const person = personOf(asked, remedy.effects, asker);
      if (person !== null && this.world.closed.has(person)) continue;
      const meaning = `${remedy.act} ${person ?? ''} ${writtenOut(remedy)}`;
      const known = this.byMeaning.get(meaning);
      // Offered today already: the later date of the same act is not another act.
      const today = [...this.byMeaning.values()].some(
        ({ act, askers, notBefore: from }) =>
          act === remedy.act &&
          from < notBefore &&
          askers.some((one) => one.rule === asker.rule && one.nth === nth),
      );
      if (today) continue;
      const facts = remedy.effects.flatMap((effect) => (effect.op === 'flight' ? [] : [effect.fact]));
      this.byMeaning.set(meaning, {
        act: remedy.act,
        title: remedy.title,
        by: remedy.by,
        entries: partsOf(remedy.act, facts, this.world.look),
        change: { is: 'effects', effects: remedy.effects },
        askers: [...(known?.askers ?? []), { ...asker, nth }],
        person,
        notBefore: known?.notBefore ?? notBefore,
        meaning,
      });
    }
  }

  list(): Offer[] {
    return [...this.byMeaning.values()];
  }
}

const written = new WeakMap<Remedy, string>();

function writtenOut(remedy: Remedy): string {
  let text = written.get(remedy);
  if (text === undefined) written.set(remedy, (text = canonicalJson(remedy.effects)));
  return text;
}

/** The person whose record the act changes; of a practice flight, who flies it. */
function personOf(asked: Asked, effects: readonly Effect[], asker: Pick<Asker, 'practice'>): string | null {
  const keys = effects.flatMap((effect): FactKey[] => (effect.op === 'flight' ? [] : [effect.fact]));
  const role = keys.map((key) => key.split('.')[0]!).find((name) => name !== 'aircraft');
  if (role === undefined) return null;
  return personInRole(asked.sheet, asked.crew, role as Role) ?? asker.practice?.person ?? null;
}
