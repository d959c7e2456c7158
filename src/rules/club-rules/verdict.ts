/** What a rule of the club says of one flight: its expressions evaluated, in three values. */
import type { Moment } from '../engine/moment.js';
import type { Counted, FactView } from '../engine/rule.js';
import { UnknownFact } from '../engine/unknown.js';
import type { CheckedRule } from './check.js';
import type { Expression } from './expression.js';
import { expressionsIn, inWords } from './message.js';
import { Run } from './run.js';
import { NotYetTold } from './unknowns.js';

/** True, false, or not known. */
export type Answered = boolean | 'unknown';

/** How a rule came out on a flight, and the run that knows why. */
export interface Held {
  asks: Answered;
  /** Null where the rule asks nothing: the requirement is then not looked at. */
  held: Answered | null;
  run: Run;
}

/**
 * Evaluates a yes-or-no expression. CEL's own logic settles what is not known: `true || unknown` is true, whichever side
 * the unknown is on.
 *
 * @throws Error when a value failed or the rule cost too much; neither is ever a pass.
 */
export function ask(expression: Expression, run: Run): Answered {
  try {
    const value = expression.evaluate(run);
    if (run.meter.over) throw run.meter.over;
    if (typeof value !== 'boolean') throw new Error(`gives ${typeof value} instead of true or false`);
    return value;
  } catch (error) {
    if (run.meter.over) throw run.meter.over;
    // Where one side failed and the other is not known, the failure is told: it will not go away by itself.
    if (error instanceof UnknownFact && run.failed === null) return 'unknown';
    throw run.failed ?? plainly(error);
  }
}

/** The library points into the text over several lines; a finding has one. */
function plainly(error: unknown): Error {
  const { summary, message } = error as { summary?: string; message?: string };
  return new Error(summary ?? message?.split('\n')[0] ?? String(error));
}

/** Whether the rule asks something of the flight, and whether that holds. @throws as `ask` */
export function hold(
  rule: Pick<CheckedRule, 'appliesWhen' | 'requirement'>,
  view: FactView,
  moment: Moment,
): Held {
  const run = new Run(view, moment);
  const asks = ask(rule.appliesWhen, run);
  return { asks, held: asks === false ? null : ask(rule.requirement, run), run };
}

/** A rule is kept to where it asks nothing, or what it would ask holds, whether or not it asks it. */
export const keeps = ({ held }: Held): boolean => held === null || held === true;

/**
 * What to throw where the verdict hangs on something not known. A rule with a condition waits, but only where nothing but
 * what is told late is missing; anything else that is missing refuses. A rule whose arithmetic may fail never waits: the
 * library tells either a failure or an unknown, and the one could hide behind the other.
 */
export function notKnown(
  rule: Pick<CheckedRule, 'mayFail'>,
  { run }: Held,
  condition: string | null,
): UnknownFact {
  const [first] = run.unknown;
  const because = [...new Set(run.unknown.map((one) => one.because))].join('; ');
  const waits = condition !== null && !rule.mayFail && run.unknown.every((one) => one instanceof NotYetTold);
  return new UnknownFact(first?.fact ?? 'a value', because, waits ? condition : undefined);
}

/** The message as a sentence of the engine, with a slot for each expression. */
export function templateOf({ message }: Pick<CheckedRule, 'message'>): string {
  let slots = 0;
  return message.map((part) => ('text' in part ? part.text : `{value${(slots += 1)}}`)).join('');
}

/**
 * What fills the message for a flight that is short of the requirement: each slot, and the whole as `says`. What cannot be
 * filled in is said to be missing.
 */
export function messageFor({ message }: Pick<CheckedRule, 'message'>, { run }: Held): Record<string, string> {
  const values = expressionsIn(message).map((expression) => {
    try {
      return inWords(expression.evaluate(run));
    } catch (error) {
      return error instanceof UnknownFact ? '(not known)' : '(cannot be worked out)';
    }
  });
  let at = 0;
  const says = message.map((part) => ('text' in part ? part.text : values[at++]!)).join('');
  return { says, ...Object.fromEntries(values.map((value, index) => [`value${index + 1}`, value])) };
}

/** Records that gave something towards the verdict. */
export const evidenceOf = ({ run }: Held): Counted[] => run.counted();
