/**
 * One rule followed through time: from departure to departure, at each of which it is judged again for its verdict
 * alone. Between two of them it cannot change, so nothing in between is asked.
 */
import type { EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { crewAt, earlier, skimRule, timeAt, type Ruleset } from './judge.js';
import type { Crew } from './crew.js';
import type { FlightTime } from './moment.js';
import type { Rule } from './rule.js';
import { verdictDiffers, type Verdict } from './run.js';

/** The flight and its crew at a departure. */
export interface Instance {
  at: EpochSeconds;
  time: FlightTime;
  crew: Crew;
  /** The next departure at which the crew may be another. */
  crewChange: EpochSeconds | null;
}

/** Gives the flight and crew at a departure, made once for all the rules judged there. */
export class Instances {
  private last: Instance | null = null;

  constructor(
    private readonly sheet: FactSheet,
    private readonly ruleset: Ruleset,
  ) {}

  at(departs: EpochSeconds): Instance {
    if (this.last?.at === departs) return this.last;
    const time = timeAt(this.sheet, departs);
    const { crew, nextChange } = crewAt(this.sheet, this.ruleset, departs, time);
    this.last = { at: departs, time, crew, crewChange: nextChange };
    return this.last;
  }

  /** Judges a rule for its verdict at a departure; `nextChange` minds the crew too. */
  verdictAt(rule: Rule, departs: EpochSeconds): Verdict {
    const { time, crew, crewChange } = this.at(departs);
    const verdict = skimRule(rule, this.sheet, this.ruleset, crew, time);
    verdict.nextChange = earlier(verdict.nextChange, crewChange);
    return verdict;
  }
}

/** A verdict and the departure from which it holds. */
export interface VerdictStep {
  from: EpochSeconds;
  verdict: Held;
}

/** A verdict that holds for a while. Steps keep this alone: an outcome holds on to all that was counted for it. */
export type Held = Pick<Verdict, 'status' | 'branch' | 'conditions'>;

/** A rule's verdict as a step function of the departure. */
export interface VerdictSteps {
  steps: VerdictStep[];
  /** Where the search stopped before the end of the span; what the rule says from there on is not known. */
  cutAt: EpochSeconds | null;
}

/**
 * A rule's verdict for every departure in [from, to), from change points only. Neighbouring steps differ. `most` bounds
 * how often the rule may be judged.
 */
export function stepsOf(
  rule: Rule,
  sheet: FactSheet,
  ruleset: Ruleset,
  span: { from: EpochSeconds; to: EpochSeconds },
  most: number,
  instances: Instances = new Instances(sheet, ruleset),
): VerdictSteps {
  const steps: VerdictStep[] = [];
  let at: EpochSeconds | null = span.from;
  let judged = 0;
  while (at !== null && at < span.to) {
    if (judged >= most) return { steps, cutAt: at };
    const verdict = instances.verdictAt(rule, at);
    judged += 1;
    const last = steps[steps.length - 1];
    if (!last || verdictDiffers(last.verdict, verdict))
      steps.push({ from: at, verdict: held(steps, verdict) });
    at = verdict.nextChange;
  }
  return { steps, cutAt: null };
}

/** The verdict as it is kept. One that turns to and fro, as by day and night, is kept once. */
function held(steps: readonly VerdictStep[], { status, branch, conditions }: Verdict): Held {
  const before = steps[steps.length - 2]?.verdict;
  if (before && before.branch === branch && !verdictDiffers(before, { status, conditions })) return before;
  return { status, branch, conditions };
}
