/** Checks the expressions of a rule before it is kept: every fault at once, each with its field and place. */
import type { FactKey } from '../facts/keys.js';
import type { Cost } from './cost.js';
import { readExpression, type Expression, type Use } from './expression.js';
import type { ExpressionField, Fault } from './fault.js';
import { expressionsIn, readMessage, type MessagePart } from './message.js';
import type { ClubRule } from '../facts/club-rule.js';

/** The texts of a rule that are checked. */
export type RuleTexts = Pick<ClubRule, 'appliesWhen' | 'requirement' | 'message'>;

/** A rule whose expressions may be evaluated. */
export interface CheckedRule {
  appliesWhen: Expression;
  requirement: Expression;
  message: MessagePart[];
  /** Facts behind all that it reads, in order of name. */
  reads: FactKey[];
  uses: Use[];
  cost: Cost;
  /** Some arithmetic in it can fail although every value is there. */
  mayFail: boolean;
}

/** A fault and the field it is in. */
export interface FieldFault extends Fault {
  field: ExpressionField;
}

export type Check = { rule: CheckedRule; faults: null } | { rule: null; faults: FieldFault[] };

/** Reads all expressions of a rule. */
export function checkRule(of: RuleTexts): Check {
  const appliesWhen = readExpression(of.appliesWhen, ['bool']);
  const requirement = readExpression(of.requirement, ['bool']);
  const message = readMessage(of.message);
  if (appliesWhen.faults || requirement.faults || message.faults) {
    const named = (field: ExpressionField, faults: readonly Fault[] | null): FieldFault[] =>
      (faults ?? []).map((fault) => ({ field, ...fault }));
    return {
      rule: null,
      faults: [
        ...named('appliesWhen', appliesWhen.faults),
        ...named('requirement', requirement.faults),
        ...named('message', message.faults),
      ],
    };
  }
  const all = [appliesWhen.expression, requirement.expression, ...expressionsIn(message.parts)];
  const uses = new Map(
    all
      .flatMap((one) => one.uses)
      .map((use) => [`${use.owner}.${use.entry.name}(${use.argument ?? ''})`, use]),
  );
  return {
    faults: null,
    rule: {
      appliesWhen: appliesWhen.expression,
      requirement: requirement.expression,
      message: message.parts,
      reads: [...new Set(all.flatMap((one) => one.reads))].sort(),
      uses: [...uses.values()],
      mayFail: appliesWhen.expression.mayFail || requirement.expression.mayFail,
      cost: all.reduce(
        (sum, { cost }) => ({ parts: sum.parts + cost.parts, steps: sum.steps + cost.steps }),
        { parts: 0, steps: 0 },
      ),
    },
  };
}
